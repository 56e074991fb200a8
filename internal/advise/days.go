package advise

import (
	"slices"

	"garner/internal/cal"
)

// compact puts days in order, each once.
func compact(days []cal.Date) []cal.Date {
	slices.Sort(days)
	return slices.Compact(days)
}
