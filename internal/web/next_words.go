package web

import (
	"maps"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
	"garner/internal/words"
)

// nextLead says what ground it is and what does most for the table.
func (v *visit) nextLead(view *desk.AdviseView) []string {
	args := words.Args{"area": view.AreaM2, "from": words.Sharp(view.From, view.Today), "until": view.Until}
	key := "web.next_lead_open"
	switch {
	case view.From <= view.Today && !view.Until.IsSet():
		key = "web.next_lead_now_open"
	case view.From <= view.Today:
		key = "web.next_lead_now"
	case view.Until.IsSet():
		key = "web.next_lead"
	}
	out := []string{v.say(key, args)}
	if len(view.Candidates) == 0 {
		return append(out, v.say("web.next_none", words.Args{"n": view.Uses}))
	}
	c := &view.Candidates[0]
	key = "web.next_most_other"
	args = words.Args{"name": v.plural(c), "kg": c.DropKg, "short": c.ShortKg, "left": c.LeftKg}
	if c.FillFrom.IsSet() {
		key = "web.next_most"
		args["when"] = v.monthsOf(c.FillFrom, c.FillTo)
	}
	return append(out, v.say(key, args))
}

func (v *visit) plural(c *desk.CandidateView) string { return capital(c.Name) }

// monthsOf names the months between two days.
func (v *visit) monthsOf(first, last cal.Date) words.Phrase {
	args := words.Args{"first": first, "last": last}
	switch (last.Year()-first.Year())*12 + last.Month() - first.Month() {
	case 0:
		return words.P("advise.month", args)
	case 1:
		return words.P("advise.two_months", args)
	}
	return words.P("advise.months", args)
}

// nextLine tells one candidate.
func (v *visit) nextLine(i int, view *desk.AdviseView, tried []plan.Change) (nextLine, error) {
	c := &view.Candidates[i]
	entry, err := v.entry()
	l := nextLine{N: i + 1, Name: capital(c.Name), BookPath: cropPath(c.Crop, c.Use), Worth: v.worthDraw(c.DropKg, mostOf(view)),
		How: v.nextHow(c, view.Today), Reason: v.words.Text(c.Reason), Need: v.nextNeed(c), Accept: v.say("web.next_sow_this", nil),
		Try: withTried(vegetablePath(c.Vegetable), withChange(tried, c.TryCandidate()))}
	if c.Method != string(plan.Seed) {
		l.Accept = v.say("web.next_plant_this", nil)
	}
	if c.FillFrom.IsSet() {
		l.Mended = v.nextMended(c)
	}
	if c.Clash != nil {
		l.Clash = v.words.Text(*c.Clash)
	}
	for _, r := range c.Remarks {
		l.Remarks = append(l.Remarks, v.words.Text(r))
	}
	l.Hidden = []hiddenField{{"entry", entry}}
	for _, name := range slices.Sorted(maps.Keys(c.Cells)) {
		if value := c.Cells[name]; value != "" && name != "bed" {
			l.Hidden = append(l.Hidden, hiddenField{name, value})
		}
	}
	return l, err
}

// nextMended says what still lacks with a candidate, and what it is worth.
func (v *visit) nextMended(c *desk.CandidateView) string {
	portions, key := math.Round(c.Portions), "web.next_mended"
	switch {
	case portions < 1:
		key = "web.next_mended_little"
	case portions >= 100:
		portions = math.Round(portions/10) * 10
	}
	return v.say(key, words.Args{"left": c.LeftKg, "kg": c.DropKg, "n": portions})
}

// mostOf is the largest worth of a view.
func mostOf(view *desk.AdviseView) float64 {
	most := 0.0
	for i := range view.Candidates {
		most = max(most, view.Candidates[i].DropKg)
	}
	return most
}

// nextHow says how and when a candidate goes in, and when it is ready.
func (v *visit) nextHow(c *desk.CandidateView, today cal.Date) string {
	key := "web.next_set"
	switch {
	case c.Method == string(plan.Seed):
		key = "web.next_sow"
	case c.Late:
		key = "web.next_plant_had"
	case c.RaiseFrom.IsSet():
		key = "web.next_plant"
	}
	return v.say(key, words.Args{"date": words.Sharp(c.Date, today), "raise": words.Sharp(c.RaiseFrom, today), "ready": words.Third(c.Ready.P50)})
}

// nextNeed says what seed or plants a candidate takes, and what of it is on hand.
func (v *visit) nextNeed(c *desk.CandidateView) string {
	seed := words.P("web.next_grams", words.Args{"kg": c.SeedG / 1000})
	if c.SeedG < 1 {
		seed = words.P("web.next_seeds", words.Args{"n": math.Ceil(c.Seeds)})
	}
	args := words.Args{"seed": seed, "n": c.Plants}
	key := ""
	switch {
	case c.Plants > 0 && c.Method == string(plan.Set):
		key = "web.next_sets"
	case c.Plants > 0 && c.SeedG > 0 && !c.Late:
		key = "web.next_plants_seed"
	case c.Plants > 0:
		key = "web.next_plants"
	case c.SeedG > 0:
		key = "web.next_seed"
	default:
		return ""
	}
	need := v.say(key, args)
	switch {
	case c.Lot != nil && c.Enough:
		return v.say("web.next_enough", words.Args{"need": need})
	case c.Lot != nil:
		return v.say("web.next_some", words.Args{"need": need})
	}
	return v.say("web.next_all", words.Args{"need": need})
}
