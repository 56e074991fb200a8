// Package space says who holds which share of a bed, from when to when, what
// ground comes free, and what stands on ground that is not free.
//
// A planting holds its ground from the day it goes in to the day it is gone: it
// was recorded so, the plan clears it, or it is over or has died, whichever comes
// first in each of the table's futures. The futures give the odds on that day;
// where one day is needed (the layout, the lanes) it is the middle one. Clearing
// is not free ground: the days a bed needs to be turned round come after it.
//
// Where along a bed a planting lies is laid out in the order of the days on which
// plantings go in, always onto the ground that is free first. So plantings that
// fit never overlap, and one more planting never leaves more free ground. A
// planting keeps its place; one that follows another takes that one's place when
// it is free. Ground that is free in several pieces is taken in pieces. A planting
// under or between another lies within that one's ground and takes none of its
// own but what reaches beyond it in area or in time.
//
// Left out: the shape of a bed (a place along it is a share of its ground, counted
// from one end of its length), paths within it, and the ground that leaves
// overhang.
package space
