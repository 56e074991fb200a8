// Package rotation tells when a crop comes back too soon to ground where its
// kin, or a disease of it, stood before.
//
// Each crop of the book says after how many years its family should come back
// (rotation_years [a], 0: it does not matter, 99: never). Years are counted
// between growing years: a crop belongs to the growing year in which it was
// last in the ground for half a year, or began when it was shorter there, and
// four years after 2026 is 2030. A growing year is the calendar year in the
// north and begins in July in the south. Crops of one family in the same growing
// year are one course and do not clash.
//
// data/intervals.csv names the disease behind the years, and holds the
// published intervals that count once a disease was recorded on the ground:
// then every host of it counts, the same growing year too. Where only the life
// of the disease in the ground is published, that is the interval. Intervals
// given in words alone ("several years") are left out; kind tells an interval
// that was recommended (rest) from one that brought a part of the good (partial)
// and from the life of spores (lasts). Both files carry source and mark.
//
// Left out: how strong a disease is in the ground, resistant kinds, weeds and
// neighbouring beds as hosts, and soil carried from bed to bed.
package rotation
