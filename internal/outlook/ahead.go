package outlook

import "garner/internal/cal"

// Ahead makes the first weeks of a setting's table, those up to a day and no fewer, in
// a fraction of the time: what grew by then is followed to its own end, what is put in
// later is left alone, and the larder stops with the weeks. What the table tells of its
// weeks is bit for bit what the whole one does, and so are the fates of all that goes in
// before they are over, save that a perennial is followed only until it is picked again
// after them. A planting that goes in later has come to nothing in it. Results that the
// memory has of the whole table are used; none are kept there.
func Ahead(s Setting, m *Memory, until cal.Date) (*Table, error) {
	weeks := min(s.Weeks, max(1, (int(until-s.From)+6)/7))
	if weeks == s.Weeks {
		return Compute(s, m)
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	err := j.lay(m)
	m.forget(j) // they are no whole results
	if err == nil {
		err = j.prepare()
	}
	if err == nil {
		err = j.runAhead(weeks)
	}
	if err != nil {
		return nil, err
	}
	j.Weeks = weeks
	return j.table(), nil
}

// runAhead runs the first weeks.
func (j *job) runAhead(weeks int) error {
	j.enough = int(j.From-j.first()) + 7*weeks + j.longestHold()
	for _, g := range j.groups {
		if g.missing {
			g.pantry = g.pantry.First(runUp + 7*weeks)
		}
	}
	return j.run()
}

// longestHold is for how long what ripens on any planting stays good on it [d]: the
// larder asks on a day what it can still wait for.
func (j *job) longestHold() int {
	days := 0
	for _, b := range j.beds {
		for _, u := range b.uses {
			days = max(days, int(u.use.HoldDays))
		}
	}
	return days
}
