package growth

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
)

// Renewal says when a standing perennial gives way to new plants.
type Renewal struct {
	Heir cal.Date // when new plants go in, so that they bear half when the old ones go
	Over cal.Date // when the old ones give way
}

// halfYield is the share of a full yield from which new plants take over.
// judgement: with half a yield from the young and the old gone, the table is
// thin for one season and no longer.
const halfYield = 0.5

// HalfBearing returns the first season of a perennial in its ground, 0 for the
// season of its planting, with half of a full yield or more. ok is false when no
// season has it, or when the use is no perennial.
func HalfBearing(u *crop.Use) (season int, ok bool) {
	if u.Pattern != crop.Perennial {
		return 0, false
	}
	for k, share := range u.AgeYield {
		if share >= halfYield {
			return k, true
		}
	}
	return 0, false
}

// RenewalOf works out when the heir of a perennial is planted that went into its
// ground on a day, yearsOld then: its years in the ground (renew_years) run out,
// and the heir goes in as many seasons earlier as it needs to bear half. An heir
// is planted a year after its elder at the earliest. ok is false for a crop that
// is not renewed by its age.
func RenewalOf(u *crop.Use, planted cal.Date, yearsOld int) (r Renewal, ok bool) {
	seasons, bears := HalfBearing(u)
	years := int(math.Round(u.RenewYears))
	if !bears || years <= 0 {
		return Renewal{}, false
	}
	born := yearsLater(planted, -yearsOld)
	r.Over = yearsLater(born, years)
	r.Heir = yearsLater(born, max(1, years-seasons))
	return r, true
}

// yearsLater is the same day of another year; 29 February becomes the day after
// where there is none.
func yearsLater(d cal.Date, n int) cal.Date {
	year, month, day := d.YMD()
	return cal.Of(year+n, month, day)
}
