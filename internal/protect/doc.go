// Package protect holds the covers that are owned against what a plan lays out,
// and tells what pests a cover keeps out of the crops under it.
//
// Stock: each cover spell takes pieces of its kind for as long as it lies: a
// piece is long enough for the bed and its ends, and wide enough for the bed, or
// for half a circle over it where hoops carry it, with edges to bury. Where no
// piece is long enough several are laid one after another. Spells take pieces in
// the order in which they go on, the smallest that fits; hoops are counted by
// their spacing. A kind of which nothing is listed is not counted. Fixed houses
// take nothing.
//
// Barrier: a pest is kept out by a cover whose gaps are no wider than
// data/pests.csv gives for it, from the day the crop goes in; not where a host
// stood in the bed within the year before, for a pest that winters in the
// ground: it would be shut in with the crop. Crops that insects pollinate want
// the cover off in flower.
//
// Left out: how many pests there are and when they fly, holes, and covers that
// are opened to weed. Sizes are common practice, none was read in a source.
package protect
