package rotation

import "garner/internal/cal"

// GrowingYear is the growing year of a day: the calendar year in the north; in the
// south the year that begins in July.
func GrowingYear(day cal.Date, south bool) int { return season(day, south) }

// FirstDay is the first day of a growing year.
func FirstDay(year int, south bool) cal.Date { return begins(year, south) }

// NamedYear writes a growing year: 2026, or 2026/27 in the south.
func NamedYear(year int, south bool) string { return named(year, south) }
