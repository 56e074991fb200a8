package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/words"
)

// WateringView is what the beds want, as the page tells it.
type WateringView struct {
	WateringResult
	Household string
	ID        string // of the holding
	Sites     []WaterSite
	Lead      []words.Phrase
	Doubts    []words.Phrase // what the figures cannot know
}

// WaterSite are the beds of a site that is walked, as a run of those of the result.
type WaterSite struct {
	ID, Name string
	Beds     []BedThirst
}

// wateringKey names what the beds want: any entry may change it, and the day moves it
// on.
func wateringKey(form string, version int64, now cal.Date, o WateringOptions) num.Digest {
	d := num.NewDigester(form)
	for _, n := range []int64{version, int64(now), int64(o.Leave), int64(o.Back), int64(o.enough())} {
		d.Int(n)
	}
	return d.Sum()
}

// WateringView tells what the beds of the holding as it stands want; the days away are
// those of o. It is worked out once for as long as the holding stands, apart from the
// table, which may be under way.
func (o *Office) WateringView(ask WateringOptions) (*WateringView, error) {
	h, version, err := o.standing()
	if err != nil {
		return nil, err
	}
	now, err := today(h)
	if err != nil {
		return nil, err
	}
	ask.Seed = pageSeed
	if !ask.Leave.IsSet() || ask.Leave == 0 {
		ask.Leave, ask.Back = cal.None, cal.None
	}
	if _, err := awayOf(ask, now); err != nil {
		return nil, err
	}
	key := wateringKey("watering", version, now, ask)
	if v, known := o.views.waterings.get(key); known {
		return v, nil
	}
	v, _, err := workedOut(o, key, forEver, func() (*WateringView, error) {
		r, err := wateringOf(h, ask, o.views.sky)
		if err != nil {
			return nil, err
		}
		v := &WateringView{WateringResult: *r, Household: h.Name, ID: h.ID}
		for i := range h.Sites {
			s := WaterSite{ID: h.Sites[i].ID, Name: h.Sites[i].Name}
			for _, b := range r.Beds {
				if b.Site == s.ID {
					s.Beds = append(s.Beds, b)
				}
			}
			if len(s.Beds) > 0 {
				v.Sites = append(v.Sites, s)
			}
		}
		v.say()
		o.views.waterings.keep(key, v)
		return v, nil
	})
	return v, err
}

// say puts the page's first sentences into words, and what the figures cannot know.
func (v *WateringView) say() {
	if len(v.Beds) == 0 {
		v.Lead = append(v.Lead, words.P("desk.water_none", nil))
		return
	}
	var due []BedThirst
	for _, b := range v.Beds {
		if b.NowL > 0 {
			due = append(due, b)
		}
	}
	switch args := (words.Args{"n": len(due), "cans": fewCans(v.All.NowCans)}); {
	case len(due) == 0:
		v.Lead = append(v.Lead, words.P("desk.water_none_now", nil))
	case len(due) <= 3:
		var names []string
		for _, b := range due {
			names = append(names, b.Name)
		}
		args["beds"] = names
		v.Lead = append(v.Lead, words.P("desk.water_now_few", args))
	default:
		v.Lead = append(v.Lead, words.P("desk.water_now", args))
	}
	if v.All.WeekL > 0 || v.All.DryL > 0 {
		v.Lead = append(v.Lead, words.P("desk.water_week", words.Args{"cans": fewCans(v.All.WeekCans), "dry": fewCans(CansOf(v.All.DryL, v.CanL))}))
	}
	v.sayFirst()
	v.sayDoubts()
}

// fewCans leaves the half away where there are ten cans and more.
func fewCans(cans float64) float64 {
	if cans >= 10 {
		return math.Ceil(cans)
	}
	return cans
}

// sayFirst tells which bed suffers first if nobody comes.
func (v *WateringView) sayFirst() {
	if v.First != nil {
		key := "desk.water_first"
		if v.First.On <= v.Today {
			key = "desk.water_first_today"
		}
		v.Lead = append(v.Lead, words.P(key, words.Args{"bed": v.First.Name, "on": v.First.On}))
		return
	}
	for _, b := range v.Beds {
		if b.WantsDry != nil && (v.First == nil || *b.WantsDry < v.First.On) {
			v.First = &FirstToWant{b.Bed, b.Name, *b.WantsDry}
		}
	}
	if v.First == nil {
		v.Lead = append(v.Lead, words.P("desk.water_lasts", nil))
		return
	}
	v.Lead = append(v.Lead, words.P("desk.water_lasts_dry", words.Args{"bed": v.First.Name, "on": v.First.On}))
	v.First = nil
}

// staleDays is how old the last day on file may be before it is told [d]. judgement.
const staleDays = 3

// Stale tells whether the last day of weather on file is too old for what fell lately.
func (v *WateringView) Stale(known *cal.Date) bool { return known == nil || *known < v.Today-staleDays }

// sayDoubts tells where no weather is on file, and that nothing was recorded.
func (v *WateringView) sayDoubts() {
	for _, s := range v.Sites {
		switch known := s.Beds[0].Why.KnownTo; {
		case known == nil:
			v.Doubts = append(v.Doubts, words.P("desk.water_no_weather", words.Args{"site": s.Name}))
		case v.Stale(known):
			v.Doubts = append(v.Doubts, words.P("desk.water_old_weather", words.Args{"site": s.Name, "on": *known}))
		}
	}
	untold := 0
	for _, b := range v.Beds {
		if !b.Recorded {
			untold++
		}
	}
	if untold > 0 {
		v.Doubts = append(v.Doubts, words.P("desk.water_untold", words.Args{"n": untold}))
	}
}
