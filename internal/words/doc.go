// Package words is the catalogue: every text a person reads, by key, with its
// plurals, and the one formatter of numbers, units and dates.
//
// The engine makes phrases (a key and named values); the command line and the
// pages turn them into text here. Texts lie in data/<language>/*.json, one file
// for each package that speaks:
//
//	"bed.too_narrow": "{bed} is {width:m} wide; give at least 0.1 m"
//	"bed.count": {"one": "{n} bed", "other": "{n} beds", "by": "n"}
//
// A placeholder names a value and, after a colon, how it is written: kg, g,
// weight, m, m2, c, l, mm, percent, odds, chances, weeks, days, date, day, month, or a
// number of decimals. Without one a value is written by its type. Plural
// categories are those of the Unicode CLDR (golang.org/x/text/feature/plural),
// so that languages with more than two forms fit in.
//
// The catalogue is read when it is first asked for, never at start-up.
package words
