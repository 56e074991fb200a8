package jobs

import (
	"math"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/season"
)

// life is one planting with the days of its life, recorded or forecast.
type life struct {
	p      plan.Planting
	crop   *crop.Crop
	use    *crop.Use
	method string
	bed    *place.Bed
	south  bool
	name   string

	raised, planted, emerged, ready, pick, over, gone moment

	food     food
	flows    bool // it is picked as it ripens, not pulled
	plants   float64
	rowM     float64
	picks    int      // that were recorded
	picked   cal.Date // the last of them; None: none
	taken    []pick
	liftKg   float64 // that is lifted for a store [kg]
	started  bool    // recorded as put in, or said to be
	unraised bool    // said not to be raised
	ended    bool    // recorded as gone
}

// lay makes the lives of the plan's plantings that reach the table.
func (d *deriver) lay() {
	fates := map[string]*outlook.Fate{}
	for i := range d.Table.Plantings {
		fates[d.Table.Plantings[i].Planting] = &d.Table.Plantings[i]
	}
	varieties := map[string]string{}
	for _, v := range d.Holding.Varieties {
		varieties[v.ID] = v.Name
	}
	for _, p := range d.Plantings {
		c, known := d.Book.Crop(p.Crop)
		bed := d.beds[p.Bed]
		if !known || bed == nil || fates[p.ID] == nil {
			continue
		}
		u, err := c.Use(p.Use)
		if err != nil {
			continue
		}
		l := &life{p: p, crop: c, use: u, bed: bed, south: d.south(bed.Site), name: u.Label, method: string(p.Method), picked: cal.None}
		if l.method == "" && len(u.Methods) > 0 {
			l.method = u.Methods[0]
		}
		if v := varieties[p.Variety]; v != "" {
			l.name += " ‘" + v + "’"
		}
		l.space()
		l.foresee(fates[p.ID], d.Today-lookBack, d.Until+lookAhead)
		l.remember(d.Holding.Records, d.Today)
		d.answered(l)
		l.yield(d)
		d.lives = append(d.lives, l)
		d.byBed[bed.ID] = append(d.byBed[bed.ID], l)
	}
}

func (d *deriver) south(site string) bool {
	i, ok := d.sites[site]
	return ok && d.Holding.Sites[i].Location.LatitudeDeg < 0
}

// space counts plants and metres of row.
func (l *life) space() {
	inRow, between := l.use.InRowM, l.use.BetweenRowM
	if l.p.InRowM > 0 {
		inRow = l.p.InRowM
	}
	if l.p.BetweenRowM > 0 {
		between = l.p.BetweenRowM
	}
	if between > 0 {
		l.rowM = l.p.AreaM2 / between
	}
	if inRow > 0 {
		l.plants = math.Max(1, math.Round(l.rowM/inRow))
	}
}

// lookBack and lookAhead are the days before today and past the last for which food is
// added up: what was lifted is tended for some weeks, and a pick is weighed until the
// next.
const (
	lookBack  = 60
	lookAhead = 21
)

// flows tells whether a use is picked as it ripens.
func flows(u *crop.Use) bool { return u.Pattern != crop.Pull && u.Feeds() }

// foresee reads the days of its life off the futures.
func (l *life) foresee(f *outlook.Fate, from, until cal.Date) {
	l.planted, l.raised = planned(l.p.Date), planned(l.p.Date-cal.Date(math.Round(l.use.RaiseDays)))
	l.emerged = momentOf(f, func(o *season.Outcome) int { return o.Emerged })
	l.ready = momentOf(f, func(o *season.Outcome) int { return o.Ready })
	l.over = momentOf(f, func(o *season.Outcome) int { return o.Over })
	l.gone = momentOf(f, func(o *season.Outcome) int { return o.Gone })
	l.pick = momentOf(f, func(o *season.Outcome) int { return o.First })
	l.food, l.flows = foodOf(f, from, until), flows(l.use)
}

