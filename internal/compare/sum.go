package compare

// Sum is one plan over all weeks, or the difference of two.
type Sum struct {
	WantKg, EatenKg, ShortKg, OverKg float64
	Share                            float64 // of the want that is home-grown, 0-1; 1 where nothing is wanted
	GapWeeks, GlutWeeks              int     // weeks of a vegetable
	AreaWeeks                        float64 // ground held [m2 weeks]
	GardenH, KitchenH                float64
	WaterL                           float64 // that the air asks of the ground held; 0 where that is not known
	KgPerM2                          float64 // eaten for each square metre held a whole year [kg/m2]; 0 where none is held
}

// VegetableSum is one vegetable over all weeks, or the difference of two plans.
type VegetableSum struct {
	EatenKg, ShortKg, OverKg float64
	GapWeeks, GlutWeeks      int
}

func (c *Course) sum() Sum {
	s := Sum{WantKg: added(c.Want), EatenKg: added(c.Eaten), ShortKg: added(c.Short), OverKg: added(c.Over), Share: 1,
		GapWeeks: counted(c.Gaps), GlutWeeks: counted(c.Gluts), AreaWeeks: added(c.Ground), GardenH: added(c.Garden), KitchenH: added(c.Kitchen), WaterL: added(c.Water)}
	if s.WantKg > 0 {
		s.Share = s.EatenKg / s.WantKg
	}
	if s.AreaWeeks > 0 {
		s.KgPerM2 = s.EatenKg / (s.AreaWeeks * daysAWeek / daysAYear)
	}
	return s
}

func (s Sum) less(o Sum) Sum {
	return Sum{s.WantKg - o.WantKg, s.EatenKg - o.EatenKg, s.ShortKg - o.ShortKg, s.OverKg - o.OverKg, s.Share - o.Share,
		s.GapWeeks - o.GapWeeks, s.GlutWeeks - o.GlutWeeks, s.AreaWeeks - o.AreaWeeks, s.GardenH - o.GardenH, s.KitchenH - o.KitchenH,
		s.WaterL - o.WaterL, s.KgPerM2 - o.KgPerM2}
}

func (v *VegetableCourse) sum() VegetableSum {
	s := VegetableSum{EatenKg: added(v.Eaten), ShortKg: added(v.Short), OverKg: added(v.Over)}
	for k := range v.Gap {
		if v.Gap[k] {
			s.GapWeeks++
		}
		if v.Glut[k] {
			s.GlutWeeks++
		}
	}
	return s
}

func (s VegetableSum) less(o VegetableSum) VegetableSum {
	return VegetableSum{s.EatenKg - o.EatenKg, s.ShortKg - o.ShortKg, s.OverKg - o.OverKg, s.GapWeeks - o.GapWeeks, s.GlutWeeks - o.GlutWeeks}
}

func added(course []float64) float64 {
	sum := 0.0
	for _, x := range course {
		sum += x
	}
	return sum
}

func counted(course []int) int {
	sum := 0
	for _, n := range course {
		sum += n
	}
	return sum
}
