// Package water answers what the air asks of a bed, and holds what soil water
// does to its plants.
//
// Reference evapotranspiration is FAO-56 Penman-Monteith by the day (eq. 6), from
// the weather and the light at the ground itself: past walls and trees, and under
// a cover. What was not measured is filled in before, in package climate, by
// chapter 3 of the paper: humidity from a dew point at the night's minimum, wind
// of 2 m/s, radiation from sunshine or temperatures. Air pressure goes by the
// height above the sea. Less of the sky in sight is less warmth lost to it; the
// share that a cover keeps is package cover's.
//
// Left out: hours of the day, warmth that goes into the soil and comes back (0.6
// MJ/m2/day in the months in which a temperate year warms fastest, eq. 43), dew,
// dry air that drifts in over the edge of the bed, and the crop itself: leaves,
// roots and soil water are the work of a balance that takes these figures day by
// day. Kept stands where that balance will.
//
// Source: Allen R.G., Pereira L.S., Raes D., Smith M. 1998, FAO Irrigation and
// Drainage Paper 56. Against what it is held: testdata.
package water
