// Package observed joins what is known of the days at one site: the station's
// file, what was read off gauge and thermometer by hand, what instruments sent,
// and what was forecast.
//
// Of one quantity on one day the reading by hand counts before the instrument's,
// and both before the station's file; a station some way off tells little of a
// shower. A reading under a cover tells of that cover and of nothing else. A
// forecast never counts where anything was observed.
//
// Rain in a gauge is a sum since it was last emptied, an extreme of a thermometer
// one since it was last set. Read in the morning, rain and maximum are of the days
// up to the day before and the minimum reaches into the day itself, as in the
// rules for climatological stations (WMO-No. 8, Guide to Instruments and Methods
// of Observation; from memory). A sum over several days is spread as the station's
// days tell, else it is put on its last day; no day but the one of the station's
// own extreme is given an extreme over several days, and without station days it
// is given to none.
//
// Left out: how much a gauge loses to wind, wetting and evaporation (2 to 10 % in
// common practice), and radiation errors of thermometers in the sun.
package observed
