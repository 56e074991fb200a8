// Package supply answers what water there is: what a roof sheds, and how much of a
// need a butt of some size meets, day by day under a run of weather.
//
// Yield after spillage: on each day what is asked for is taken from what was in the butt
// before the day's rain; then the rain comes in and what does not fit runs over. It is
// the more careful of the two usual orders. A tank is clean, covered and loses nothing.
//
// Left out: snow that lies, gutters that overflow in a cloudburst, ice, evaporation,
// and the quality of the water.
//
// Source: Jenkins D., Pearson F., Moore E., Kim S.J., Valentine R. 1978, Feasibility of
// Rainwater Collection Systems in California, Contribution 173, California Water
// Resources Center; Fewkes A., Butler D. 2000, Building Services Engineering Research
// and Technology 21:99 (both from memory). Coefficients: data/coverings.csv.
package supply
