// Package draft makes the planning problem of a holding's year, and turns a
// solution of it into plantings that lie in beds.
//
// What stands now, perennials and pinned plantings are kept; everything else of the
// plan is open. Every use of the crop book whose vegetable is wanted is stepped
// alone by the season engine, by every way of starting it and every week, on one bed
// of each kind of ground, through the first futures of the table, with the mean luck
// of its use. What it gives by week becomes a column of the programme (Dantzig &
// Wolfe 1960, "Decomposition principle for linear programs", Operations Research
// 8:101-111, for columns made beforehand in place of rows).
//
// Ground is counted in units, a twelfth of a bed or so (see unitsOf). Units that
// are alike and free in the same weeks are one class, whatever their bed. A solution
// is laid into beds as an interval graph is coloured: in the order of first weeks,
// any free unit will do (Gavril 1972, "Algorithms for minimum coloring ... of chordal
// graphs", SIAM Journal on Computing 1:180-187), so units that had none of the family
// before are taken first.
//
// Vegetables that stand in for each other make one demand with their group: the sum
// of the members' own wants and the group's, kilogram for kilogram.
//
// Covers are chosen with sowings: beds that the gear in stock reaches in a cold season
// are found first, all at once, and become classes of their own, so that whatever is
// sown in them under covers stays within the gear.
//
// The programme has no price for a row, so a solution's rows are made fewer afterwards,
// in units of the problem (Gather).
//
// Left out: which member of a group is liked best, and that a member's own want is
// for it alone; that what is sown in the open beside a covered sowing in one bed comes
// under its cover too, as does what is kept there; mesh against pests, double covers,
// and a piece that lies over one bed in autumn and another in spring; plants under and
// between others; perennials that are not yet planned; raising room, which a holding
// does not tell; seed that is on hand; and what the programme itself leaves out.
package draft
