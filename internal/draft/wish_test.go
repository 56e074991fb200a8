package draft_test

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/draft"
	"garner/internal/fault"
	"garner/internal/plan"
)

func planting(id, bed, crop string, date cal.Date, m2 float64, until cal.Date) plan.Planting {
	p := plan.New(id, "")
	p.Bed, p.Crop, p.Date, p.AreaM2, p.ClearBy = bed, crop, date, m2, until
	return p
}

// A pinned planting is kept and holds its ground; what is not pinned is open.
func TestPinsAreKept(t *testing.T) {
	h := small(t)
	for _, p := range []plan.Planting{
		planting("pin", "a", "carrot", cal.Of(2027, 4, 12), 3, cal.Of(2027, 8, 2)),
		planting("open", "b", "carrot", cal.Of(2027, 4, 12), 3, cal.Of(2027, 8, 2))} {
		p.Plan = h.Plan
		h.Plantings = append(h.Plantings, p)
	}
	d := built(t, h, draft.Wish{Kind: draft.Pin, Planting: "pin"})
	if len(d.Kept) != 1 || d.Kept[0].ID != "pin" {
		t.Fatalf("kept is %v", d.Kept)
	}
	for j := range d.Problem.Sowings {
		w := &d.Problem.Sowings[j]
		if g := &d.Problem.Grounds[w.Ground]; w.First < g.First || w.Last > g.Last {
			t.Fatalf("%s lies outside its ground", w.ID)
		}
	}
	free := 0.0
	for g, c := range d.Classes {
		for _, p := range c.Pieces {
			if at := &d.Problem.Grounds[g]; p.Bed == "a" && at.First <= 12 && at.Last >= 12 {
				free += float64(p.Units) * c.UnitM2
			}
		}
	}
	if free < 2.9 || free > 3.1 {
		t.Errorf("beside the pin %.2f m2 of bed a are free, not 3", free)
	}
}

func TestForbiddenCropsAreNoColumns(t *testing.T) {
	d := built(t, small(t), draft.Wish{Kind: draft.Forbid, Crop: "carrot"}, draft.Wish{Kind: draft.Forbid, Crop: "onion", Bed: "a"})
	in := map[string]bool{}
	for j := range d.Columns {
		for _, p := range d.Classes[d.Problem.Sowings[j].Ground].Pieces {
			in[d.Columns[j].Crop.ID+"@"+p.Bed] = true
		}
	}
	if in["carrot@a"] || in["carrot@c"] || in["onion@a"] || !in["onion@b"] {
		t.Errorf("crops by bed: %v", in)
	}
	if len(d.Notes) != 1 || d.Notes[0].Key != "draft.no_bed" {
		t.Errorf("notes %v", d.Notes)
	}
}

func TestHoursAreAResource(t *testing.T) {
	d := built(t, small(t), draft.Wish{Kind: draft.Hours, Hours: 0.05})
	s := greedy(d.Problem, 30)
	at := len(d.Problem.Resources) - 1
	for week := range d.Problem.Weeks {
		if s.Used(at, week) > 0.05+1e-6 {
			t.Fatalf("week %d takes %v h", week, s.Used(at, week))
		}
	}
	if s.Objective() >= d.Problem.NewStanding().Objective() {
		t.Error("nothing is sown within the hours")
	}
}

// Wishes that cannot hold together are named, and only those.
func TestConflictsNameTheSmallestSet(t *testing.T) {
	h := small(t)
	for _, p := range []plan.Planting{
		planting("one", "a", "carrot", cal.Of(2027, 4, 12), 4, cal.Of(2027, 8, 2)),
		planting("two", "a", "onion", cal.Of(2027, 5, 3), 4, cal.Of(2027, 9, 6)),
		planting("three", "b", "kale", cal.Of(2027, 5, 3), 2, cal.Of(2027, 9, 6))} {
		p.Plan = h.Plan
		h.Plantings = append(h.Plantings, p)
	}
	_, err := draft.Build(setting(t, h, draft.Wish{Kind: draft.Pin, Planting: "three"}, draft.Wish{Kind: draft.Pin, Planting: "one"},
		draft.Wish{Kind: draft.Forbid, Crop: "leek"}, draft.Wish{Kind: draft.Pin, Planting: "two"}))
	var all fault.List
	if !errors.As(err, &all) || len(all) != 3 {
		t.Fatalf("got %v", err)
	}
	var named []string
	for _, e := range all[1:] {
		named = append(named, e.Phrase.Args["planting"].(string))
	}
	if !slices.Equal(named, []string{"one", "two"}) {
		t.Errorf("named are %v", named)
	}
	_, err = draft.Build(setting(t, h, draft.Wish{Kind: draft.Pin, Planting: "three"}, draft.Wish{Kind: draft.Forbid, Crop: "kale", Bed: "b"}))
	if !errors.As(err, &all) || len(all) != 3 {
		t.Errorf("a pinned planting is forbidden: %v", err)
	}
}

func TestUnknownWishesAreToldAllAtOnce(t *testing.T) {
	_, err := draft.Build(setting(t, small(t), draft.Wish{Kind: draft.Pin, Planting: "x"}, draft.Wish{Kind: draft.Forbid, Crop: "y"},
		draft.Wish{Kind: draft.Forbid, Crop: "leek", Bed: "z"}, draft.Wish{Kind: draft.Hours, Hours: -1}, draft.Wish{Kind: "dance"}))
	var all fault.List
	if !errors.As(err, &all) || len(all) != 5 {
		t.Errorf("got %v", err)
	}
}

// The filter leaves a set that is impossible, of which no wish can be spared, for any
// rule by which certain wishes exclude each other.
func TestSmallestCannotBeMadeSmaller(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "wishes")
		all := make([]draft.Wish, n)
		for i := range all {
			all[i] = draft.Wish{Kind: draft.Hours, Hours: float64(i)}
		}
		var excluded [][]int
		for range rapid.IntRange(1, 3).Draw(t, "rules") {
			excluded = append(excluded, rapid.SliceOfNDistinct(rapid.IntRange(0, n-1), 1, n, rapid.ID[int]).Draw(t, "rule"))
		}
		possible := func(w []draft.Wish) (bool, error) {
			for _, rule := range excluded {
				held := 0
				for _, i := range rule {
					if slices.Contains(w, all[i]) {
						held++
					}
				}
				if held == len(rule) {
					return false, nil
				}
			}
			return true, nil
		}
		least, err := draft.Smallest(all, possible)
		if err != nil {
			t.Fatal(err)
		}
		if ok, _ := possible(least); ok {
			t.Fatalf("%v is possible", least)
		}
		for i := range least {
			if ok, _ := possible(slices.Delete(slices.Clone(least), i, i+1)); !ok {
				t.Fatalf("%v of %v can be spared", least[i], least)
			}
		}
	})
}
