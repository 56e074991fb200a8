// Package watering answers how much water each bed wants: now, in the week ahead,
// before days away, and on which day it first suffers if nobody comes; and what
// somebody who comes on some of those days has to bring.
//
// For every piece of ground on which plantings share the light it runs the balance of
// package water from half a year back to today and on, day by day, under the futures
// of package outlook: the weather that fell is the same in all of them, the days to come
// are the forecast and then other years. The leaves are those of package season, kept
// watered. What was watered by the records of that half-year counts from the first of
// them on, today's too; before it, and for a bed without any, the ground was watered
// whenever that was due.
//
// Left out: what want of water costs the crop, water that beds lend each other through
// the soil, leaves that keep rain off a pot, and runoff.
package watering
