package outlook

import (
	"reflect"
	"testing"

	"garner/internal/cal"
)

// flat is a vegetable with the same weeks throughout but for some that are short.
func flat(name string, want, eaten float64, weeks int, thin float64, from, to int) Weekly {
	w := Weekly{Name: name}
	for k := range weeks {
		kg := eaten
		if k >= from && k < to {
			kg = thin
		}
		w.Want, w.Stored, w.Fresh = append(w.Want, want), append(w.Stored, kg/4), append(w.Fresh, kg*3/4)
	}
	return w
}

func summed(vs ...Weekly) *Summary {
	s := &Summary{Vegetables: vs}
	for k := range vs[0].Want {
		got, want := 0.0, 0.0
		for i := range vs {
			got, want = got+vs[i].Fresh[k]+vs[i].Stored[k], want+vs[i].Want[k]
		}
		s.Share = append(s.Share, share(got, want))
	}
	return s
}

// By hand: 4 of 8 kg a week over weeks 5 to 10 is half a plate; the potatoes lack
// 3 kg a week and the onions 1, and of the leeks there are enough.
func TestThinTimeByHand(t *testing.T) {
	monday := cal.Of(2027, 1, 4)
	s := summed(flat("leek", 3, 3, 30, 3, 0, 0), flat("onion", 1.5, 1.5, 30, 0.5, 5, 11), flat("potato", 3.5, 3.5, 30, 0.5, 5, 11))
	got := s.ThinTimes(monday)
	want := []ThinTime{{First: monday + 35, Last: monday + 76, Weeks: 6, Share: 0.5, ShortKg: 24, On: []string{"leek"}, Lacks: []string{"potato", "onion"}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("thin are %+v, want %+v", got, want)
	}
}

// Of two thin times the one in which more lacks comes first, though it is later
// and shorter.
func TestTheHeaviestThinTimeComesFirst(t *testing.T) {
	s := summed(flat("leek", 4, 4, 40, 2, 3, 9), flat("onion", 4, 4, 40, 0, 20, 23))
	for k := 20; k < 23; k++ {
		s.Vegetables[0].Fresh[k], s.Vegetables[0].Stored[k] = 0, 0
		s.Share[k] = 0
	}
	for k := 3; k < 9; k++ {
		s.Vegetables[1].Fresh[k] = 0
		s.Share[k] = (2 + 1) / 8.0
	}
	got := s.ThinTimes(0)
	if len(got) != 2 || got[0].Weeks != 6 || got[1].Weeks != 3 || got[0].ShortKg != 30 || got[1].ShortKg != 24 {
		t.Errorf("thin are %+v", got)
	}
	if got[1].On == nil || len(got[1].On) != 0 || len(got[1].Lacks) != 2 {
		t.Errorf("with nothing to eat on the plate is %v", got[1].On)
	}
}

// A plate that is full all year has no thin time, nor one of which nothing is wanted.
func TestAFullPlateIsNotThin(t *testing.T) {
	if got := summed(flat("leek", 1, 0.7, 20, 0, 0, 0), flat("kale", 0, 0, 20, 0, 0, 0)).ThinTimes(0); len(got) != 0 {
		t.Errorf("thin are %+v", got)
	}
}
