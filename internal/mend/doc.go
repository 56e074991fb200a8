// Package mend finds what would mend a gap at the table, and which sowing to
// shrink where more grows than can be used.
//
// A gap is a run of weeks in which a vegetable is short more often than not. What
// could mend it is looked for over all beds: a sowing or planting onto any ground
// that is free before it, a cover over a bed that feeds it, a store for a crop
// that goes to none, more ground for a sowing that is still to come, and a sowing
// moved in time. Each is weighed on the scales of package outlook, so that its
// worth [kg of shortage] is the difference of two full tables, over the same
// futures, with it and without. Last come what always remains: to buy what lacks,
// or to leave it.
//
// Proposals stand in the order of what they mend of the gap, less what they cost
// elsewhere at the table.
//
// Left out: two proposals at once (the second is weighed when the first is
// accepted), new beds, and crops under and between others.
package mend
