package cover

import (
	"math"

	"garner/internal/climate"
)

// Shut is Under for a day on which nobody opens the cover.
func (c *Cover) Shut(out climate.Day, extraterrestrialMJ float64) climate.Day {
	shut := *c
	shut.own.dayOpenAboveC = never
	if c.outer != nil {
		outer := *c.outer
		outer.dayOpenAboveC = never
		shut.outer = &outer
	}
	return shut.Under(out, extraterrestrialMJ)
}

// Opens tells whether the cover is opened for air by day.
func (c *Cover) Opens() bool { return !c.open && !math.IsInf(c.own.dayOpenAboveC, 1) }
