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
// Balance is the dual crop coefficient of chapters 7 and 8: what leaves take goes by
// their cover and height, what the bare surface loses by how wet it is, and a crop is
// in want when more is gone than its roots take with ease. Kept stands in the day
// loop for a bed that is kept watered, so that growth is never short.
//
// Left out: warmth that goes into the soil and comes back in the days of a record
// (0.6 MJ/m2/day in the months in which a temperate year warms fastest, eq. 43), dew,
// dry air that drifts in over the edge of the bed, runoff, water that rises from
// below, and layers of soil: what roots reach is one store.
//
// Source: Allen R.G., Pereira L.S., Raes D., Smith M. 1998, FAO Irrigation and
// Drainage Paper 56. Against what it is held: testdata.
package water
