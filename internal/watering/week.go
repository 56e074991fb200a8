package watering

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/water"
)

// morning is a tract under one future as it stands this morning, kept until all futures
// are seen and it is settled what is given today.
type morning struct {
	course  course // from today on
	balance water.Balance
	dueL    float64 // today, in this future
}

// from is a course from a day on, with space of its own.
func (c *course) from(i int) course {
	return course{first: c.date(i), soil: c.soil, stands: slices.Clone(c.stands[i:]), given: slices.Clone(c.given[i:]), areaM2: slices.Clone(c.areaM2[i:])}
}

// wake keeps a tract for the week ahead.
func (t *tally) wake(f int, c *course, b water.Balance, today int) {
	m := morning{course: c.from(today), balance: b}
	m.course.trim(aheadDays)
	m.dueL = m.course.due(&b, 0) * m.course.areaM2[0]
	t.mornings[f] = append(t.mornings[f], m)
}

func (c *course) trim(days int) {
	days = min(days, len(c.given))
	c.stands, c.given, c.areaM2 = c.stands[:days], c.given[:days], c.areaM2[:days]
}

// settle decides what each tract is given today, which is the same in every future, and
// waters it in each of them from tomorrow on whenever it is due.
func (t *tally) settle() {
	for k := 0; ; k++ {
		var due []float64
		for f := range t.mornings {
			if k < len(t.mornings[f]) {
				due = append(due, t.mornings[f][k].dueL)
			}
		}
		if len(due) == 0 {
			return
		}
		nowL := quantile(due, 0.5)
		t.nowL += nowL
		for f := range t.mornings {
			if k < len(t.mornings[f]) {
				t.mornings[f][k].run(nowL, t.days[f], &t.uses[f])
			}
		}
	}
}

// run takes a tract through the days ahead and adds what it is given on each [L], and
// what it loses in the week.
func (m *morning) run(nowL float64, into []float64, usesL *float64) {
	c, b := &m.course, m.balance
	for i := range c.given {
		area, mm := c.areaM2[i], 0.0
		switch {
		case i > 0:
			mm = c.due(&b, i)
		case area > 0:
			mm = nowL / area
		}
		f := c.day(&b, i, mm)
		into[i] += mm * area
		if i < weekDays {
			*usesL += f.LostMM() * area
		}
	}
}

// week is the litres of the week ahead, by future.
func (t *tally) week() []float64 {
	out := make([]float64, len(t.days))
	for f, days := range t.days {
		for _, l := range days[:weekDays] {
			out[f] += l
		}
	}
	return out
}

// Of the futures in order of what the week's weather asks of all beds, those between these
// shares count as middle ones. judgement.
const (
	middleFrom = 0.4
	middleTo   = 0.6
)

// middle is the future whose week is told. Each bed's own middle would be of another
// week, and they would not add up: watering comes in lumps. So one whole future is told
// for all beds: of the middle ones that in which what is asked of the beds is nearest to
// its means. It goes by the weather and what is planted alone, so that what is recorded
// of one bed changes nothing of another.
func middle(asked [][]float64) int {
	if len(asked) == 0 {
		return 0
	}
	n := len(asked[0])
	sums, far := make([]float64, n), make([]float64, n)
	for _, own := range asked {
		m := mean(own)
		for f, l := range own {
			sums[f] += l
			far[f] += math.Abs(l - m)
		}
	}
	order := make([]int, n)
	for f := range order {
		order[f] = f
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sums[a], sums[b]) })
	near := order[rank(n, middleFrom) : rank(n, middleTo)+1]
	return slices.MinFunc(near, func(a, b int) int { return cmp.Compare(far[a], far[b]) })
}

// asked is what the air asks in the week less what rain brings, by future [L]. Of short
// grass, not of what stands there: so it does not hang on what was watered.
func (t *tally) asked() []float64 {
	out := make([]float64, len(t.mornings))
	for f := range t.mornings {
		for k := range t.mornings[f] {
			c := &t.mornings[f][k].course
			for i := range min(weekDays, len(c.given)) {
				out[f] += (c.given[i].ReferenceMM - c.given[i].RainMM) * c.areaM2[i]
			}
		}
	}
	return out
}

// wants is the first day of want if nobody comes: in the week ahead the first on which
// water is due in the week that is told; after it that of the middle of the futures.
func (t *tally) wants(told int, today cal.Date) cal.Date {
	for i, l := range t.days[told][:weekDays] {
		if l > 0 {
			return today + cal.Date(i)
		}
	}
	return afterWeek(t.fails, today)
}

// suffers is the first day of want while away: in the week ahead that of the week which
// is told; after it that of the middle of the futures.
func (t *tally) suffers(told int, today cal.Date) cal.Date {
	if on := t.failsAway[told]; on.IsSet() && on < today+weekDays {
		return on
	}
	return afterWeek(t.failsAway, today)
}

// afterWeek is the middle of days, not within the week ahead.
func afterWeek(days []cal.Date, today cal.Date) cal.Date {
	of := dateQuantile(days, 0.5)
	if of.IsSet() {
		of = max(of, today+weekDays)
	}
	return of
}
