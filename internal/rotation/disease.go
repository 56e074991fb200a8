package rotation

import (
	"math"

	"garner/internal/crop"
)

// disease finds a recorded disease that is still in the ground.
func (h *History) disease(bed string, its *crop.Crop, c Candidate, south, silent bool) *Clash {
	var worst *Clash
	for _, s := range h.seen[bed] {
		if s.on > c.Date || !s.problem.Strikes(its) {
			continue
		}
		years, source := h.after(&s.problem, its, c.Use)
		if years == 0 {
			continue
		}
		found := &Clash{Years: years, Problem: s.problem.ID, Seen: true, Gentle: silent, Source: source}
		found.Last = h.lastHost(bed, s, c, south)
		if found.wait(c.Date, south) && (worst == nil || found.Early > worst.Early) {
			found.Phrase = tellSeen(found, its, s, south)
			worst = found
		}
	}
	return worst
}

// lastHost is the growing year in which the disease was last fed: when it was
// seen, or a later host ended.
func (h *History) lastHost(bed string, s seen, c Candidate, south bool) int {
	last := season(s.on, south)
	for i := range h.stood[bed] {
		host := &h.stood[bed][i]
		ended := host.to.IsSet() && host.to <= c.Date
		if host.planting != c.Planting && ended && host.from < c.Date && host.to > s.on && s.problem.Strikes(host.crop) {
			last = max(last, host.last(c.Date, south))
		}
	}
	return last
}

// after returns the years a crop must stay away once a problem was recorded: the
// longest recommended interval for it by its lower end, else the longest life
// of the problem in the ground, and no less than the crop asks for every year.
func (h *History) after(p *Problem, its *crop.Crop, use string) (int, Source) {
	years, source := 0, Source{}
	for _, kind := range []string{rest, lasts} {
		for i := range h.facts.intervals {
			n := &h.facts.intervals[i]
			if n.Problem == p.ID && n.Kind == kind && n.YearsLow > years {
				years, source = n.YearsLow, Source{n.Source, n.Mark, n.Where}
			}
		}
		if years > 0 {
			break
		}
	}
	if u, err := its.Use(use); err == nil && int(math.Round(u.RotationYears)) > years {
		f := u.Fact("rotation_years")
		years, source = int(math.Round(u.RotationYears)), Source{f.Source, f.Mark, f.Where}
	}
	return years, source
}
