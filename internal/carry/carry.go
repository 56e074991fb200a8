package carry

import (
	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/rotation"
)

// carrier is a year on its way to the next.
type carrier struct {
	Setting
	out     Result
	beds    map[string]place.Bed
	south   map[string]bool // by bed
	planted map[string]cal.Date
	host    map[string]string // beds of perennials that sowings stand by, by sowing
	history *rotation.History
	stood   map[string][]stay // by bed: what the plan holds already
	went    map[string]string // where a bed's sowings went

	plannedIn map[string]bool // beds with sowings that next year has already
}

// Of carries the growing year of today to the next. The same setting gives the same
// result. The error is of the data of package rotation.
func Of(s Setting) (*Result, error) {
	c := &carrier{Setting: s, beds: map[string]place.Bed{}, south: map[string]bool{}, planted: plantedOn(s.Records), host: map[string]string{},
		stood: map[string][]stay{}, went: map[string]string{}, plannedIn: map[string]bool{}}
	sites := map[string]bool{}
	for _, site := range s.Sites {
		sites[site.ID] = site.Location.LatitudeDeg < 0
	}
	for _, b := range s.Beds {
		c.beds[b.ID], c.south[b.ID] = b, sites[b.Site]
	}
	var err error
	c.history, err = rotation.NewHistory(rotation.Ground{Book: s.Book, Sites: s.Sites, Beds: s.Beds, Plantings: s.Plantings, Records: s.Records, Over: s.Over})
	if err != nil {
		return nil, err
	}
	south := len(s.Sites) > 0 && sites[s.Sites[0].ID]
	c.out.Year = rotation.GrowingYear(s.Today, south)
	c.out.Named, c.out.Next = rotation.NamedYear(c.out.Year, south), rotation.NamedYear(c.out.Year+1, south)
	c.choose()
	c.stand()
	c.give()
	c.settle()
	c.lose()
	c.cover()
	return &c.out, nil
}

// lose tells what was lost or failed this year.
func (c *carrier) lose() {
	for i := range c.out.Sowings {
		s := &c.out.Sowings[i]
		left := record.Left(record.Losses(c.Records, s.From, 0), c.Today)
		if left >= 1 {
			continue
		}
		kind := Failed
		if left <= 0 {
			kind = Lost
		}
		c.out.Troubles = append(c.out.Troubles, Trouble{Kind: kind, Planting: s.From, Carried: s.ID, Bed: s.Bed, Share: 1 - left})
	}
}

// leans tells whether a sowing takes no ground of its own.
func leans(p *plan.Planting) bool {
	return p.To != "" && (p.Relation == plan.Under || p.Relation == plan.Between)
}
