// Package programme holds the planning problem of a year as a mathematical
// programme: which sowings, on how much ground, feed the table best.
//
// Model, by weeks:
//
//   - ground comes in classes of like units, each free in every week of its span;
//   - a sowing is a column: for each unit of it, ground is held for some weeks,
//     work and room in stores are used, and under every future lots of food come,
//     each good from a first week to a last one;
//   - a demand is what the table wants of a vegetable (or of vegetables that stand
//     in for each other) week by week, in levels of falling cost: what must not
//     lack, what is wanted, what would be nice;
//   - each future feeds its demands from its lots as well as can be done.
//
// The objective is the mean over the futures of what lacks, at its cost, and what
// goes over, at its cost, and the work of the sowings. Units are whole numbers.
//
// Feeding is a flow from lots to weeks. Since the lots are intervals, eating what
// goes over first feeds the most (Glover 1967, "Maximum matching in a convex
// bipartite graph", Naval Research Logistics Quarterly 14:313-316), and since what
// can be fed is a polymatroid in the weeks, feeding the dearest level first is best
// (Edmonds 1971, "Matroids and the greedy algorithm", Mathematical Programming
// 1:127-136). So the objective of given sowings is exact without a solver, and
// equal to that of the written-out programme, in which feeding is free.
//
// Left out, against the table itself: growth while a crop stands, losses that hang
// on how long a lot lies, the luck of single plantings, shared light.
package programme
