// Package shade answers how much of the open sky's light reaches the ground past
// what stands round it: walls, fences, hedges, buildings and trees.
//
// Beam and diffuse light are kept apart. For the middle day of each tenth of a
// month (36 a year) the sun is stepped across the sky by a quarter of an hour; a
// step counts by the beam a clear sky would then send on level ground, and is
// dimmed by everything it passes. Diffuse light is the view of an evenly bright
// sky, each part weighted by the sine of its height. A bed is the mean over
// points spread evenly in its outline, and a day between two tenths lies on the
// line between them.
//
// Walls, fences, hedges and buildings are upright boxes that stand on the
// ground; a crown is an ellipsoid between its underside and its top, in which
// light falls off with the length of its way (Beer and Lambert). Things behind
// each other multiply. Between bare and full leaf, what passes moves on a
// straight line through four weeks.
//
// Left out: light thrown back by walls, trunks, the greater brightness of the
// sky about the sun and overhead, slopes, and the height of the crop itself: the
// light is that at the soil.
//
// Lengths are metres on the plan of package place, angles degrees unless named
// otherwise, shares 0-1.
//
// Measured (BenchmarkFortyBedsTwentyObstacles): 40 beds among 20 obstacles take
// about 0.11 s on one core, most of it crowns and the sky, so rays are cast
// straight at the obstacles, those they cannot meet left out by angle and height.
// A map of the sky kept for every point was left alone: it would hold more
// directions than the sun takes in a year.
//
// Sources: Meinel A.B., Meinel M.P. 1976, Applied Solar Energy, for the clear
// beam; Kasten F., Young A.T. 1989, Applied Optics 28:4735-4738, for the air
// mass; Erbs D.G. et al. 1982, Solar Energy 28:293-302, for the diffuse share
// (package sun). What comes through crowns and hedges: data/through.csv.
package shade
