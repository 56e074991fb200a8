package barren

import (
	"fmt"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/draft"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/season"
)

// tally is what became of what could not be grown.
type tally struct {
	lived bool // at least half of some sowing lived past its youth
}

// youngD is how long a plant counts as young [d]. judgement: what the frost takes
// within two months never had a season; what it takes later had too short a one.
const youngD = 60

// grows tells whether any use, way, week and kind of bed gives a usable crop: every
// fourth week first, then the others. What became of the rest is noted when it is asked.
func (f *finder) grows(v variant, uses []*crop.Use, note *tally) (bool, error) {
	for _, u := range uses {
		if u.Pattern == crop.Perennial && f.stands[useKey{u.Crop, u.Name}] {
			return true, nil
		}
	}
	g, err := f.ground(v)
	if err != nil {
		return false, err
	}
	for _, first := range []bool{true, false} {
		for _, u := range uses {
			for _, bed := range g.kinds {
				if ok, err := f.inBed(g, u, bed, nil, first, note); ok || err != nil {
					return ok, err
				}
			}
		}
	}
	return false, nil
}

// growsCovered tells whether any use gives a usable crop below a cover that the gear in
// stock reaches to, sown when a draft sows for it.
func (f *finder) growsCovered(uses []*crop.Use) (bool, error) {
	g, err := f.ground(variant{})
	if err != nil {
		return false, err
	}
	for _, u := range uses {
		if u.Pattern == crop.Perennial {
			continue
		}
		for _, bed := range g.kinds {
			for i := range g.spells[bed] {
				for _, first := range []bool{true, false} {
					if ok, err := f.inBed(g, u, bed, &g.spells[bed][i], first, nil); ok || err != nil {
						return ok, err
					}
				}
			}
		}
	}
	return false, nil
}

// inBed tells whether a use gives a usable crop in a bed, started in any way, below a
// cover or, with none, in the open.
func (f *finder) inBed(g *ground, u *crop.Use, bed string, under *cover.Spell, first bool, note *tally) (bool, error) {
	for _, method := range u.Methods {
		if ok, err := f.tries(g, u, bed, method, under, first, note); ok || err != nil {
			return ok, err
		}
	}
	return false, nil
}

// tries sows a use in a bed in some weeks: every fourth, or all others; for a cover, those
// about its time.
func (f *finder) tries(g *ground, u *crop.Use, bed, method string, under *cover.Spell, first bool, note *tally) (bool, error) {
	if method == string(plan.Plant) && draft.Closer(u) && u.Allows(string(plan.Seed)) {
		return false, nil
	}
	var all []plan.Planting
	span := yearWeeks
	if under != nil {
		span = coverWeeks
	}
	for _, date := range f.dates(u, method, first, span) {
		if under != nil && (date < draft.UnderFrom(*under) || date > draft.UnderUntil(*under)) {
			continue
		}
		p := plan.New(fmt.Sprint("barren-", len(all)), f.setting.Holding.Plan)
		p.Bed, p.Crop, p.Use, p.Method, p.Date, p.AreaM2 = bed, u.Crop, u.Name, plan.Method(method), date, 1
		all = append(all, p)
	}
	if len(all) == 0 {
		return false, nil
	}
	var over []place.CoverSpell
	if under != nil {
		over = []place.CoverSpell{{ID: "barren", Bed: bed, Spell: *under}}
	}
	tried, err := g.scales.TryUnder(bed, over, all, futures)
	if err != nil {
		return false, err
	}
	for i := range tried {
		if f.good(&tried[i], u, all[i].Date) {
			return true, nil
		}
		if note != nil && livedOn(&tried[i], u, all[i].Date) {
			note.lived = true
		}
	}
	return false, nil
}

// dates are the Mondays of so many weeks on which a use may be started: every fourth of them,
// or all others. Perennials are tried on every fourth only.
func (f *finder) dates(u *crop.Use, method string, first bool, span int) []cal.Date {
	if u.Pattern == crop.Perennial && !first {
		return nil
	}
	from := f.setting.From
	if from < f.setting.Today {
		from += 7
	}
	if method == string(plan.Plant) || method == string(plan.Cutting) {
		from += cal.Date(7 * min(mostRaise, (int(u.RaiseDays)+6)/7))
	}
	var out []cal.Date
	for week := range span {
		date := from + cal.Date(7*week)
		if (week%coarse == 0) == first && !season.TooEarly(u, growth.StartOf(method), date, f.northern()) {
			out = append(out, date)
		}
	}
	return out
}

func (f *finder) northern() bool {
	sites := f.setting.Holding.Sites
	return len(sites) == 0 || sites[0].Location.LatitudeDeg >= 0
}

// good tells whether a sowing is likely enough to give a usable crop. A perennial is
// to live as long as the weather is followed.
func (f *finder) good(t *outlook.Tried, u *crop.Use, date cal.Date) bool {
	if u.Pattern != crop.Perennial {
		return draft.Odds(t, u, date, f.northern()) >= draft.LeastOdds
	}
	lives := 0
	for _, o := range t.Years {
		if o.End == growth.Unfinished || o.End == growth.Harvested {
			lives++
		}
	}
	return float64(lives) >= draft.LeastOdds*float64(len(t.Years)) && lives > 0
}

// livedOn tells whether a sowing into warm soil came through and lived past its youth in at
// least half of the futures.
func livedOn(t *outlook.Tried, u *crop.Use, date cal.Date) bool {
	n := 0
	for i, o := range t.Years {
		last := o.Gone
		if last < 0 {
			last = int(date-t.First) + youngD + 1
		}
		if t.SoilC[i] >= u.SoilMinimumC && o.Emerged >= 0 && last-int(date-t.First) > youngD {
			n++
		}
	}
	return n > 0 && 2*n >= len(t.Years)
}
