package desk

import (
	"garner/internal/appetite"
	"garner/internal/jobs"
)

// Choice is something that can be grown: a use of a crop of the book.
type Choice struct {
	Crop, Use string
	Name      string // of the crop, whatever its use
	Plural    string // of the crop
	Label     string // what it is in words
	Vegetable string // under which the table counts it
	Methods   []string
	Feeds     bool // false of a green manure
}

// Choices returns what can be grown, crops by name and each crop's uses in the
// book's order.
func Choices() ([]Choice, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	var out []Choice
	for _, c := range b.Crops() {
		for _, u := range c.Uses {
			out = append(out, Choice{Crop: c.ID, Use: u.Name, Name: c.Name, Plural: c.Plural, Label: u.Label, Vegetable: c.Vegetable, Methods: u.Methods, Feeds: u.Feeds()})
		}
	}
	return out, nil
}

// Offered lists the vegetables that a household is asked about, what most eat
// often first, each with its season on its side of the line.
func Offered(south bool) ([]appetite.Offer, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	return appetite.Offered(b, south), nil
}

// SiteRules are what a site may forbid, as its file names them.
func SiteRules() []string {
	return []string{string(jobs.Fires), string(jobs.Hoses), string(jobs.Heights)}
}
