// Package words is the catalogue: every text a person reads, by key, with its
// plurals, and the one formatter of numbers, units and dates.
package words
