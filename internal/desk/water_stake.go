package desk

import (
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/watering"
)

// stakesOf weighs what each bed loses at the table, without water and with a part of what
// it needs: the difference of two full tables, the plan's and that on which each of the
// bed's plantings holds less ground by the share that it loses. Kilograms are portions of
// the planting that loses most.
func stakesOf(a *asked, scales *outlook.Scales, claims []watering.Claim) ([]watering.Stake, error) {
	type place struct{ bed, part int }
	var edits []outlook.Edit
	var at []place
	out := make([]watering.Stake, len(claims))
	for i := range claims {
		out[i].Claim = claims[i]
		for k := range watering.Parts {
			if set := lessened(scales.Plantings(), claims[i].Lost[k]); len(set) > 0 {
				edits, at = append(edits, outlook.Edit{Set: set}), append(at, place{i, k})
			}
		}
	}
	weights, err := scales.Weigh(edits)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	for e, w := range weights {
		s := &out[at[e].bed]
		p := n.plantings[s.Planting]
		_, u, err := useOf(a.setting.Book, p.Crop, p.Use)
		if err != nil {
			return nil, err
		}
		if u.PortionG > 0 {
			s.Loses[at[e].part] = max(0, -w.DropKg*1000/u.PortionG)
		}
	}
	return out, nil
}

// leastLost is the share of a planting under which nothing is weighed.
const leastLost = 0.001

// lessened are plantings with so much less ground as they lose.
func lessened(all []plan.Planting, lost map[string]float64) []plan.Planting {
	var out []plan.Planting
	for _, p := range all {
		if share := lost[p.ID]; share > leastLost && p.AreaM2 > 0 {
			p.AreaM2 *= max(leastLost, 1-share)
			out = append(out, p)
		}
	}
	return out
}
