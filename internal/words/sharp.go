package words

import (
	"strconv"

	"garner/internal/cal"
)

// The days ahead up to which a forecast deserves a date, and then a week.
const (
	dateDays = 28
	weekDays = 70
)

// Sharp tells a day of a forecast as sharply as it deserves, seen from today: a
// date within four weeks, the week by its Monday within ten, and early, mid or
// late month beyond. What is past is known to the day. The year is told when it
// is not today's.
func Sharp(day, today cal.Date) Phrase {
	if !day.IsSet() {
		return P("words.sharp_never", nil)
	}
	ahead := day - today
	if ahead > dateDays && ahead <= weekDays {
		return P("words.sharp_week", Args{"date": plainDay(day.Monday(), today)})
	}
	if ahead <= dateDays {
		return plainDay(day, today)
	}
	if year := day.Year(); year != today.Year() {
		return P("words.sharp_year", Args{"date": Third(day), "year": strconv.Itoa(year)})
	}
	return Third(day)
}

// Sharpened tells all dates of a phrase, and of the phrases in it, as sharply as
// they deserve, seen from today.
func Sharpened(p Phrase, today cal.Date) Phrase {
	args := Args{}
	for name, v := range p.Args {
		switch v := v.(type) {
		case cal.Date:
			args[name] = Sharp(v, today)
		case Phrase:
			args[name] = Sharpened(v, today)
		default:
			args[name] = v
		}
	}
	return P(p.Key, args)
}

// Third tells a day of any year as early, mid or late in its month.
func Third(day cal.Date) Phrase {
	if !day.IsSet() {
		return P("words.sharp_never", nil)
	}
	_, _, dayOfMonth := day.YMD()
	return P(partKeys[min(2, (dayOfMonth-1)/10)], Args{"day": day})
}

// partKeys are the texts of the thirds of a month.
var partKeys = [3]string{"words.sharp_early", "words.sharp_mid", "words.sharp_late"}

// plainDay tells a date, with its year when that is not today's.
func plainDay(day, today cal.Date) Phrase {
	year, month, dayOfMonth := day.YMD()
	if year != today.Year() {
		return P("words.sharp_date", Args{"day": day})
	}
	return P("words.sharp_day", Args{"day": cal.MonthDay{Month: month, Day: dayOfMonth}})
}
