// Package num holds the numerical tools of the engine: keyed random streams,
// tabulated functions, order statistics and digests of inputs.
//
// Everything is deterministic: streams are made from keys, never from a clock,
// and the normal and gamma draws are written out here because the standard
// library does not promise the same sequence in every release.
package num
