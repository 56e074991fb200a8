package desk

import (
	"math"
	"strings"

	"garner/internal/advise"
	"garner/internal/cover"
	"garner/internal/mend"
	"garner/internal/plan"
	"garner/internal/words"
)

// mendTitle says what is proposed.
func (n *namer) mendTitle(p *mend.Proposal) words.Phrase {
	args := words.Args{"name": n.planting(p.Was.ID), "bed": n.bed(p.Planting.Bed), "area": p.Planting.AreaM2, "date": p.Planting.Date,
		"before": p.Was.AreaM2, "kg": p.Takes.BoughtKg}
	switch p.Kind {
	case mend.Sow:
		return n.sowTitle(p.Candidate)
	case mend.Cover:
		args["kind"] = coverName(p.Spell.Kind)
		args["bed"], args["on"], args["off"] = n.bed(p.Spell.Bed), p.Spell.On, p.Spell.Off
		return words.P("desk.mend_cover", args)
	case mend.Store:
		args["store"], args["was"] = n.store(p.Planting.Store), n.store(p.Was.Store)
		if p.Was.Store != "" {
			return words.P("desk.mend_store_instead", args)
		}
		return words.P("desk.mend_store", args)
	case mend.Enlarge:
		return words.P("desk.mend_enlarge", args)
	case mend.Shift:
		args["was"] = p.Was.Date
		return words.P("desk.mend_shift", args)
	case mend.Buy:
		return words.P("desk.mend_buy", args)
	}
	return words.P("desk.mend_leave", args)
}

// sowTitle says how and when a candidate goes in, and where.
func (n *namer) sowTitle(c *advise.Candidate) words.Phrase {
	p := &c.Planting
	args := words.Args{"name": n.use(p.Crop, p.Use), "bed": n.bed(p.Bed), "area": p.AreaM2, "date": p.Date, "raise": c.RaiseFrom}
	switch {
	case p.Method == plan.Seed:
		return words.P("desk.mend_sow", args)
	case c.Late:
		return words.P("desk.mend_plant_had", args)
	case c.RaiseFrom.IsSet():
		return words.P("desk.mend_plant", args)
	}
	return words.P("desk.mend_set", args)
}

// coverName is what a kind of cover is called.
func coverName(k cover.Kind) words.Phrase {
	return words.P("desk.value_covers.kind."+strings.NewReplacer(" + ", "_", " ", "_").Replace(string(k)), nil)
}

// mendDoes says what a proposal does for the gap and elsewhere.
func mendDoes(l *MendLine, g *MendGap) []words.Phrase {
	args := words.Args{"kg": l.GapKg, "short": g.ShortKg, "n": l.Weeks, "weeks": g.Weeks, "before": l.Short, "after": l.Left, "whole": l.DropKg, "buy": l.BuyKgPerWeek, "first": g.First, "last": g.Last}
	switch {
	case mend.Kind(l.Kind) == mend.Leave:
		return []words.Phrase{words.P("desk.mend_leave_does", args)}
	case mend.Kind(l.Kind) == mend.Buy && len(l.Try) == 0:
		return []words.Phrase{words.P("desk.mend_buy_unwanted", args)}
	case mend.Kind(l.Kind) == mend.Buy:
		return []words.Phrase{words.P("desk.mend_buy_does", args)}
	}
	out := []words.Phrase{words.P("desk.mend_does", args)}
	switch {
	case l.Weeks >= g.Weeks:
		out = append(out, words.P("desk.mend_weeks_all", args))
	case l.Weeks > 0:
		out = append(out, words.P("desk.mend_weeks", args))
	}
	if math.Abs(l.DropKg-l.GapKg) >= leastKg && len(l.Elsewhere) == 0 {
		out = append(out, words.P("desk.mend_whole", args))
	}
	var costs []words.Phrase
	for i := range l.Elsewhere {
		e := &l.Elsewhere[i]
		costs = append(costs, words.P("desk.mend_elsewhere_of", words.Args{"kg": e.Kg, "vegetable": e.Plural}))
	}
	if len(costs) > 0 {
		out = append(out, words.P("desk.mend_elsewhere", words.Args{"costs": costs}))
	}
	if l.Odds > 0 && mend.Kind(l.Kind) != mend.Sow { // a sowing's reason has them
		out = append(out, words.P("desk.mend_odds", words.Args{"odds": l.Odds}))
	}
	return out
}

// What is too little of a cost to be told.
const (
	leastM2Weeks = 0.5
	leastWorkH   = 0.05
)

// mendCosts says what a proposal takes.
func mendCosts(l *MendLine) []words.Phrase {
	var out []words.Phrase
	t := &l.Takes
	if math.Abs(t.M2Weeks) >= leastM2Weeks {
		key := "desk.mend_ground"
		if t.M2Weeks < 0 {
			key = "desk.mend_ground_less"
		}
		out = append(out, words.P(key, words.Args{"n": math.Abs(t.M2Weeks)}))
	}
	switch {
	case t.Plants > 0 && l.Method == string(plan.Set):
		out = append(out, words.P("desk.mend_sets", words.Args{"n": t.Plants}))
	case t.Plants > 0:
		out = append(out, words.P("desk.mend_plants", words.Args{"n": t.Plants}))
	case t.SeedG > 0:
		out = append(out, words.P("desk.mend_seed", words.Args{"kg": t.SeedG / 1000}))
	}
	if t.CoverM2 > 0 {
		out = append(out, words.P("desk.mend_cover_m2", words.Args{"area": t.CoverM2}))
	}
	if t.WorkH >= leastWorkH {
		out = append(out, words.P("desk.mend_work", words.Args{"h": t.WorkH}))
	}
	return out
}
