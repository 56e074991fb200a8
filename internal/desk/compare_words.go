package desk

import (
	"math"
	"slices"

	"garner/internal/compare"
	"garner/internal/words"
)

// What is less makes no difference that is told.
const (
	leastKgTold = 0.5  // of a vegetable over the table [kg]
	leastHours  = 1.0  // over the table [h]
	leastGround = 0.05 // share of the ground held
)

// tell puts the differences into words.
func (v *CompareView) tell() {
	v.Lead = v.lead()
	for i := range v.Vegetables {
		if says := v.differs(&v.Vegetables[i]); len(says) > 0 {
			name := v.Vegetables[i].Name
			v.Differs = append(v.Differs, Difference{name, words.P("desk.compare_vegetable", words.Args{"vegetable": v.Plurals[name], "says": says}),
				words.P("desk.compare_says", words.Args{"says": says})})
		}
	}
	size := map[string]float64{}
	for i := range v.Vegetables {
		d := &v.Vegetables[i].Differs
		size[v.Vegetables[i].Name] = math.Abs(d.EatenKg) + math.Abs(d.OverKg)
	}
	slices.SortStableFunc(v.Differs, func(a, b Difference) int {
		switch {
		case size[a.Vegetable] > size[b.Vegetable]:
			return -1
		case size[a.Vegetable] < size[b.Vegetable]:
			return 1
		}
		return 0
	})
}

// lead says what the second plan does on the whole, against the first.
func (v *CompareView) lead() []words.Phrase {
	if v.A.ID == v.B.ID {
		return []words.Phrase{words.P("desk.compare_itself", nil)}
	}
	key := "desk.compare_share"
	if math.Round(100*v.SumA.Share) == math.Round(100*v.SumB.Share) {
		key = "desk.compare_share_same"
	}
	out := []words.Phrase{words.P(key, words.Args{"a": v.A.Name, "b": v.B.Name, "before": v.SumA.Share, "share": v.SumB.Share})}
	var says []words.Phrase
	d := &v.Comparison.Differs
	says = append(says, kgSaid(d.EatenKg, "desk.compare_more", "desk.compare_less")...)
	says = append(says, weeksSaid(d.GapWeeks, "desk.compare_gap_more", "desk.compare_gap_less")...)
	says = append(says, kgSaid(d.OverKg, "desk.compare_over_more", "desk.compare_over_less")...)
	says = append(says, v.groundSaid(d)...)
	if len(says) == 0 {
		return append(out, words.P("desk.compare_same", nil))
	}
	return append(out, words.P("desk.compare_whole", words.Args{"b": v.B.Name, "says": says}))
}

// groundSaid tells ground and hours that differ.
func (v *CompareView) groundSaid(d *compare.Sum) []words.Phrase {
	var says []words.Phrase
	if share := d.AreaWeeks / max(1, v.SumA.AreaWeeks); math.Abs(share) >= leastGround {
		says = append(says, signed(share, "desk.compare_ground_more", "desk.compare_ground_less"))
	}
	if hours := math.Round(d.GardenH + d.KitchenH); math.Abs(hours) >= leastHours {
		says = append(says, signed(hours, "desk.compare_hours_more", "desk.compare_hours_less"))
	}
	return says
}

// differs is what differs of one vegetable, none where too little does.
func (v *CompareView) differs(c *compare.Vegetable) []words.Phrase {
	says := kgSaid(c.Differs.EatenKg, "desk.compare_more", "desk.compare_less")
	says = append(says, weeksSaid(c.Differs.GapWeeks, "desk.compare_gap_more", "desk.compare_gap_less")...)
	says = append(says, kgSaid(c.Differs.OverKg, "desk.compare_over_more", "desk.compare_over_less")...)
	return append(says, weeksSaid(c.Differs.GlutWeeks, "desk.compare_glut_more", "desk.compare_glut_less")...)
}

func kgSaid(kg float64, more, less string) []words.Phrase {
	if math.Abs(kg) < leastKgTold {
		return nil
	}
	return []words.Phrase{signed(kg, more, less)}
}

func weeksSaid(weeks int, more, less string) []words.Phrase {
	if weeks == 0 {
		return nil
	}
	return []words.Phrase{signed(float64(weeks), more, less)}
}

// signed tells an amount as more or less.
func signed(amount float64, more, less string) words.Phrase {
	if amount < 0 {
		return words.P(less, words.Args{"n": -amount})
	}
	return words.P(more, words.Args{"n": amount})
}
