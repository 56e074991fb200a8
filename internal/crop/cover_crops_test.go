package crop

import "testing"

// A green manure has the numbers of a plant that covers its ground and none of
// food.
func TestGreenManuresCoverAndFeedNobody(t *testing.T) {
	covers := 0
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			if u.Feeds() {
				if u.YieldKgM2 <= 0 || u.PortionG <= 0 {
					t.Errorf("%s %s feeds and has no yield or portion", c.ID, u.Name)
				}
				continue
			}
			covers++
			if u.YieldKgM2 != 0 || u.PieceG != 0 || u.PortionG != 0 || len(u.Storage) > 0 {
				t.Errorf("%s %s feeds nobody and has figures of food", c.ID, u.Name)
			}
			if u.LeafMax < 2 || u.DaysSeed <= 0 || u.StandDays <= 0 {
				t.Errorf("%s %s cannot cover its ground", c.ID, u.Name)
			}
		}
	}
	if covers < 7 {
		t.Errorf("%d green manures", covers)
	}
}
