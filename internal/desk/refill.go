package desk

import "math"

// HoleRefills ranks what could fill ground that came free, on as much of it as
// nothing has taken since; nil when all of it is taken.
func (o *Office) HoleRefills(f *FreedView) (*AdviseView, error) {
	_, ground, err := o.askSpace(nil)
	if err != nil {
		return nil, err
	}
	bed := ground.Bed(f.Bed)
	if bed == nil {
		return nil, nil
	}
	// Cut to what a form takes, so that what is accepted is what was weighed.
	area := math.Floor(min(f.AreaM2, bed.RoomM2(f.From, f.From+1))*100+1e-6) / 100
	if area < leastFreedM2 {
		return nil, nil
	}
	return o.RefillView(AdviseQuery{Bed: f.Bed, From: f.From, AreaM2: area}, nil)
}
