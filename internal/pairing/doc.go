// Package pairing answers what two crops on the same ground do to each other:
// what light the lower one gets, how each fares against alone on the same ground,
// and what taking off the upper's lower leaves or clearing it would give.
//
// Model in short. The bed is stepped again through the futures of the table, with
// the same luck, with one of the two left out, stripped or cleared (package
// season shares the light). Yields together are held against those alone as the
// land equivalent ratio (Willey & Osiru 1972, Studies on mixtures of maize and
// beans, Journal of Agricultural Science 79:517-529; Mead & Willey 1980, The
// concept of a land equivalent ratio, Experimental Agriculture 16:217-228).
//
// Left out: water and food of the soil, which a second crop takes too, so that
// the ratio is the best that light and room allow. Held against published trials
// in the section shared-ground of the scoreboard, where some rows are missed.
package pairing
