// Package calibrate fits the few free numbers of the crop book that no table
// prints: the scale that brings each reference planting to its published yield,
// and, for uses that stand the winter, the days of best warmth and light that
// bring it to its published date.
//
// The reference climate is a cool maritime one (data/README.md). A use's
// reference planting (method, date, cover) is grown there in a number of
// generated years; the median year is held against the book. Everything else in
// the book is left as the sources have it.
package calibrate
