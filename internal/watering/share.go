package watering

import (
	"cmp"
	"slices"

	"garner/internal/cal"
)

// Stake is a claim with what its losses come to at the table [portions]: without water,
// with half of what it needs, and with all of it.
type Stake struct {
	Claim
	Loses [len(Parts)]float64
}

// Turn is a bed in the order in which beds get water.
type Turn struct {
	Stake
	GetL  float64 // of what is left
	Saves float64 // portions that what it gets saves
	Part  bool    // it gets less than it needs
	worth float64 // portions saved by a litre of its first step
}

// step is a further part of a bed's need.
type step struct {
	bed           int
	litres, saves float64
}

// Share gives out what is left, step by step, first to what saves most portions by a
// litre: of a bed the first half of its need and then the rest, where the half saves more
// by a litre than the rest does, else all at once. The last one gets what remains. Beds come in the
// order of their first step; those that lose nothing last, by the day on which they would want.
//
// Kept: what is given never passes what is left or needed; more left never takes any from a
// bed; what a step saves is taken to grow evenly with its litres.
func Share(stakes []Stake, leftL float64) []Turn {
	turns := make([]Turn, len(stakes))
	var steps []step
	for i := range stakes {
		turns[i].Stake = stakes[i]
		own := stepsOf(&stakes[i], i)
		if len(own) > 0 {
			turns[i].worth = own[0].perLitre()
		}
		steps = append(steps, own...)
	}
	slices.SortStableFunc(steps, func(a, b step) int { return cmp.Compare(b.perLitre(), a.perLitre()) })
	for _, s := range steps {
		get := min(leftL, s.litres)
		leftL -= get
		turns[s.bed].GetL += get
		turns[s.bed].Saves += s.saves * get / s.litres
	}
	for i := range turns {
		t := &turns[i]
		t.Part = t.GetL > 0 && t.GetL < t.NeedL-1e-9
	}
	slices.SortStableFunc(turns, byWorth)
	return turns
}

func (s *step) perLitre() float64 { return s.saves / s.litres }

// stepsOf are the steps of a bed, each of which saves less by a litre than the one before.
func stepsOf(s *Stake, bed int) []step {
	half := step{bed, s.PartL[1], s.Loses[0] - s.Loses[1]}
	all := step{bed, s.NeedL, s.Loses[0] - s.Loses[2]}
	if all.litres <= 0 || all.saves <= 0 {
		return nil
	}
	rest := step{bed, all.litres - half.litres, all.saves - half.saves}
	if half.litres <= 0 || rest.litres <= 0 || half.saves <= 0 || rest.saves <= 0 || half.perLitre() < rest.perLitre() {
		return []step{all}
	}
	return []step{half, rest}
}

// byWorth puts first what saves most with a litre, then what would want soonest.
func byWorth(a, b Turn) int {
	if by := cmp.Compare(b.worth, a.worth); by != 0 {
		return by
	}
	return cmp.Compare(dayOr(a.Wants), dayOr(b.Wants))
}

// dayOr puts what lasts after all days.
func dayOr(d cal.Date) cal.Date {
	if !d.IsSet() {
		return 1 << 30
	}
	return d
}
