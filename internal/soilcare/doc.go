// Package soilcare tells how the soil of a bed was looked after and what is
// due: compost, lime, manure and mulch, and what to cover bare ground with.
//
// Compost: 3 to 5 cm a year, which over a bed of A m2 is 30 A to 50 A litres; a
// centimetre over a square metre is ten litres. Lime: in autumn or winter before
// brassicas where the pH is known and low, by the texture of the soil, and never
// within a year before potatoes. Manure: days from raw manure to harvest, and
// kept off the roots that fork. Bare ground: green manures that can still be
// sown and have the weeks to stand, mulch, or a sheet.
//
// Numbers stand in data/ with unit, source and mark. Left out: what compost and
// manure hold of nutrients, what the crops take, and soil tests other than pH.
// How the state of the soil scales weight is the ground package's.
package soilcare
