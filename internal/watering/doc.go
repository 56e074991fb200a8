// Package watering answers how much water each bed wants: now, in the week ahead,
// before days away, and on which day it first suffers if nobody comes.
//
// For every piece of ground on which plantings share the light it runs the balance of
// package water from half a year back to today and on, day by day, under the futures
// of package outlook: the weather that fell is the same in all of them, the days to come
// are the forecast and then other years. The leaves are those of package season, kept
// watered. What was watered by the records counts from the first of them on; before it,
// and for a bed without any, the ground was watered whenever that was due.
//
// Left out: what want of water costs the crop, seed in dry ground, water that beds
// lend each other through the soil, and runoff.
package watering
