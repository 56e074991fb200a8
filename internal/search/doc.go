// Package search finds good solutions of a year's planning problem, and a bound
// that no solution can beat.
//
// A first solution takes, unit by unit, what lowers the objective most for the
// ground and time it holds. Simulated annealing (Kirkpatrick, Gelatt & Vecchi 1983,
// "Optimization by simulated annealing", Science 220:671-680) goes on from there:
// a move takes a unit of a sowing out, puts one in, or puts one in the place of
// another, and what stands in the way of what comes in goes out. Every move is
// priced exactly. Rounds start from the best so far, each longer than the one
// before, until the steps or the time are used up.
//
// The same seed and the same steps give the same solution.
package search
