package advise

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/space"
	"garner/internal/words"
)

// Choice sets leaving a standing planting against clearing it, week by week.
type Choice struct {
	Planting string
	Bed      string
	AreaM2   float64
	Until    cal.Date   // the ground is held again from here on; None: open
	Weeks    []Week     // from clearing at once on
	Best     int        // index of the best week
	Next     *Candidate // the best follow-on from the best week, its worth against nothing after it; nil: none is worth it
	Reason   words.Phrase
}

// Week is clearing in one week. Each of the worths is the difference of two full
// tables [kg of shortage].
type Week struct {
	Clear    cal.Date
	KeepKg   float64 // what leaving it until then gives, against clearing it at once
	NextKg   float64 // what the best follow-on from then gives on top
	TotalKg  float64 // both
	NextCrop string  // of the follow-on; empty: none is worth it
	NextUse  string
	NextDate cal.Date
}

// mostWeeks is how far ahead clearing is looked at, and followOns how many
// follow-ons are weighed for each week.
const (
	mostWeeks = 16
	followOns = 3
)

// KeepOrClear weighs leaving a standing planting week by week against clearing it
// and putting the best follow-on in its place.
func (a *Adviser) KeepOrClear(id string) (*Choice, error) {
	p, h, err := a.standing(id)
	if err != nil {
		return nil, err
	}
	c := &Choice{Planting: id, Bed: p.Bed, AreaM2: p.AreaM2, Until: a.heldAgain(h)}
	turn := cal.Date(a.Ground.Bed(p.Bed).TurnRoundD)
	weeks := a.clearings(c, turn)
	next, err := a.follow(c, weeks, turn)
	if err != nil {
		return nil, err
	}
	var edits []outlook.Edit
	for k, day := range weeks {
		cleared := p
		cleared.ClearBy = day
		edits = append(edits, outlook.Edit{Set: []plan.Planting{cleared}})
		for i := range next[k] {
			edits = append(edits, outlook.Edit{Set: []plan.Planting{cleared, next[k][i].planting}})
		}
	}
	weights, err := a.scales.Weigh(edits)
	if err != nil {
		return nil, err
	}
	a.compare(c, weeks, next, weights)
	return c, a.tellNext(c)
}

// tellNext fills in the last day and the reason of the follow-on.
func (a *Adviser) tellNext(c *Choice) error {
	if c.Next == nil {
		return nil
	}
	p := &c.Next.Planting
	list := []Candidate{*c.Next}
	if err := a.lastDays(list, Space{Bed: p.Bed, From: p.Date, Until: c.Until, AreaM2: p.AreaM2}); err != nil {
		return err
	}
	c.Next = &list[0]
	c.Next.Reason = c.Next.reason()
	return nil
}

// standing finds a planting that is in the ground today.
func (a *Adviser) standing(id string) (plan.Planting, *space.Hold, error) {
	for _, p := range a.scales.Plantings() {
		if p.ID != id {
			continue
		}
		bed := a.Ground.Bed(p.Bed)
		if bed == nil {
			break
		}
		h := bed.Hold(id)
		if h != nil && h.Perennial {
			return p, nil, fault.New(fault.Invalid, "advise.perennial", words.Args{"planting": id})
		}
		gone := h == nil || h.Clear.P50.IsSet() && h.Clear.P50 <= a.Today
		if gone || p.Date > a.Today {
			return p, nil, fault.New(fault.Invalid, "advise.not_standing", words.Args{"planting": id})
		}
		return p, h, nil
	}
	return plan.Planting{}, nil, fault.New(fault.NotFound, "advise.planting_unknown", words.Args{"planting": id})
}

// heldAgain is the day from which another planting needs a planting's ground;
// None when none does within the table.
func (a *Adviser) heldAgain(h *space.Hold) cal.Date {
	day := cal.None
	for _, o := range a.Ground.Bed(h.Bed).Holds {
		if o.Planting == h.Planting || o.Guest || o.From <= a.Today || !space.Meet(h.Pieces, o.Pieces) {
			continue
		}
		if !day.IsSet() || o.From < day {
			day = o.From
		}
	}
	return day
}

