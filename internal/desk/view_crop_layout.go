package desk

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/window"
)

// laidOut puts the answers on dates from the month that cuts the fewest windows.
func (q *yearQuestion) laidOut(answers []yearAnswer, now cal.Date) *CropYear {
	y := &CropYear{Site: SiteName{q.site.ID, q.site.Name}, Wanted: window.UsualChance, Pattern: q.use.Pattern}
	y.From = yearFrom(answers, now)
	for i := range answers {
		s := startView(&answers[i], y.From)
		for k := range y.Starts {
			if before := &y.Starts[k]; s.Same == "" && before.Same == "" && before.Method == s.Method && muchTheSame(before, &s) {
				s.Same = before.Cover
			}
		}
		y.Starts = append(y.Starts, s)
	}
	return y
}

// The months that a year may be laid out over, and by how many it grows.
const (
	shortYear   = 12
	longerYear  = 3
	longestYear = 36
)

// Months is how many months a way of starting is laid out over: as long as most
// of its harvests reach.
func (y *CropYear) Months(method string) int {
	months := shortYear
	for i := range y.Starts {
		s := &y.Starts[i]
		if s.Method != method || y.Pattern == crop.Perennial {
			continue
		}
		for _, w := range s.Spells {
			for !w.AllYear() && months < longestYear && w.Late[latest] >= y.after(months) {
				months += longerYear
			}
		}
	}
	return months
}

// latest of ten years is the one that still has to lie on the page.
const latest = 8

// End is the day after the last that a way of starting is laid out over.
func (y *CropYear) End(method string) cal.Date { return y.after(y.Months(method)) }

func (y *CropYear) after(months int) cal.Date {
	year, month, _ := y.From.YMD()
	return cal.Of(year, month+months, 1)
}

// yearFrom is the first of a month, not after today: the one that lies inside the
// fewest windows, January before others.
func yearFrom(answers []yearAnswer, now cal.Date) cal.Date {
	best, least := 1, -1
	for _, month := range []int{1, 12, 2, 11, 3, 10, 7, 8, 9, 6, 4, 5} {
		day, cut := cal.MonthDay{Month: month, Day: 1}.DayOfYear(), 0
		for i := range answers {
			for _, w := range answers[i].Windows {
				inside := around(day-w.First) <= around(w.Last-w.First)
				if inside && day != w.First && around(w.Last-w.First) < yearDays-1 {
					cut++
				}
			}
		}
		if least < 0 || cut < least {
			best, least = month, cut
		}
	}
	from := cal.Of(now.Year(), best, 1)
	if from > now {
		from = cal.Of(now.Year()-1, best, 1)
	}
	return from
}

// yearDays is the length of the common year, on which windows are told.
const yearDays = 365

// around takes a number of days round the year.
func around(days int) int { return ((days % yearDays) + yearDays) % yearDays }

// startView lays one answer out. A day of the common year falls on its own date,
// whichever year that is in; what crosses the end of the year runs on past it.
func startView(a *yearAnswer, from cal.Date) StartView {
	first := commonDay(from)
	v := StartView{Method: a.Method, Cover: string(a.Cover), Best: a.Best, BestOn: dateAfter(from, first, max(1, a.BestDay))}
	v.Chance = make([]float64, yearDays)
	for k := range v.Chance {
		v.Chance[k] = a.ByDay[(first-1+k)%yearDays]
	}
	for _, w := range a.Windows {
		v.Spells = append(v.Spells, spellView(&w, from, first))
	}
	slices.SortStableFunc(v.Spells, func(a, b SpellView) int { return int(a.First - b.First) })
	return v
}

func spellView(w *window.Window, from cal.Date, first int) SpellView {
	s := SpellView{First: dateAfter(from, first, w.First), Chance: w.Chance}
	s.Last = s.First + cal.Date(around(w.Last-w.First))
	for k := range s.Early {
		s.Early[k] = s.First + cal.Date(w.FirstTook[k])
		s.Late[k] = s.Last + cal.Date(w.LastTook[k])
	}
	s.ReadyFrom, s.ReadyTo = s.Early[5], s.Late[5]
	return s
}

// AllYear tells whether a window has no end.
func (s *SpellView) AllYear() bool { return s.Last-s.First >= yearDays-1 }

// commonDay is a date's day of the common year.
func commonDay(d cal.Date) int {
	_, month, day := d.YMD()
	return cal.MonthDay{Month: month, Day: day}.DayOfYear()
}

// dateAfter is the date of a day of the common year on or after from, whose own
// day is first.
func dateAfter(from cal.Date, first, day int) cal.Date {
	year := from.Year()
	if day < first {
		year++
	}
	return cal.MonthDayOf(day).In(year)
}

// What is told of two covers at once: dates this many days apart, chances this
// far apart. judgement: nobody sows by the day.
const (
	sameDays   = 6
	sameChance = 0.06
)

func muchTheSame(a, b *StartView) bool {
	if len(a.Spells) != len(b.Spells) || math.Abs(a.Best-b.Best) > sameChance {
		return false
	}
	for i := range a.Spells {
		v, w := &a.Spells[i], &b.Spells[i]
		for _, d := range []cal.Date{v.First - w.First, v.Last - w.Last, v.ReadyFrom - w.ReadyFrom, v.ReadyTo - w.ReadyTo} {
			if d > sameDays || d < -sameDays {
				return false
			}
		}
		if math.Abs(v.Chance-w.Chance) > sameChance {
			return false
		}
	}
	return true
}
