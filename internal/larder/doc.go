// Package larder sets what the ground gives against what the household wants,
// day by day, and keeps the rest where it keeps.
//
// Model, one day at a time, under one future:
//
//   - what is stored loses a little, and what has used up its life is spoiled;
//   - the day's want is eaten, first from whatever goes over first, be it
//     standing, hanging ripe on the plant, or lying in a store;
//   - what stands at its end, or has hung as long as it stays good, goes to the
//     store it is meant for while there is room, and the rest is over.
//
// The ground is a store too: nothing is lifted before its end. The life of a
// lot is used up day by day at the rate the store's temperature sets, and the
// yearly temperature of a store is a smooth wave. Every run proves that nothing
// was made or mislaid (Balance).
//
// Left out: the course of a store's humidity, ethylene, one bad root spoiling its neighbours, and a
// cook's choice between food that keeps equally long. The rules, their formulas
// and where they come from stand in docs/models/larder.md.
package larder
