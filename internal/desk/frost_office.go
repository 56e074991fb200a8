package desk

import (
	"maps"
	"slices"
	"time"

	"garner/internal/cover"
	"garner/internal/frost"
	"garner/internal/num"
	"garner/internal/words"
)

// FrostView is what frost and heat do in the household, as it stands.
func (o *Office) FrostView(ask FrostOptions) (*FrostResult, error) {
	a, err := o.askKnown()
	if err != nil {
		return nil, err
	}
	key := frostKey(a, ask)
	if v, known := o.views.frosts.get(key); known {
		return v, nil
	}
	return o.frost(a, ask, key)
}

// frost works out a view and keeps it.
func (o *Office) frost(a *asked, ask FrostOptions, key num.Digest) (*FrostResult, error) {
	seen, known := o.views.seen.get(a.name)
	if !known {
		var err error
		if seen, err = frost.See(a.setting, o.views.nights); err != nil {
			return nil, err
		}
		o.views.seen.keep(a.name, seen)
	}
	v, err := frostResult(a, seen, ask)
	if err != nil {
		return nil, err
	}
	o.views.frosts.keep(key, v)
	return v, nil
}

// frostKey names an answer with all that may change it.
func frostKey(a *asked, ask FrostOptions) num.Digest {
	d := a.answer("frost")
	d.Int(int64(len(ask.Stages)))
	for _, id := range slices.Sorted(maps.Keys(ask.Stages)) {
		d.Text(id)
		d.Text(ask.Stages[id])
	}
	if ask.Minimum != nil {
		d.Float(*ask.Minimum)
	}
	return d.Sum()
}

// FrostTonight is the alarm of tonight in short, for other pages.
type FrostTonight struct {
	Odds     float64     // share of the futures in which something is hurt, of the bed with the greatest
	MinimumC float64     // in the open, in the middle of the futures, at the coldest site that has a bed at risk
	Beds     []FrostWarn // that are at risk, along the walking route
}

// FrostWarn is a bed that is at risk tonight.
type FrostWarn struct {
	Bed, Name, Site string
	Odds            float64
	Crops           []string
	Lay             string // kind of cover that is to be laid; empty: none is owned and free that helps
}

// alarmOdds are the odds from which other pages tell of a frost.
const alarmOdds = 0.3

// alarmPatience is how long another page waits for the alarm.
const alarmPatience = 40 * time.Millisecond

// FrostTonight is tonight's alarm for other pages; nil: there is none, or it is still
// being worked out. It never keeps a page waiting for long.
func (o *Office) FrostTonight() (*FrostTonight, error) {
	a, err := o.askKnown()
	if err != nil {
		if _, err = untold(err); err != nil {
			return nil, err
		}
		return nil, nil // a page tells of its own faults
	}
	key := frostKey(a, FrostOptions{})
	v, known := o.views.frosts.get(key)
	if !known {
		var there bool
		if v, there, err = workedOut(o, key, alarmPatience, func() (*FrostResult, error) { return o.frost(a, FrostOptions{}, key) }); !there || err != nil {
			_, err = untold(err)
			return nil, err
		}
	}
	return v.alarm(), nil
}

// alarm is tonight's alarm; nil under the odds from which it is told.
func (r *FrostResult) alarm() *FrostTonight {
	t := &FrostTonight{}
	for i := range r.Beds {
		b := &r.Beds[i]
		if b.Nights[0].Odds < alarmOdds {
			continue
		}
		w := FrostWarn{Bed: b.Bed, Name: b.Name, Site: b.Site, Odds: b.Nights[0].Odds, Crops: b.hurtTonight()}
		if b.Lay != nil {
			w.Lay = b.Lay.Lay
		}
		if c := r.outside(b.Site); len(t.Beds) == 0 || c < t.MinimumC {
			t.MinimumC = c
		}
		t.Beds, t.Odds = append(t.Beds, w), max(t.Odds, w.Odds)
	}
	if len(t.Beds) == 0 {
		return nil
	}
	return t
}

// outside is tonight's minimum in the open at a site, in the middle of the futures [C].
func (r *FrostResult) outside(site string) float64 {
	for i := range r.Sites {
		if r.Sites[i].Site == site {
			return r.Sites[i].Nights[0].C.Middle()
		}
	}
	return 0
}

// Says tells the alarm in a sentence.
func (t *FrostTonight) Says() words.Phrase {
	names := make([]string, len(t.Beds))
	for i := range t.Beds {
		names[i] = t.Beds[i].Name
	}
	args := words.Args{"odds": t.Odds, "c": wholeC(t.MinimumC), "beds": names, "n": len(names)}
	if len(names) > mostWarned {
		return words.P("desk.frost_alarm_many", args)
	}
	return words.P("desk.frost_alarm", args)
}

// mostWarned is how many beds an alarm names.
const mostWarned = 4

// Of is the alarm of one bed; false when it is in no danger.
func (t *FrostTonight) Of(bed string) (FrostWarn, bool) {
	if t != nil {
		for _, w := range t.Beds {
			if w.Bed == bed {
				return w, true
			}
		}
	}
	return FrostWarn{}, false
}

// Says tells the alarm of a bed.
func (w *FrostWarn) Says() words.Phrase {
	args := words.Args{"crops": w.Crops, "odds": w.Odds}
	if w.Lay == "" {
		return words.P("desk.frost_alarm_bed", args)
	}
	args["lay"] = coverName(cover.Kind(w.Lay))
	return words.P("desk.frost_alarm_bed_lay", args)
}
