// Package canopy shares the light of a day between leaves that stand on the same
// ground, and says which plantings of a bed stand on the same ground.
//
// Model in short. The air over a piece of ground is cut into level layers at the
// foot and the top of every canopy in it, so that within a layer the same leaves
// stand all through. A canopy's leaf area is spread evenly over its height. In a
// layer the light that comes in from above falls off by Beer and Lambert's law
// with the sum of extinction times leaf area of all canopies, and what is caught
// is shared in proportion to each one's part of that sum (Spitters & Aerts 1983,
// Simulation of competition for light and water in crop-weed associations,
// Aspects of Applied Biology 4:467-483; Kropff & van Laar 1993, Modelling
// Crop-Weed Interactions, chapter 4). One canopy alone catches 1 - exp(-k LAI)
// however it is layered.
//
// On the ground itself crops leave gaps, whose light is given once to those that
// stand beneath or between them (Ground; docs/models/shared-ground.md).
//
// Left out: leaves in clumps and rows, the sun's height (one extinction for the
// whole day), and light from the sides. Kropff & van Laar spread leaf area as a
// parabola over the height; the even spread here differs from it only where two
// canopies stand in the same layer, not for one wholly above another.
//
// All lengths are metres; leaf area is per area of ground; light is a share of
// what arrives above all leaves, 0-1.
package canopy
