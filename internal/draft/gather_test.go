package draft_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/draft"
	"garner/internal/labour"
	"garner/internal/larder"
	"garner/internal/programme"
)

// Whatever is gathered can be had, has no more rows in the beds, and is dearer by less
// than the trouble of the rows it saves, as it is told; gathered anew it is the same.
func TestGatheringSparesRows(t *testing.T) {
	d, saved := built(t, small(t)), 0
	rapid.Check(t, func(t *rapid.T) {
		s := d.Problem.NewStanding()
		for range rapid.IntRange(0, 30).Draw(t, "sowings") {
			j := rapid.IntRange(0, len(d.Problem.Sowings)-1).Draw(t, "sowing")
			if room := s.Room(j); room > 0 {
				s.Add(j, rapid.IntRange(1, min(3, room)).Draw(t, "units"))
			}
		}
		saved += gathered(t, d, s.Units)
	})
	units := greedy(d.Problem, 60).Units
	saved += gathered(t, d, units)
	one, _ := d.Gather(units, nil)
	two, err := d.Gather(units, nil)
	if err != nil || !slices.Equal(one.Units, two.Units) {
		t.Error("gathered twice it differs", err)
	}
	if saved == 0 {
		t.Error("no row was spared")
	}
}

// gathered gathers a solution, holds what came of it to what is promised, and returns
// how many rows are spared.
func gathered(t rapid.TB, d *draft.Draft, units programme.Solution) int {
	t.Helper()
	before, rows := told(t, d, units)
	was := slices.Clone(units)
	g, err := d.Gather(units, nil)
	if err != nil {
		t.Fatal(err)
	}
	after, left := told(t, d, g.Units)
	if !slices.Equal(was, units) || g.RowsBefore != rows || g.Rows != left || math.Abs(g.Objective-after) > 1e-9 || math.Abs(before+g.Cost+g.SparedCost-after) > 1e-6 {
		t.Fatalf("told of %d rows made %d at %v: %+v", rows, left, after, g)
	}
	if g.Rows > g.RowsBefore || g.Spared == 0 && g.Cost > float64(g.RowsBefore-g.Rows)*labour.Row() {
		t.Fatalf("%d rows made %d cost %v", rows, left, g.Cost)
	}
	return rows - left
}

// told is what a solution that can be had costs, and its rows in the beds.
func told(t rapid.TB, d *draft.Draft, units programme.Solution) (float64, int) {
	t.Helper()
	objective, err := d.Problem.Objective(units)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := d.Lay(units) // refuses what cannot be had
	if err != nil {
		t.Fatal(err)
	}
	return objective, len(rows)
}

// Two rows of one crop that differ by a week where one would do become one.
func TestTwoRowsOfACropBecomeOne(t *testing.T) {
	d := built(t, small(t))
	s := d.Problem.NewStanding()
	first := -1
	for j := range d.Columns {
		c := &d.Columns[j]
		if c.Crop.ID != "kale" || s.Room(j) < 2 {
			continue
		}
		if first >= 0 && d.Problem.Sowings[j].Ground == d.Problem.Sowings[first].Ground && c.Date == d.Columns[first].Date+14 &&
			c.Method == d.Columns[first].Method && c.Store == d.Columns[first].Store {
			s.Add(first, 1)
			s.Add(j, 1)
			break
		}
		if first < 0 {
			first = j
		}
	}
	if rows := gathered(t, d, s.Units); rows != 1 {
		t.Errorf("%d rows are spared of %v", rows, s.Units)
	}
}

// Stopped at once, nothing is changed.
func TestGatheringIsStopped(t *testing.T) {
	d := built(t, small(t))
	units := greedy(d.Problem, 60).Units
	g, err := d.Gather(units, func() bool { return true })
	if err != nil || !slices.Equal(g.Units, units) || g.Cost != 0 || g.Rows != g.RowsBefore {
		t.Errorf("%+v, %v", g, err)
	}
}

// A cover for a corner of a bed where other things grow is not laid; where nothing else
// grows, or more of the bed is under it, it is.
func TestNoBedIsCoveredForACorner(t *testing.T) {
	h := geared(t)
	h.Wants = append(h.Wants, larder.Want{ID: "q", Vegetable: "kale", KgPerWeek: 0.1})
	d := built(t, h)
	covered, most := -1, 0.0
	for _, j := range coveredIn(d) {
		if gain := -d.Problem.NewStanding().Price(programme.Change{Sowing: j, Units: 1}); gain > most && d.Columns[j].Crop.ID == "lettuce" {
			covered, most = j, gain
		}
	}
	w, over := &d.Problem.Sowings[covered], d.Columns[covered].Under
	over.On, over.Off = max(over.On, d.Columns[covered].Date), min(over.Off, d.Columns[covered].Clear)
	open, most := -1, 0.0
	for j := range d.Columns {
		s := d.Problem.NewStanding()
		s.Add(covered, 3)
		o := &d.Problem.Sowings[j]
		gain := -s.Price(programme.Change{Sowing: j, Units: 1})
		if d.Columns[j].Crop.ID == "kale" && d.Columns[j].Under.Kind == "" && o.Ground == w.Ground && d.Columns[j].Date < over.Off-14 && d.Columns[j].Clear > over.On+14 && s.Room(j) > 0 && gain > most {
			open, most = j, gain
		}
	}
	for _, c := range []struct{ under, beside, spared int }{{1, 1, 1}, {1, 0, 0}, {3, 1, 0}} {
		s := d.Problem.NewStanding()
		s.Add(covered, c.under)
		s.Add(open, c.beside)
		gathered(t, d, s.Units)
		g, err := d.Gather(s.Units, nil)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := d.Lay(g.Units)
		if err != nil {
			t.Fatal(err)
		}
		if laid := len(d.Covers(rows)); g.Spared != c.spared || laid != 1-c.spared {
			t.Errorf("%+v: %d covers are laid, %d spared for %v", c, laid, g.Spared, g.SparedCost)
		}
	}
}
