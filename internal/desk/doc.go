// Package desk holds the use cases: what the command line and the pages ask of
// the engine, as plain functions from values to results. It opens holdings,
// runs the parts in order and gathers what they found; it holds no formulas and
// prints nothing.
package desk
