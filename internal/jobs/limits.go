package jobs

import "garner/internal/words"

// limits are the numbers by which the weather moves work.
type limits struct {
	wet   float64 // rain of a day [mm]
	windy float64 // mean wind of a day at 2 m [m/s]
	sure  float64 // share of the futures

	warm, hot  float64 // warmest hour under a cover [C]
	mild, cold float64 // nights, under it and in the open [C]

	risk, hard float64 // odds of harm in a night
	nights     float64 // that are looked at [d]
}

func (l loader) readLimits() error {
	c, err := l.open("limits", "name", "value", "unit")
	if err != nil {
		return err
	}
	into := map[string]*float64{"wet": &l.limits.wet, "windy": &l.limits.windy, "sure": &l.limits.sure, "warm": &l.limits.warm, "hot": &l.limits.hot,
		"mild": &l.limits.mild, "cold": &l.limits.cold, "risk": &l.limits.risk, "hard": &l.limits.hard, "nights": &l.limits.nights}
	seen := map[string]bool{}
	for r := range c.Rows {
		name := once(c, r, "name", seen)
		if into[name] == nil {
			c.Refuse(r, "name", "jobs.data_unknown", words.Args{"value": name})
			continue
		}
		*into[name] = c.Within(r, "value", -20, 60)
	}
	for name := range into {
		if !seen[name] && len(c.Rows) > 0 {
			c.Refuse(0, "name", "jobs.data_missing", words.Args{"value": name})
		}
	}
	return c.Err()
}
