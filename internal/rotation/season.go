package rotation

import (
	"fmt"
	"strconv"

	"garner/internal/cal"
)

// half is half a year [d].
const half = 182

// season is the growing year of a day: the calendar year in the north; in the
// south the year that begins in July.
func season(day cal.Date, south bool) int {
	year := day.Year()
	if south && day < begins(year, south) {
		return year - 1
	}
	return year
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
		return fmt.Sprintf("%d/%02d", season, (season+1)%100)
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
