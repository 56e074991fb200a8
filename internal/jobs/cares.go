package jobs

import (
	"strconv"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
)

// cares are the jobs that rules ask for a planting, and the stripping that the plan
// tells.
func (d *deriver) cares(l *life) {
	if l.p.StripOn.IsSet() && l.p.StripShare > 0 && !l.ended {
		j := begin(Strip, "", "strip:"+l.p.ID, d.stop(l.bed))
		j.Planting, j.Amount = l.p.ID, Amount{M2: l.p.AreaM2, RowM: l.rowM, Plants: l.plants}
		d.once(why(told(d.day(j, l.p.StripOn), l.name), "strip_light", l.p.StripOn))
	}
	for i := range d.care {
		if r := &d.care[i]; r.matches(l) {
			d.tend(r, l)
		}
	}
}

// matches tells whether a rule is about a planting.
func (r *careRule) matches(l *life) bool {
	return names(r.crops, l.crop.ID, l.crop.Family) && names(r.groups, l.use.Group) && names(r.uses, l.use.Name) &&
		names(r.methods, l.method) && names(r.patterns, string(l.use.Pattern))
}

// tend makes the jobs of one rule for one planting.
func (d *deriver) tend(r *careRule, l *life) {
	after := r.anchor == "lifted" // what was lifted is tended where it lies
	if l.ended && !after || r.anchor == "raised" && (l.started || l.unraised || d.plantsOnHand(l)) {
		return
	}
	j := begin(r.kind, r.id, r.id+":"+l.p.ID, d.stop(l.bed))
	j.Planting, j.Amount = l.p.ID, Amount{M2: l.p.AreaM2, RowM: l.rowM, Plants: l.plants}
	switch {
	case r.anchor == "raised" || r.kind == "chit" || r.kind == "harden-off":
		j.Stop, j.Amount.M2 = d.elsewhere("", AtIndoors), 0
	case after:
		j.Stop, j.Store = d.elsewhere("", AtStore), l.p.Store
		j.Stop.Store = l.p.Store
		j.Amount = Amount{Kg: l.liftKg}
	}
	if r.byRow {
		j.Amount.Plants, j.byRow = 0, true
	}
	j = told(j, l.name)
	if r.anchor == "calendar" {
		d.yearly(j, r.from, r.to, l.south, func(next *Job) bool {
			*next = why(*next, r.why, next.Best)
			return l.there(next.Best) && d.fits(r, l, next.Best) && !(r.kind == Feed && d.fedIn(l, next.First, next.Last))
		})
		return
	}
	m := l.moment(r.anchor)
	if !m.is() || !m.mid.IsSet() || m.mid >= endless {
		return
	}
	j.Forecast, j.Odds = !m.known, m.odds
	from := m.mid + r.offset
	if r.every == 0 {
		if d.fits(r, l, from) && (after || r.anchor == "raised" || from <= l.end()) {
			d.onceAYear(why(d.before(r, d.day(j, from), l), r.why, m.mid), l)
		}
		return
	}
	end := l.moment(r.until)
	if !end.is() {
		return
	}
	until := min(end.mid+r.untilOffset, l.end())
	turns := again{from: from, every: r.every, until: until, since: cal.None}
	if r.kind == Feed {
		turns.done, turns.since = d.fed(l, r.every)
	}
	d.repeat(j, turns, func(next *Job, on cal.Date) bool {
		*next = why(*next, r.why, m.mid)
		return d.fits(r, l, on)
	})
}

// before ends a job that comes once where the rule says what it must be done before: the
// planting's own days know that better than the kind of work.
func (d *deriver) before(r *careRule, j Job, l *life) Job {
	end := l.moment(r.until)
	if r.until == "" || !end.is() || !end.mid.IsSet() || end.mid >= endless {
		return j
	}
	if last := end.mid + r.untilOffset; last < j.Last {
		j.Last, j.Reckoned = last, true
		j.First, j.Best = min(j.First, last), min(j.Best, last)
	}
	return j
}

// onceAYear takes in a job that comes once; of what stands for years, once a year.
func (d *deriver) onceAYear(j Job, l *life) {
	if l.use.Pattern != crop.Perennial {
		d.once(j)
		return
	}
	j.Turn = j.Best.Year()
	j.ID = j.Series + ":" + strconv.Itoa(j.Turn)
	if !d.answers.series(j.Series).dropped {
		d.once(j)
	}
}

// there tells whether a planting stands on a day.
func (l *life) there(day cal.Date) bool { return l.planted.mid < day && day <= l.end() }

// fits tells whether a rule holds on a day: in its season, and under no cover where
// it is about the open.
func (d *deriver) fits(r *careRule, l *life, day cal.Date) bool {
	if !inSeason(day, r.from, r.to, l.south) {
		return false
	}
	from := max(day, l.planted.mid)
	return r.sky == "" || !d.covered(l.p.Bed, from) && !(r.kind == Net && d.meshed(l.p.Bed, from))
}

// soonNetted is how long before a mesh of the plan no other net is asked for [d].
// Judgement.
const soonNetted = 10

// meshed tells whether the plan has a mesh over a bed soon after a day.
func (d *deriver) meshed(bed string, day cal.Date) bool {
	for _, s := range d.spells[bed] {
		if s.Kind == cover.Mesh && day <= s.On && s.On <= day+soonNetted {
			return true
		}
	}
	return false
}
