package exchange

// What a holding may be at most. A household's holding with forty years of
// daily weather is under 2 MB in some 20 files.
const (
	mostBytes   = 100_000_000 // of all files together, unpacked
	mostFiles   = 120
	mostEntries = 400 // files and folders looked at before giving up
)
