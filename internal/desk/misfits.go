package desk

import (
	"slices"

	"garner/internal/plan"
)

// Misfits are what does not fit on the ground of which plantings or beds, by id,
// are part, as it stands or with changes tried.
func (o *Office) Misfits(plantings, beds []string, try []plan.Change) ([]OverlapView, error) {
	if len(plantings)+len(beds) == 0 {
		return nil, nil
	}
	v, err := o.SpaceView(SpaceQuery{}, try)
	if err != nil {
		return nil, err
	}
	var out []OverlapView
	for _, w := range v.Wrong {
		its := func(id string) bool { return slices.Contains(plantings, id) }
		if slices.ContainsFunc(w.Plantings, its) || slices.Contains(beds, w.Bed) {
			out = append(out, w)
		}
	}
	return out, nil
}
