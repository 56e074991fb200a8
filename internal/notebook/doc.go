// Package notebook reads what growers write in a notebook: a line for each
// planting ("leeks bed 1, 42 left"; "carrots early July, half bed 5"), and a few
// words for their ground ("11 beds 6 x 1.2, tunnel 6 x 4").
//
// A line is read piece by piece, in a fixed order: bed, day, crop, how much, how
// it starts. Each piece that was found is told, each that lacks is asked for, and
// every word that was not understood is named. What is vague ("early March",
// "some", "a row") stays vague: the day and the area carry how far they may be
// off. A piece that lacks is filled in only where the usual one is told as such.
//
// Days without a year are set against today: what would still grow or stand is
// taken for the last time that day came, the rest for the next.
//
// Left out: several crops or beds on one line, and any grammar: the order of the
// pieces is free. The words that are known stand in data/vocabulary.csv (our own
// list), crops are those of the crop book.
package notebook
