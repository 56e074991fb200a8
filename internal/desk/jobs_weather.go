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

// leastWaterL is the least that makes a job of watering [L]. Judgement.
const leastWaterL = 1

// watersOf are the waterings of the days ahead: of each bed the first, today or on the day
// from which it would be in want, before a day.
func watersOf(beds []watering.Bed, today, until cal.Date) []jobs.Watering {
	var out []jobs.Watering
	for i := range beds {
		b := &beds[i]
		args := words.Args{"week": wholeL(b.WeekL), "wants": b.Wants}
		switch {
		case b.NowL >= leastWaterL:
			out = append(out, jobs.Watering{Bed: b.Bed, On: today, Last: max(today, b.Wants), Litres: wholeL(b.NowL), Why: waterNow(b, args)})
		case b.Wants.IsSet() && b.Wants < until:
			if litres := b.MissingL + b.UsesL/7*float64(b.Wants-today); litres >= leastWaterL {
				out = append(out, jobs.Watering{Bed: b.Bed, On: max(today, b.Wants), Last: max(today, b.Wants) + 1, Litres: wholeL(litres), Why: words.P("desk.job_water_on", args)})
			}
		}
	}
	return out
}

// waterNow tells a watering of today, with what the week takes where that is more.
func waterNow(b *watering.Bed, args words.Args) words.Phrase {
	if b.WeekL > b.NowL+leastWaterL {
		return words.P("desk.job_water_now_week", args)
	}
	return words.P("desk.job_water_now", args)
}
