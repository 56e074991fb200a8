package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/jobs"
	"garner/internal/outlook"
	"garner/internal/watering"
	"garner/internal/words"
)

const (
	// jobFutures is how many futures the weather of the days ahead is told in.
	jobFutures = 30

	// skyBefore is how long before today the weather of jobs begins [d]: what the nights
	// before have hardened.
	skyBefore = 8
)

// skiesOf is the weather of the sites from some days before today until a day.
func skiesOf(s outlook.Setting, m *outlook.Memory, until cal.Date) ([]jobs.Sky, error) {
	var out []jobs.Sky
	at := map[string]int{}
	err := outlook.Skies(s, m, jobFutures, s.Today-skyBefore, until+skyBefore, func(o *outlook.OpenDays) error {
		i, known := at[o.Site]
		if !known {
			i = len(out)
			at[o.Site] = i
			out = append(out, jobs.Sky{Site: o.Site, First: o.First, AboveMJ: o.AboveMJ})
		}
		out[i].Futures = append(out[i].Futures, []climate.Day(o.Days))
		return nil
	})
	return out, err
}

// watersOf are the waterings of the days ahead, before a day: all of the middle week that
// the page of water tells, and after it the first of a bed that is given none in it.
func watersOf(beds []watering.Bed, today, until cal.Date) []jobs.Watering {
	var out []jobs.Watering
	for i := range beds {
		b := &beds[i]
		given := false
		week := litresOf(b, usualCanL).WeekL
		for _, g := range giftsOf(b, today, until) {
			if g.On >= today+aWeekOfJobs && given {
				break
			}
			given = true
			out = append(out, wateringOn(b.Bed, g, today, week))
		}
	}
	return out
}

// wateringOn is a watering of a day, with what the week takes where that is more.
func wateringOn(bed string, g Gift, today cal.Date, week float64) jobs.Watering {
	w := jobs.Watering{Bed: bed, On: g.On, Last: g.On + 1, Litres: g.L}
	args := words.Args{"week": week, "on": g.On}
	switch {
	case g.On > today:
		w.Why = words.P("desk.job_water_on", args)
	case week > g.L:
		w.Why = words.P("desk.job_water_now_week", args)
	default:
		w.Why = words.P("desk.job_water_now", args)
	}
	return w
}
