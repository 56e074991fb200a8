// Package leftout fits the numbers that whole classes and groups of crops share
// (least soil warmth, frost on young plants, days, heat, slowness, fair yield)
// to published planting dates, and tells how well they hold where they were not
// fitted: with each region left out in turn.
//
// Planting dates cannot tell the pieces of the engine apart, so few numbers are
// free, by class and never by crop, and each is pulled toward what the
// literature and the window trial give (data/free.csv). The fit is a search
// along one number after the other. It uses no chance: the same dates and the
// same book give the same numbers.
//
// Fits are slow, so their numbers are kept (data/folds.csv) and the scoreboard
// reads them; the dates of a region are then computed with the numbers of the
// fit that never saw it.
package leftout
