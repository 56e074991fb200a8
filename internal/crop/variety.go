package crop

// WithVariety returns the use as a variety of it: days to maturity moved by
// DaysOffset but never under the least the book allows, yields, sizes and the
// time to bolting multiplied, killing temperatures shifted. A factor of 0 is not
// given and counts as 1. The use itself stays as it is.
func (u Use) WithVariety(v Variety) Use {
	u.variety = v.Name
	u.move("days_seed", &u.DaysSeed, v.DaysOffset)
	u.move("days_plant", &u.DaysPlant, v.DaysOffset)
	u.move("days_set", &u.DaysSet, v.DaysOffset)
	for _, c := range []*float64{&u.KillYoungC, &u.KillC, &u.KillHardenedC} {
		*c += v.KillShiftC
	}
	scale(v.YieldFactor, &u.YieldScale, &u.YieldKgM2, &u.YieldLowKgM2, &u.YieldHighKgM2)
	scale(v.SizeFactor, &u.PieceG, &u.UsableG, &u.TableG)
	scale(v.BoltFactor, &u.BoltThermalCd)
	return u
}

// move shifts a number of days that applies, within the book's range.
func (u *Use) move(parameter string, days *float64, offset float64) {
	if *days == 0 || offset == 0 {
		return
	}
	*days += offset
	if u.resolved != nil {
		p := u.resolved.parameters[u.resolved.index[parameter]]
		*days = min(max(*days, p.Min), p.Max)
	}
}

func scale(factor float64, numbers ...*float64) {
	if factor == 0 {
		return
	}
	for _, n := range numbers {
		*n *= factor
	}
}
