package web

// keptQuery names the entry that a page tells of, so that what was done is said
// on a page with an address and nothing is kept between requests.
const keptQuery = "kept"

// said is what was just done, with the way to take it back.
type said struct {
	Text  string
	Entry string // the entry that can be taken back
	Taken bool   // it has been taken back since
	Back  string // the page it is said on
}

// said returns what the page is asked to tell of, nil when nothing.
func (v *visit) said() (*said, error) { return nil, nil }
