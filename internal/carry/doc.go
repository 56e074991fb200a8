// Package carry makes next year's sowings from this year's.
//
// What goes into the ground in one growing year goes in again in the next, on the
// same day of the same week of the year: all moves by the same number of whole
// weeks, 52 or 53, so that days between sowings stay as they were and no days are
// lost over the years (weeks as ISO 8601 counts them). Where the grower planted on
// another day than planned, the day of the record is carried. Perennials stay
// where they are, and what is planned for the next year already is not planned
// twice.
//
// What stood in one bed stays together and moves to one bed alike: on the same
// site, of the same kind, under the same standing cover, with as much light and
// room. Of all ways to give the beds out, the one is taken in which least lacks
// room, then least comes back too soon (package rotation), then least moves. A
// sowing that still clashes or finds no room goes by itself to a bed alike where
// it does neither, if there is one. Beds whose rotation is silent keep their
// crops. Covers that lie over a bed for a time go where its sowings go, unless all of
// those are planned already.
//
// Left out: the days a bed needs to be turned round, whether covers owned are
// enough, and the years after the next.
package carry
