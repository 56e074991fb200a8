// Package gazetteer knows 2,830 places in 161 countries by name, with their
// monthly normals, so that a grower can start from the nearest station in place
// of typing twelve months of figures.
//
// A place is found by name (Search) or by where it is (Near, Choose). Nearness
// counts height as well as distance, for a garden in the next valley is unlike
// the station on the mountain between. Normals moves the temperatures of a
// station to the garden's height, and refuses when they lie too far apart.
//
// Left out: towns and valleys differ from airports by 1 or 2 degrees at night,
// and nothing here knows on which side of the hill a garden lies. Growers'
// own figures are better and can replace these.
//
// The data and their terms are described in data/README.md; they are packed by
// cmd/gazetteer and read when they are first asked for.
package gazetteer
