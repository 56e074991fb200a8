package watering

import "garner/internal/water"

// UsualOdds is the share of the futures for which what is told of a dry time is enough.
const UsualOdds = dry

// worthMM is the least that it pays to give before leaving [mm]. judgement.
const worthMM = 1

// leave keeps a tract as it stands on the morning of the day of leaving, kept watered
// until then.
func (s *seer) leave(c *course, into *tally, f, today int, b water.Balance) {
	leave, back := c.at(s.away.Leave), c.at(s.away.Back)
	c.keep(&b, today, leave)
	if leave >= len(c.given) {
		return
	}
	b.Reach(&c.stands[leave])
	m := morning{course: c.from(leave), balance: b}
	m.course.trim(back - leave)
	if b.MissingMM >= worthMM && m.course.alone(b, 0, back-leave) >= 0 {
		m.dueL = b.MissingMM * c.areaM2[leave]
	}
	into.leavings[f] = append(into.leavings[f], m)
}

// depart fills each tract on the day of leaving that would not last without in so many
// of the futures, in all of them, and takes it through the time away.
func (t *tally) depart(away *Away) {
	for k := 0; away != nil; k++ {
		var due []float64
		for f := range t.leavings {
			if k < len(t.leavings[f]) {
				due = append(due, t.leavings[f][k].dueL)
			}
		}
		if len(due) == 0 {
			return
		}
		filled := quantile(due, away.odds()) > 0
		for f := range t.leavings {
			if k < len(t.leavings[f]) {
				t.alone(f, &t.leavings[f][k], filled)
			}
		}
	}
}

// alone takes a tract through the days away of one future.
func (t *tally) alone(f int, m *morning, filled bool) {
	c, b, before := &m.course, m.balance, 0.0
	if filled && b.MissingMM >= worthMM {
		before = b.MissingMM
	}
	back := len(c.given)
	t.before[f] += before * c.areaM2[0]
	c.day(&b, 0, before)
	t.failsAway[f] = sooner(t.failsAway[f], c.date(c.alone(b, 1, back)))
	helped := b
	given, _ := c.keep(&helped, 1, back)
	t.helper[f] += given
	for k := range t.rounds {
		t.rounds[k].add(c, f, b, 0, back)
	}
}
