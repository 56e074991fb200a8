// Package calibrate fits the free number of the crop book that no table prints:
// the scale that brings each reference planting to its published yield, and for
// the few uses whose published days are those of the reference place
// (data/dated.csv) the factor that brings them to those days.
//
// The reference climate is a cool maritime one (data/README.md). A use's
// reference planting (method, date, cover) is grown there in a number of
// generated years; the median year is held against the book. Everything else in
// the book is left as the sources have it.
package calibrate
