// Package growth carries one planting through its days: emergence, development,
// leaf, dry matter, cold, chill and running to seed, and what may be picked.
//
// Model in short. Seed, sets and tubers emerge by thermal time in the soil
// (Bierhuizen & Wagenvoort 1974). Development from emergence to first use runs
// with the temperature response of Wang & Engel (1998) and a light factor, and
// waits at gates for daylength or chill where the crop has them. Leaf area grows
// exponentially while leaves are few and then from new dry matter (the expolinear
// shape of Goudriaan & Monteith 1990); dry matter follows intercepted light
// (Monteith 1977). A crop is ready when its stage is reached and its piece is of
// usable size.
//
// Rates are computed from yesterday's states (Rates), then all states move
// together (Integrate); the day loop in package season calls the two in turn for
// all plantings of a bed, so that none sees a neighbour half-updated.
//
// Left out: nutrients (soil state scales yield instead), and respiration apart
// from what radiation use already holds.
package growth
