// Package compare sets two plans of one holding side by side, week by week: what
// comes to the table, what lacks, what goes over, the ground that is held, and the
// hours it takes.
//
// Both tables must have been computed with the same first day, weeks, futures and
// seed, so that every future meets both plans with the same weather and all that
// differs is the plans' own. All figures are means over the futures; a difference
// is the second plan less the first.
//
// A week of a vegetable is a gap when it is short more often than not, as in the
// outlook, and a glut when on average more goes over than is wanted, also where none
// is, and enough to be worth giving away. Ground is held from the day a planting goes
// in to the day it is gone in each future; what stands under or between another holds
// none of its own.
//
// Hours are tending by the ground that is held, picking by the weight that is eaten
// fresh or put away, and the kitchen by the weight that is put away and the method.
// What is put away is the rise of a store from one day to the next, so what is
// eaten out of it on the same day is not seen. The numbers are those of package labour.
//
// Water is what the air asks of the ground that is held, month by month: reference
// evapotranspiration (package water) in each bed's light and under its covers. Neither
// what the crop makes of it nor rain is in it, so it tells two plans apart and no cans.
//
// Left out: the time for raising plants, for covers and for the way to the ground.
package compare
