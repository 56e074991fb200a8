package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/protect"
	"garner/internal/record"
	"garner/internal/risk"
)

const (
	riskAhead = 365 // how far plantings to come are looked at [d]
	riskSoon  = 28  // within which a planting to come counts as standing soon [d]
)

// hosts are the plantings of a site that the rules of one problem are about and that
// stand or come within the year, in order of date.
func (w *riskWork) hosts(s *riskSite, rules []*risk.Rule) ([]RiskHost, error) {
	var out []RiskHost
	exposed := map[string]map[string]protect.Exposed{} // by bed
	for i := range w.plantings {
		p := &w.plantings[i]
		bed := s.beds[p.Bed]
		if bed == nil || w.gone[p.ID] || p.Date >= w.today+riskAhead || !struck(rules, p) {
			continue
		}
		if _, done := exposed[p.Bed]; !done {
			var err error
			if exposed[p.Bed], err = protect.Exposures(w.bedOf(s, p.Bed), rules[0].Problem); err != nil {
				return nil, err
			}
		}
		e, known := exposed[p.Bed][p.ID]
		if !known || e.To <= w.today {
			continue
		}
		h := RiskHost{Planting: p.ID, Name: w.n.use(p.Crop, p.Use), Bed: p.Bed, BedName: w.n.bed(p.Bed), From: p.Date, Until: min(e.To, p.Date+mostStay),
			Stands: p.Date <= w.today, Shut: e.Shut, GapMM: e.GapMM, Wintered: e.Wintered, Try: cal.None}
		if h.Open = openOf(e.Open, rules[0].TenderD, p); rules[0].TenderD > 0 && len(ahead(h.Open, w.today)) == 0 {
			continue // past the time in which it is struck
		}
		out = append(out, h)
	}
	return out, nil
}

// mostStay is as long as a planting is told to stand [d]: what stands year after year.
const mostStay = 3650

// struck tells whether any of the rules is about a planting's crop.
func struck(rules []*risk.Rule, p *plan.Planting) bool {
	return slices.ContainsFunc(rules, func(r *risk.Rule) bool { return slices.Contains(r.Crops, p.Crop) })
}

// openOf are the days on which a planting lies open: all, or of a pest that strikes
// seed and seedlings the first ones of what is sown where it grows.
func openOf(open []protect.Span, tenderD int, p *plan.Planting) []risk.Stay {
	var out []risk.Stay
	if tenderD > 0 && p.Method != plan.Seed && p.Method != "" {
		return nil
	}
	for _, s := range open {
		until := s.To
		if tenderD > 0 {
			until = min(until, p.Date+cal.Date(tenderD))
		}
		if until > s.From {
			out = append(out, risk.Stay{From: s.From, Until: until})
		}
	}
	return out
}

// bedOf is a bed with all that stands and lies in it, for the covers.
func (w *riskWork) bedOf(s *riskSite, bed string) protect.Bed {
	b := protect.Bed{Book: w.a.setting.Book, Covers: place.CoversOf(w.a.holding.Covers, bed), Records: w.a.holding.Records, South: s.south, Over: w.ends}
	for _, p := range w.plantings {
		if p.Bed == bed {
			b.Plantings = append(b.Plantings, p)
		}
	}
	return b
}

// ends is when a planting is over: as forecast, else after the days of the crop book.
func (w *riskWork) ends(planting string) cal.Date {
	if w.over != nil {
		if d := w.over(planting); d.IsSet() {
			return d
		}
	}
	p, known := w.n.plantings[planting]
	c, grown := w.a.setting.Book.Crop(p.Crop)
	if !known || !grown {
		return cal.None
	}
	u, err := c.Use(p.Use)
	if err != nil || u.Pattern == crop.Perennial {
		return cal.None
	}
	days := u.DaysSeed
	if p.Method == plan.Plant || days == 0 {
		days = max(u.DaysPlant, u.DaysSet, days)
	}
	if days == 0 {
		return cal.None
	}
	return p.Date + cal.Date(days+u.PickDays+u.CutDays*max(0, u.Cuts-1))
}

// standsSince is the first day of the season on which any of the hosts stood: as it
// came up where that was recorded, else as it went in; None while none does.
func (w *riskWork) standsSince(s *riskSite, hosts []RiskHost) cal.Date {
	first := cal.None
	for i := range hosts {
		if !hosts[i].Stands {
			continue
		}
		day := hosts[i].From
		for _, r := range w.a.holding.Records {
			if r.What == record.Emerged && r.Planting == hosts[i].Planting && r.Date > day && r.Date <= w.today {
				day = r.Date
			}
		}
		if !first.IsSet() || day < first {
			first = day
		}
	}
	if first.IsSet() {
		return max(first, s.start)
	}
	return cal.None
}
