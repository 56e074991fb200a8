package web

import (
	"math"
	"net/url"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// groundBed is the bed that is selected.
type groundBed struct {
	ID, Name, Path string
	Says           []string
	Next           string // what would do here
	Held           []groundHeld
}

// groundHeld is a planting of the bed, with the ways to try it otherwise.
type groundHeld struct {
	ID, Name, Path string
	When, Until    string
	Movable, Open  bool
	Steps          []stepLink
	Hidden         []hiddenField
	Bed, AreaM2    tryField
	Date           tryField
	Beds           []option
	Leave          string
}

// bed tells what holds the selected bed on the day and over the year.
func (s *groundShown) bed(b *desk.BedYear) *groundBed {
	out := &groundBed{ID: b.ID, Name: b.Name, Path: bedPath(b.ID), Says: s.bedWords(b),
		Next: bedPath(b.ID) + "/next?from=" + url.QueryEscape(s.day.String())}
	for i := range b.Held {
		out.Held = append(out.Held, s.held(b, &b.Held[i]))
	}
	return out
}

// bedWords say what stands in a bed on the day, until when, and what is free.
func (s *groundShown) bedWords(b *desk.BedYear) []string {
	var out []string
	for i := range b.Held {
		h := &b.Held[i]
		if !h.HoldsOn(s.day) {
			continue
		}
		args := words.Args{"name": h.Name, "area": h.HoldsM2, "day": planned(h.Clear.P50, s.view.Today), "days": int(h.Clear.P90-h.Clear.P10+1) / 2}
		key := "web.lanes_holds_stays"
		switch {
		case !h.Stays && args["days"].(int) > 0:
			key = "web.lanes_holds"
		case !h.Stays:
			key = "web.lanes_holds_sure"
		}
		out = append(out, capital(s.say(key, args)))
	}
	if share, _ := b.FreeOn(s.day); share > leastFreeTold/2 {
		key := "web.lanes_rest_free"
		if share > 1-leastFreeTold/2 {
			key = "web.lanes_all_free"
		}
		out = append(out, s.say(key, words.Args{"area": share * b.AreaM2()}))
	}
	return append(out, s.wrongWords(b)...)
}

// held tells a planting of the selected bed.
func (s *groundShown) held(b *desk.BedYear, h *desk.HeldGround) groundHeld {
	line := &h.PlantingLine
	out := groundHeld{ID: h.ID, Name: capital(h.Name), Path: withTried(plantingPath(h.ID), s.at.tried), When: s.whenWords(line, s.view.Today),
		Until: strings.TrimSpace(s.untilWords(b, h)[0]), Movable: h.Movable, Open: s.touched[h.ID]}
	if !h.Movable {
		return out
	}
	for _, step := range []struct {
		name string
		days cal.Date
	}{{"week_sooner", -7}, {"day_sooner", -1}, {"day_later", 1}, {"week_later", 7}} {
		tried := s.g.moved(s.at.tried, line, int(step.days))
		out.Steps = append(out.Steps, stepLink{step.name, s.at.trying(tried).path()})
	}
	for _, step := range []struct {
		name string
		by   float64
	}{{"smaller", -1}, {"larger", 1}} {
		out.Steps = append(out.Steps, stepLink{step.name, s.sized(b, h, step.by)})
	}
	out.Bed.Value, out.AreaM2.Value, out.Date.Value = h.Bed, plainNumber(h.AreaM2), h.Date.String()
	out.Beds = bedOptions(s.g.holding)
	out.Hidden = []hiddenField{{"change", h.ID}, {"at", s.at.day.String()}, {"site", s.at.site}}
	for _, t := range writtenTries(s.at.tried) {
		out.Hidden = append(out.Hidden, hiddenField{tryName, t})
	}
	return out
}

// areaSteps is how many steps a bed's ground is given and taken in.
const areaSteps = 10

// areaStep is by how much a planting is made smaller or larger [m2].
func areaStep(b *desk.BedYear) float64 { return max(0.1, math.Round(b.AreaM2()*10/areaSteps)/10) }

// sized tries a planting smaller or larger by a step, within its bed.
func (s *groundShown) sized(b *desk.BedYear, h *desk.HeldGround, by float64) string {
	step := areaStep(b)
	area := math.Round((h.AreaM2+by*step)*10) / 10
	area = max(min(step, h.AreaM2), min(area, max(b.AreaM2(), h.AreaM2)))
	tried := s.at.setting(h.ID, "area_m2", plainNumber(area)).tried
	return s.at.trying(s.g.tidy(tried)).path()
}

// typed puts what was typed back into the form it came from, with what is wrong.
func (b *groundBed) typed(query url.Values, wrong map[string]words.Phrase) {
	if b == nil {
		return
	}
	fill := filler(query, wrong)
	for i := range b.Held {
		if h := &b.Held[i]; h.ID == query.Get("change") {
			h.Open = true
			fill(&h.Bed, "bed")
			fill(&h.AreaM2, "area_m2")
			fill(&h.Date, "date")
		}
	}
}
