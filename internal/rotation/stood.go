package rotation

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/plan"
	"garner/internal/record"
)

// stood is a time a crop was, or will be, in the ground of a bed.
type stood struct {
	planting string
	crop     *crop.Crop
	from     cal.Date
	to       cal.Date // None: it stays
}

// seen is a disease recorded on a bed.
type seen struct {
	problem Problem
	on      cal.Date
}

// stoodIn finds the times that plantings stood in each bed, in order. What was
// recorded comes before what was meant.
func stoodIn(g *Ground) map[string][]stood {
	made := facing(g)
	out := map[string][]stood{}
	for i := range g.Plantings {
		p := &g.Plantings[i]
		c, ok := g.Book.Crop(p.Crop)
		if !ok {
			continue
		}
		s := stood{planting: p.ID, crop: c, from: p.Date, to: g.endOf(p, c)}
		if on, ok := made.begun[p.ID]; ok {
			s.from = on
		}
		if on, ok := made.ended[p.ID]; ok {
			s.to = on
		}
		bed := p.Bed
		for _, m := range made.moved[p.ID] {
			before := s
			before.to = m.Date
			if before.from < before.to {
				out[bed] = append(out[bed], before)
			}
			if m.Bed != "" {
				bed = m.Bed
			}
			s.from = m.Date
		}
		if !s.to.IsSet() || s.to > s.from {
			out[bed] = append(out[bed], s)
		}
	}
	for bed := range out {
		slices.SortStableFunc(out[bed], func(a, b stood) int { return cmp.Compare(a.from, b.from) })
	}
	return out
}

// told is what records and other plantings say of a planting's time.
type told struct {
	begun, ended map[string]cal.Date
	moved        map[string][]record.Record // in order of date
}

func facing(g *Ground) told {
	t := told{map[string]cal.Date{}, map[string]cal.Date{}, map[string][]record.Record{}}
	for _, p := range g.Plantings {
		if p.Relation == plan.Moved && p.To != "" {
			t.ended[p.To] = p.Date // it was lifted that day
		}
	}
	for _, r := range g.Records {
		switch {
		case r.Planting == "":
		case r.What == record.Planted:
			t.begun[r.Planting] = r.Date
		case r.What == record.Cleared, r.What == record.Died && (r.Unit != "share" || r.Value >= 1):
			if r.What == record.Died && r.Unit != "" && r.Unit != "share" {
				continue // a few plants of it
			}
			t.ended[r.Planting] = r.Date
		case r.What == record.Moved && r.Bed != "":
			t.moved[r.Planting] = append(t.moved[r.Planting], r)
		}
	}
	for _, moves := range t.moved {
		slices.SortStableFunc(moves, func(a, b record.Record) int { return cmp.Compare(a.Date, b.Date) })
	}
	return t
}

// endOf is when a planting leaves the ground: as planned, as forecast, or as the
// crop book's days say; None for what stays year after year.
func (g *Ground) endOf(p *plan.Planting, c *crop.Crop) cal.Date {
	if p.ClearBy.IsSet() {
		return p.ClearBy
	}
	u, err := c.Use(p.Use)
	if err != nil {
		return p.Date + bookless
	}
	if u.Pattern == crop.Perennial {
		return cal.None
	}
	if g.Over != nil {
		if over := g.Over(p.ID); over.IsSet() {
			return over
		}
	}
	days := u.DaysSeed
	switch p.Method {
	case plan.Plant, plan.Cutting:
		days = u.DaysPlant
	case plan.Set, plan.Crown:
		days = u.DaysSet
	}
	if days == 0 {
		days = max(u.DaysPlant, u.DaysSet, bookless)
	}
	return p.Date + cal.Date(days+u.PickDays+u.CutDays*max(0, u.Cuts-1))
}

// bookless is how long a crop without days of its own is taken to stand [d].
// judgement: about a season.
const bookless = 120

// seenIn finds the diseases recorded on each bed.
func seenIn(g *Ground, stood map[string][]stood) map[string][]seen {
	out := map[string][]seen{}
	for _, r := range g.Records {
		if !r.Sees() {
			continue
		}
		p, _, ok := Find(r.Problem)
		if !ok {
			continue
		}
		for _, bed := range bedsOf(r, stood) {
			out[bed] = append(out[bed], seen{p, r.Date})
		}
	}
	return out
}

// bedsOf are the beds a record speaks of: its own, else those in which its
// planting had stood by then.
func bedsOf(r record.Record, in map[string][]stood) []string {
	if r.Bed != "" {
		return []string{r.Bed}
	}
	var beds []string
	for bed, list := range in {
		if slices.ContainsFunc(list, func(s stood) bool { return s.planting == r.Planting && s.from <= r.Date }) {
			beds = append(beds, bed)
		}
	}
	slices.Sort(beds)
	return beds
}
