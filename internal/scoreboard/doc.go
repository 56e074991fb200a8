// Package scoreboard holds the engine against published figures: for every check
// the published value, its source, what the engine computes, the difference and
// a verdict. Rows that fail stay on the board.
package scoreboard
