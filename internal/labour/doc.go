// Package labour holds the hours that a garden and its kitchen take: the one source
// of them for the draft, the mending of gaps, the comparison of plans and the larder.
//
// Each number is a rough mean over crops, with its unit, range, source and mark in
// data/labour.csv. They serve to set plans side by side and to share out an hour in
// the kitchen, not to foretell a day.
//
// Left out: what differs between crops, soils and hands, and the time for raising
// plants and for going to and fro.
package labour
