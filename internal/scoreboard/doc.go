// Package scoreboard holds the engine against published figures: for every check
// the published value, its source, what the engine computes, the difference and
// a verdict. Rows that fail stay on the board.
//
// The board is a list of sections (NewBoard), each with its lines and, where one
// is set, the goal they must reach together. The published figures are embedded
// (data, with its README); only those that were read in their source are met or
// missed. What a line computes is read off the engine itself wherever it can be:
// plants in a growth chamber of steady days (chamber), gardens under generated
// years (garden), the windows at their usual pace.
package scoreboard
