package desk

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/frost"
	"garner/internal/words"
)

// FrostAhead is a tender planting that is to go in before high summer.
type FrostAhead struct {
	Planting string   `json:"planting"`
	Name     string   `json:"name"`
	Bed      string   `json:"bed"`
	On       cal.Date `json:"on"`
	Under    string   `json:"under"`
	Frost    float64  `json:"frost_after"` // share of the futures
	Hurt     float64  `json:"hurt"`        // share in which it is hurt under the covers that are planned
	FirstC   float64  `json:"first_c"`

	Says words.Phrase `json:"-"`
}

// FrostHeat is what is too hot on a bed.
type FrostHeat struct {
	Bed       string         `json:"bed"`
	Name      string         `json:"name"`
	Rule      string         `json:"rule"`
	Under     string         `json:"under"`
	Plantings []string       `json:"plantings"`
	FromC     float64        `json:"from_c"`
	Days      []FrostHeatDay `json:"days"`
	Source    string         `json:"source"`
	Mark      string         `json:"mark"`

	Says []words.Phrase `json:"-"`
	Does words.Phrase   `json:"-"` // what growers do about it
}

// FrostHeatDay is a day on which it may be too hot; its spread is of the maximum under
// the cover.
type FrostHeatDay struct {
	Date cal.Date   `json:"date"`
	C    frost.Tens `json:"c"`
	Odds float64    `json:"odds"`
}

// FrostSowing is a sowing whose seed may sleep.
type FrostSowing struct {
	Planting string     `json:"planting"`
	Name     string     `json:"name"`
	Bed      string     `json:"bed"`
	On       cal.Date   `json:"on"`
	Rule     string     `json:"rule"`
	C        frost.Tens `json:"c"`
	Odds     float64    `json:"odds"`
	Sure     float64    `json:"most_sleep"`
	Source   string     `json:"source"`
	Mark     string     `json:"mark"`

	Says []words.Phrase `json:"-"`
	Does words.Phrase   `json:"-"`
}

func (n *frostNamer) setOut(s *frost.SetOut) FrostAhead {
	out := FrostAhead{Planting: s.Planting.ID, Name: n.use(s.Planting.Crop, s.Planting.Use), Bed: n.bed(s.Planting.Bed), On: s.On, Under: string(s.Under), Frost: s.Frost, Hurt: s.Hurt, FirstC: s.FirstC}
	args := words.Args{"crop": out.Name, "bed": out.Bed, "on": s.On, "frost": s.Frost, "hurt": s.Hurt, "cover": coverName(s.Under)}
	key, safe := "desk.frost_ahead_covered", "desk.frost_ahead_covered_safe"
	if s.Under == cover.Open {
		key, safe = "desk.frost_ahead_open", "desk.frost_ahead_open_safe"
	}
	if s.Hurt < frost.Least {
		key = safe
	}
	out.Says = words.P(key, args)
	return out
}

func (n *frostNamer) hot(h *frost.Heat) FrostHeat {
	out := FrostHeat{Bed: h.Bed, Name: n.bed(h.Bed), Rule: h.Rule.ID, Under: string(h.Under), Plantings: []string{}, FromC: h.Rule.FromC, Source: h.Rule.Source, Mark: h.Rule.Mark}
	var crops []string
	for _, p := range h.Plantings {
		out.Plantings, crops = append(out.Plantings, p.ID), append(crops, n.use(p.Crop, p.Use))
	}
	worst := 0
	for i, d := range h.Days {
		out.Days = append(out.Days, FrostHeatDay{d.Date, d.C, d.Odds})
		if d.Odds > h.Days[worst].Odds {
			worst = i
		}
	}
	d := h.Days[worst]
	args := words.Args{"cover": coverName(h.Under), "crops": crops, "from": h.Rule.FromC, "date": d.Date, "c": wholeC(d.C.Middle()), "high": wholeC(d.C[8]), "odds": d.Odds, "days": len(h.Days)}
	key := "desk.frost_heat_open"
	switch {
	case h.Rule.OfShut():
		key = "desk.frost_heat_shut"
	case h.Under != cover.Open:
		key = "desk.frost_heat_under"
	}
	if len(crops) > 0 {
		out.Says = append(out.Says, words.P("desk.frost_heat_crops", args))
	}
	out.Says, out.Does = append(out.Says, words.P(key, args)), h.Rule.Does()
	return out
}

func (n *frostNamer) sleeper(s *frost.Sowing) FrostSowing {
	out := FrostSowing{Planting: s.Planting.ID, Name: n.use(s.Planting.Crop, s.Planting.Use), Bed: n.bed(s.Planting.Bed), On: s.Planting.Date, Rule: s.Rule.ID, C: s.C, Odds: s.Odds, Sure: s.Sure, Source: s.Rule.Source, Mark: s.Rule.Mark}
	args := words.Args{"crop": out.Name, "bed": out.Bed, "on": out.On, "from": s.Rule.FromC, "to": s.Rule.ToC, "odds": s.Odds, "sure": s.Sure, "c": wholeC(s.C.Middle())}
	out.Says, out.Does = []words.Phrase{words.P("desk.frost_sowing", args)}, s.Rule.Does()
	return out
}
