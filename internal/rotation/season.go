package rotation

import (
	"strconv"

	"garner/internal/cal"
)

// half is half a year [d].
const half = 182

// season is the growing year of a day: the calendar year in the north; in the
// south the year that begins in July.
func season(day cal.Date, south bool) int {
	if south {
		return (day - half).Year()
	}
	return day.Year()
}

// begins is the first day of a growing year.
func begins(season int, south bool) cal.Date {
	if south {
		return cal.Of(season, 7, 2)
	}
	return cal.Of(season, 1, 1)
}

// named writes a growing year: 2026, or 2026/27 in the south.
func named(season int, south bool) string {
	if south {
		return strconv.Itoa(season) + "/" + strconv.Itoa((season+1)%100)
	}
	return strconv.Itoa(season)
}

// last is the growing year a crop belongs to, seen from a day on which it may
// still stand.
func (s *stood) last(at cal.Date, south bool) int {
	to := s.to
	if !to.IsSet() || to > at {
		to = at
	}
	return season(max(s.from, to-half), south)
}