// remember puts what was recorded in the place of what was forecast.
func (l *life) remember(records []record.Record, today cal.Date) {
	for i := range records {
		r := &records[i]
		if r.Planting != l.p.ID {
			continue
		}
		if l.use.Pattern == crop.Perennial && r.Date < today-aSeason && (r.Picks() || r.What == record.Emerged) {
			continue // of another year
		}
		switch r.What {
		case record.Raised:
			l.raised = on(r.Date)
		case record.Planted:
			l.planted, l.started = on(r.Date), true
		case record.Emerged:
			l.emerged = on(r.Date)
		case record.Cleared, record.Moved, record.Died:
			if r.Unit == "" {
				l.gone, l.ended = on(r.Date), true
			}
		}
		if r.Picks() {
			if !l.pick.known || r.Date < l.pick.mid {
				l.pick = on(r.Date)
			}
			l.picks++
			l.picked = max(l.picked, r.Date)
			if r.Unit == "kg" {
				l.taken = append(l.taken, pick{r.Date, r.Value})
			}
		}
		if r.What == record.LastPick {
			l.over = on(r.Date)
		}
	}
}

// aSeason is how long what a perennial gave counts as of this year [d].
const aSeason = 200

// pick is a recorded pick.
type pick struct {
	on cal.Date
	kg float64
}

// answered takes in what was said of raising a planting and of putting it in: what was
// left out is not there to be worked on.
func (d *deriver) answered(l *life) {
	if t := d.answers.of(string(SowIndoors) + ":" + l.p.ID); t.finished {
		l.unraised = !t.doneOn.IsSet()
		if t.doneOn.IsSet() && !l.raised.recorded {
			l.raised = on(t.doneOn)
		}
	}
	t := d.answers.of(string(startKind(l)) + ":" + l.p.ID)
	switch {
	case l.started || !t.finished:
	case t.doneOn.IsSet():
		l.planted, l.started = on(t.doneOn), true
	default:
		l.gone, l.ended = planned(t.lastOn), true // it never was there
	}
}

// worthLifting is the least that is lifted for a store [kg]. Judgement.
const worthLifting = 0.5

// yield is what is lifted when a planting ends: what stood on its last day in the mean
// of the futures, less what is eaten of it before then; once it is gone what was
// recorded that day.
func (l *life) yield(d *deriver) {
	if l.ended && !l.gone.recorded {
		return
	}
	if l.ended {
		for _, p := range l.taken {
			if p.on == l.gone.mid {
				l.liftKg += p.kg
			}
		}
		if l.liftKg > 0 {
			return
		}
	}
	l.liftKg = l.food.last
	for week, kg := range d.fresh[l.p.ID] {
		if d.Table.From+cal.Date(week*aWeek) < l.end() {
			l.liftKg -= kg
		}
	}
	for _, p := range l.taken {
		l.liftKg -= p.kg
	}
	l.liftKg = math.Max(0, l.liftKg)
}

// end is the last day on which it is there to be worked on.
func (l *life) end() cal.Date {
	end := endless
	if l.gone.is() {
		end = l.gone.mid
	}
	if l.p.ClearBy.IsSet() {
		end = min(end, l.p.ClearBy)
	}
	return end
}

// lifted tells whether it is lifted for store when it ends, not picked off.
func (l *life) lifted() bool {
	return l.p.Store != "" && l.use.Pattern == crop.Pull && l.use.Feeds()
}

// moment is the day of its life that data name.
func (l *life) moment(name string) moment {
	switch name {
	case "raised":
		return l.raised
	case "planted":
		return l.planted
	case "emerged":
		return l.emerged
	case "ready":
		return l.ready
	case "pick":
		return l.pick
	case "over":
		end := l.end()
		if l.over.is() {
			end = min(end, l.over.mid)
		}
		return moment{end, end, end, 1, l.over.known, l.over.recorded}
	case "lifted":
		if l.lifted() && l.gone.is() && l.liftKg >= worthLifting {
			return l.gone
		}
	}
	return moment{early: cal.None, mid: cal.None, late: cal.None}
}

// stop is the bed of a planting.
func (d *deriver) stop(b *place.Bed) Stop {
	return Stop{Site: b.Site, Part: AtBed, Bed: b.ID, Order: b.Order, site: d.sites[b.Site]}
}

// elsewhere is a part of a site that is no bed; of no site it is of the first.
func (d *deriver) elsewhere(site string, part int) Stop {
	if site == "" && len(d.Holding.Sites) > 0 {
		site = d.Holding.Sites[0].ID
	}
	return Stop{Site: site, Part: part, site: d.sites[site]}
}

// covered tells whether a bed lies under a cover on a day.
func (d *deriver) covered(bed string, day cal.Date) bool { return d.over(bed, day).Kind != cover.Open }

// endless is beyond the end of every table.
const endless = cal.Date(1 << 30)
