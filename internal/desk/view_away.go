package desk

import (
	"garner/internal/cal"
	"garner/internal/words"
)

// AwayView is a time away as the page tells it.
type AwayView struct {
	*WateringView
	Rest  AwayRest
	Every int // how often the helper comes, as asked for; 0: as seldom as will do
	Says  []words.Phrase
}

// AwayView tells what a time away asks of the holding as it stands. every is how often
// somebody comes [d]; 0: as seldom as will do.
func (o *Office) AwayView(ask WateringOptions, every int) (*AwayView, error) {
	w, err := o.WateringView(ask)
	if err != nil {
		return nil, err
	}
	a, err := o.askKnown()
	if err != nil {
		return nil, err
	}
	d := a.answer("away")
	for _, n := range []int64{int64(ask.Leave), int64(ask.Back), int64(every), int64(ask.enough())} {
		d.Int(n)
	}
	key := d.Sum()
	if v, known := o.views.aways.get(key); known {
		return v, nil
	}
	work, err := o.weekWork(JobsOptions{}, true)
	if err != nil {
		return nil, err
	}
	v := &AwayView{Every: every}
	if v.Rest, err = awayRest(work, &w.WateringResult, every); err != nil {
		return nil, err
	}
	told := *w
	told.WateringResult = w.withRound(&v.Rest.Round)
	v.WateringView = &told
	v.Says = awaySays(&w.WateringResult, &v.Rest)
	o.views.aways.keep(key, v)
	return v, nil
}

// awaySays are the first sentences about a time away: the first bed to suffer, what it
// takes before, and how often somebody must come.
func awaySays(r *WateringResult, w *AwayRest) []words.Phrase {
	var out []words.Phrase
	first, firstDry := firstOf(r, func(b *BedThirst) *cal.Date { return b.Fails }), firstOf(r, func(b *BedThirst) *cal.Date { return b.FailsDry })
	switch {
	case first != nil:
		out = append(out, words.P("desk.away_first", words.Args{"bed": first.Name, "on": first.On}))
	case firstDry != nil:
		out = append(out, words.P("desk.away_first_dry", words.Args{"bed": firstDry.Name, "on": firstDry.On, "rest": 10 - r.Away.Enough}))
	default:
		out = append(out, words.P("desk.away_lasts", words.Args{"n": r.Away.Enough}))
	}
	cans := 0.0
	for _, b := range r.Beds {
		cans += b.BeforeCans
	}
	if cans > 0 {
		out = append(out, words.P("desk.away_give", words.Args{"cans": fewCans(cans), "l": r.Away.BeforeL, "n": r.Away.Enough}))
	}
	switch {
	case w.Round.EveryD == 1:
		out = append(out, words.P("desk.away_daily", nil))
	case w.Round.EveryD > 1:
		out = append(out, words.P("desk.away_every", words.Args{"n": w.Round.EveryD}))
	}
	return out
}

// firstOf is the first bed that suffers; nil: none.
func firstOf(r *WateringResult, day func(*BedThirst) *cal.Date) *FirstToWant {
	var first *FirstToWant
	for i := range r.Beds {
		b := &r.Beds[i]
		if on := day(b); on != nil && (first == nil || *on < first.On) {
			first = &FirstToWant{b.Bed, b.Name, *on}
		}
	}
	return first
}
