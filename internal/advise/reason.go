package advise

import (
	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/words"
)

// reason says in one sentence why a candidate is worth it.
func (c *Candidate) reason() words.Phrase {
	name := c.Crop.Plural
	fills := words.P("advise.fills_other", nil)
	if c.Fills.Weeks > 0 {
		fills = words.P("advise.fills", words.Args{"when": months(c.Fills.First, c.Fills.Last), "kg": c.Fills.ShortKg, "name": name})
	}
	key := "advise.reason_sown"
	if c.Planting.Method != plan.Seed {
		key = "advise.reason_planted"
	}
	return words.P(key, words.Args{"fills": fills, "odds": c.Odds, "last": dayOf(c.Last)})
}

// months names the months between two days.
func months(first, last cal.Date) words.Phrase {
	args := words.Args{"first": first, "last": last}
	n := (last.Year()-first.Year())*12 + last.Month() - first.Month()
	switch n {
	case 0:
		return words.P("advise.month", args)
	case 1:
		return words.P("advise.two_months", args)
	}
	return words.P("advise.months", args)
}

// dayOf is a date without its year.
func dayOf(d cal.Date) cal.MonthDay {
	_, month, day := d.YMD()
	return cal.MonthDay{Month: month, Day: day}
}
