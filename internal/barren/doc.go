// Package barren tells which vegetables no bed of a holding can grow, and why.
//
// A vegetable can be grown when some use of it, in some way of starting it, in some
// week of the coming year, on some kind of the holding's beds, has at least even odds of
// a usable crop, as a draft judges them: each alone in the bed, with the mean luck of
// its use, through the first futures of the table, under the covers that are
// planned or, when it fails under these, a cover that the gear in stock reaches to as a
// draft lays it. Every fourth week is tried first, and as soon as one will do the rest is
// not looked at, so that only what cannot be grown is tried in full. Perennials,
// which bear later than the weather is known, can be grown where they live through
// more than two years in most futures, and where one stands in the plan already.
//
// The reason is what would have to be otherwise: the same is asked of the beds in full
// light, then of warmer and of cooler weather, in steps. What warmth would mend is too
// cold where the soil is never warm enough or the young plants are killed, else the
// season is too short.
//
// Left out: whether the ground is free, rotation, what is forbidden in drafts, whether
// the gear reaches to other beds as well, covers there is no gear for, and seed on hand.
package barren
