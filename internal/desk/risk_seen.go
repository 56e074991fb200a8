package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/record"
	"garner/internal/words"
)

const (
	seenOfLate = 28 // for which a sighting leads the page [d]
	foreseeing = 21 // days before a sighting in which a rule that fired foresaw it; judgement
)

// seen are the sightings of a problem at a site, the newest first.
func (w *riskWork) seen(s *riskSite, problem string) []RiskSighting {
	var out []RiskSighting
	for i := range w.a.holding.Records {
		r := &w.a.holding.Records[i]
		if !r.Sees() || r.Problem != problem || r.Date > w.today {
			continue
		}
		bed := r.Bed
		if bed == "" {
			bed = w.n.plantings[r.Planting].Bed
		}
		if s.beds[bed] == nil {
			continue
		}
		x := RiskSighting{ID: r.ID, Date: r.Date, Stage: r.Stage, Value: r.Value, Unit: r.Unit, Planting: r.Planting, Bed: bed, BedName: w.n.bed(bed), Note: r.Note}
		if p, known := w.n.plantings[r.Planting]; known {
			x.Name = w.n.use(p.Crop, p.Use)
		}
		out = append(out, x)
	}
	slices.SortStableFunc(out, func(a, b RiskSighting) int { return int(b.Date - a.Date) })
	return out
}

func (s *RiskSighting) flying() bool { return s.Stage == record.Flying }

// foreseen says of every sighting of the season whether a rule had told it.
func (i *RiskItem) foreseen(start cal.Date) {
	for k := range i.Seen {
		if s := &i.Seen[k]; s.Date >= start {
			s.Foreseen = i.foresaw(s)
		}
	}
}

func (i *RiskItem) foresaw(s *RiskSighting) words.Phrase {
	if i.Pest {
		return i.flightFor(s)
	}
	best, days := -1, 0
	told := false
	for k := range i.Rules {
		r := &i.Rules[k]
		told = told || r.Last.IsSet() && r.Last >= s.Date-foreseeing
		for _, f := range r.Fired {
			if ago := int(s.Date - f.Date); ago >= 0 && ago <= foreseeing && (best < 0 || ago > days) {
				best, days = k, ago
			}
		}
	}
	switch {
	case best >= 0:
		return words.P("desk.risk_foreseen", words.Args{"rule": i.Rules[best].Rule.Short(), "days": days})
	case told:
		return words.P("desk.risk_unforeseen", words.Args{"days": foreseeing})
	}
	return words.P("desk.risk_foresight_dark", nil)
}

// flightFor sets a sighting of a pest beside the event that its rules tell nearest to
// it.
func (i *RiskItem) flightFor(s *RiskSighting) words.Phrase {
	var nearest *RiskComing
	for k := range i.Rules {
		for c := range i.Rules[k].Coming {
			x := &i.Rules[k].Coming[c]
			if x.P50.IsSet() && (nearest == nil || apart(x.P50, s.Date) < apart(nearest.P50, s.Date)) {
				nearest = x
			}
		}
	}
	if nearest == nil {
		return words.P("desk.risk_foresight_dark", nil)
	}
	args := words.Args{"event": EventPhrase(nearest.Event), "date": nearest.P50, "days": int(apart(nearest.P50, s.Date))}
	switch {
	case nearest.P50 > s.Date:
		return words.P("desk.risk_seen_before", args)
	case nearest.P50 < s.Date:
		return words.P("desk.risk_seen_after", args)
	}
	return words.P("desk.risk_seen_on", args)
}

func apart(a, b cal.Date) cal.Date {
	if a > b {
		return a - b
	}
	return b - a
}