// clearings are the days on which it could be cleared: at once, then every week.
func (a *Adviser) clearings(c *Choice, turn cal.Date) []cal.Date {
	var out []cal.Date
	at := max(a.Today, a.Table.From+1) // the table sees nothing of what is gone when it opens
	for k := range mostWeeks + 1 {
		day := at + cal.Date(7*k)
		if k > 0 && (day >= a.Table.End() || c.Until.IsSet() && day+turn > c.Until) {
			break
		}
		out = append(out, day)
	}
	return out
}

// follow finds for each clearing the follow-ons that may be worth most.
func (a *Adviser) follow(c *Choice, weeks []cal.Date, turn cal.Date) ([][]way, error) {
	s := Space{Bed: c.Bed, From: weeks[0] + turn, Until: c.Until, AreaM2: c.AreaM2}
	out := make([][]way, len(weeks))
	if s.Until.IsSet() && s.Until-s.From < leastDays {
		return out, nil
	}
	days := startDays(&s, a.Table.End())
	for _, day := range weeks {
		if d := day + turn; d > days[0] && (!s.Until.IsSet() || s.Until-d >= leastDays) && d < a.Table.End()-leastDays {
			days = append(days, d)
		}
	}
	ways, err := a.screen(a.ways(s, compact(days)))
	if err != nil {
		return nil, err
	}
	for k, day := range weeks {
		used := map[string]bool{}
		for i := range ways { // the best first
			w := &ways[i]
			if w.planting.Date < day+turn || used[key(w.use)] || a.clashes(w) {
				continue
			}
			used[key(w.use)] = true
			if out[k] = append(out[k], *w); len(out[k]) == followOns {
				break
			}
		}
	}
	return out, nil
}

func (a *Adviser) clashes(w *way) bool { return a.Clash != nil && a.Clash(&w.planting) != nil }

// compare draws the weights together and finds the best week.
func (a *Adviser) compare(c *Choice, weeks []cal.Date, next [][]way, weights []outlook.Weight) {
	follow := make([]func() *Candidate, len(weeks))
	atOnce := weights[0].DropKg
	for k, day := range weeks {
		alone := weights[0].DropKg
		w := Week{Clear: day, KeepKg: alone - atOnce, NextDate: cal.None}
		weights = weights[1:]
		for i := range next[k] {
			found, its := &next[k][i], &weights[i]
			if kg := its.DropKg - alone; kg > max(w.NextKg, leastWorth) {
				w.NextKg, w.NextCrop, w.NextUse, w.NextDate = kg, found.use.Crop, found.use.Name, found.planting.Date
				follow[k] = func() *Candidate {
					made := a.candidate(found, its)
					made.DropKg = kg
					return &made
				}
			}
		}
		weights = weights[len(next[k]):]
		w.TotalKg = w.KeepKg + w.NextKg
		c.Weeks = append(c.Weeks, w)
	}
	c.Best = bestOf(c.Weeks)
	if tell := follow[c.Best]; tell != nil {
		c.Next = tell()
	}
	c.Reason = c.said()
}

// bestOf is the best week to clear: of those that give as much as any, the last
// after which something follows, since what stands may as well stay till then;
// where nothing follows, the first.
func bestOf(weeks []Week) int {
	most := weeks[0].TotalKg
	for _, w := range weeks {
		most = max(most, w.TotalKg)
	}
	best := -1
	for k, w := range weeks {
		if w.TotalKg >= most-betterBy && (best < 0 || w.NextCrop != "") {
			best = k
		}
	}
	return best
}

// betterBy is how much more a week must give to be told from another [kg].
const betterBy = 0.01

// said tells the choice in a sentence.
func (c *Choice) said() words.Phrase {
	w := &c.Weeks[c.Best]
	args := words.Args{"clear": w.Clear, "keep": w.KeepKg, "next": w.NextKg}
	if c.Next != nil {
		args["crop"], args["sow"] = c.Next.Crop.Plural, c.Next.Planting.Date
	}
	nothing := w.KeepKg < betterBy
	switch {
	case len(c.Weeks) == 1:
		return words.P("advise.clear_needed", args)
	case c.Next != nil && c.Best == 0:
		return words.P("advise.clear_now", args)
	case c.Next != nil && nothing:
		return words.P("advise.clear_by", args)
	case c.Next != nil:
		return words.P("advise.clear_then", args)
	case nothing:
		return words.P("advise.clear_nothing", args)
	case c.Best == len(c.Weeks)-1:
		return words.P("advise.leave", args)
	}
	return words.P("advise.leave_until", args)
}
