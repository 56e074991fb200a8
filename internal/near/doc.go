// Package near finds the names nearest to one that was misspelt, so that a
// fault can say what was probably meant.
//
// Nearness is the least number of letters added, left out, changed or swapped
// with their neighbour (Damerau 1964, restricted to one edit of each letter),
// case and the way words are joined left out of account.
package near
