package draft_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"garner/internal/crop"
	"garner/internal/draft"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/programme"
)

// Every column gives what the season engine gives when it is stepped anew in a bed
// of its class, on the ground of one unit: what is picked, week for week, or what
// stands in the middle of its time.
func TestColumnsGiveWhatTheSeasonGives(t *testing.T) {
	h := small(t)
	d := built(t, h)
	scales, err := outlook.NewScales(setting(t, h).Setting, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	picked, stood := 0, 0
	for j := range d.Problem.Sowings {
		c, w := &d.Columns[j], &d.Problem.Sowings[j]
		if c.Store != "" || w.Last == d.Problem.Weeks-1 { // what is cut off by the end is rounded to weeks
			continue
		}
		class := &d.Classes[w.Ground]
		p := plan.New("again", h.Plan)
		p.Bed, p.Crop, p.Use, p.Method, p.Date, p.AreaM2, p.ClearBy = class.Pieces[len(class.Pieces)-1].Bed, c.Crop.ID, c.Use.Name, c.Method, c.Date, class.UnitM2, c.Clear
		tried, err := scales.TryFair(p.Bed, []plan.Planting{p}, draft.Futures)
		if err != nil {
			t.Fatal(err)
		}
		for f, o := range tried[0].Years {
			low, high := 0.0, 0.0
			for _, kg := range o.Flow {
				low, high = low+float64(kg), high+float64(kg)
			}
			if n := len(o.Standing); n > 0 {
				// The day on which it is cleared may count or not: the middle is true to a day.
				near := o.Standing[max(0, n/2-1):min(n, n/2+2)]
				low, high = low+float64(slices.Min(near)), high+float64(slices.Max(near))
				stood++
			} else {
				picked++
			}
			got := 0.0
			for _, l := range w.Lots[f] {
				got += l.Kg
			}
			if slack := 1e-4 * float64(1+len(w.Lots[f])); got < low-slack || got > high+slack {
				t.Fatalf("%s under future %d gives %.4f kg, the season %.4f to %.4f", w.ID, f, got, low, high)
			}
		}
	}
	if picked < 100 || stood < 100 {
		t.Errorf("only %d futures of picked and %d of standing crops were looked at", picked, stood)
	}
}

// What is kept is good for longer and weighs less than the same crop eaten fresh.
func TestAStoreLengthensAndLightens(t *testing.T) {
	d := built(t, small(t))
	type start struct {
		use    *crop.Use
		method plan.Method
		ground int
		first  int
		last   int
	}
	fresh := map[start]int{}
	for j := range d.Problem.Sowings {
		if w, c := &d.Problem.Sowings[j], &d.Columns[j]; c.Store == "" {
			fresh[start{c.Use, c.Method, w.Ground, w.First, w.Last}] = j
		}
	}
	seen := 0
	for j := range d.Problem.Sowings {
		w, c := &d.Problem.Sowings[j], &d.Columns[j]
		k, known := fresh[start{c.Use, c.Method, w.Ground, w.First, w.Last}]
		if c.Store == "" || !known || c.Clear != d.Columns[k].Clear || len(w.Lots[0]) != 1 || len(d.Problem.Sowings[k].Lots[0]) != 1 {
			continue
		}
		seen++
		a, b := w.Lots[0][0], d.Problem.Sowings[k].Lots[0][0]
		if a.First != b.First || a.Last < b.Last || a.Kg > b.Kg {
			t.Errorf("%s is kept as %+v, fresh it is %+v", w.ID, a, b)
		}
	}
	if seen == 0 {
		t.Error("no crop was both kept and eaten fresh")
	}
}

// The classes cover the ground of the beds, each bed exactly, and beds alike are one.
func TestClassesCoverTheBeds(t *testing.T) {
	h := small(t)
	d := built(t, h)
	if len(d.Classes) != 2 {
		t.Errorf("three beds of two kinds are %d classes", len(d.Classes))
	}
	of := map[string]float64{}
	for g, c := range d.Classes {
		units := 0
		for _, p := range c.Pieces {
			of[p.Bed] += float64(p.Units) * c.UnitM2
			units += p.Units
		}
		if p := &d.Problem.Grounds[g]; units != p.Units || p.UnitM2 != c.UnitM2 {
			t.Errorf("%s: %d units of %v m2, its pieces %d of %v", p.ID, p.Units, p.UnitM2, units, c.UnitM2)
		}
	}
	for _, b := range h.Beds {
		if math.Abs(of[b.ID]-b.AreaM2()) > 1e-9 {
			t.Errorf("bed %s has %v m2, its units %v", b.ID, b.AreaM2(), of[b.ID])
		}
	}
}

// A problem without sowings costs what the table of what is kept lacks.
func TestNoSowingsCostWhatTheTableLacks(t *testing.T) {
	h := demo(t)
	d := built(t, h)
	own := *h
	own.Plans, own.Changes = []plan.Plan{{ID: h.Plan}}, nil
	own.Plantings = slices.Clone(d.Kept)
	for i := range own.Plantings {
		own.Plantings[i].Plan = h.Plan
	}
	table, err := outlook.Compute(setting(t, &own).Setting, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	s := d.Problem.NewStanding()
	for k := range d.Problem.Demands {
		demand := &d.Problem.Demands[k]
		for v := range table.Vegetables {
			if table.Vegetables[v].Name != demand.ID {
				continue
			}
			short := 0.0
			for _, kg := range table.Weekly(v, false).Short {
				short += kg
			}
			if want := short * demand.Levels[0].Cost; math.Abs(s.DemandCost(k)-want) > 0.005*want+0.2 {
				t.Errorf("%s costs %.2f, the table lacks %.2f", demand.ID, s.DemandCost(k), want)
			}
		}
	}
}

// The numbers are those that a file of the programme can hold.
func TestNumbersAreRounded(t *testing.T) {
	d := built(t, small(t))
	held := func(x, to float64) bool { return math.Abs(x*to-math.Round(x*to)) < 1e-6 }
	for _, w := range d.Problem.Sowings {
		if !held(w.Cost, 1e6) {
			t.Errorf("%s costs %v", w.ID, w.Cost)
		}
		for _, future := range w.Lots {
			for _, l := range future {
				if !held(l.Kg, 1e4) {
					t.Errorf("%s gives %v kg", w.ID, l.Kg)
				}
			}
		}
	}
}

// A use is started in the weeks in which it may be, with fair odds, and after what it
// was raised for.
func TestSowingsComeInTheirTime(t *testing.T) {
	h := small(t)
	d := built(t, h)
	for j := range d.Columns {
		c := &d.Columns[j]
		if c.Odds < 0.5 || c.Odds > 1 {
			t.Errorf("%s has odds %v", d.Problem.Sowings[j].ID, c.Odds)
		}
		if c.Date < h.Today || c.Method == plan.Plant && int(c.Date-h.Today) < int(c.Use.RaiseDays) {
			t.Errorf("%s goes in on %s", d.Problem.Sowings[j].ID, c.Date)
		}
	}
}

// The same setting gives the same problem, whatever the number of workers.
func TestTheSameSettingIsTheSameProblem(t *testing.T) {
	s := setting(t, small(t))
	a, err := draft.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	s.Workers = 1
	b, err := draft.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a.Problem, b.Problem) {
		t.Error("two builds differ")
	}
}

// A garden without wants, beds or room is a problem all the same.
func TestPoorGardensAreProblems(t *testing.T) {
	h := small(t)
	h.Wants = nil
	if d := built(t, h); len(d.Problem.Sowings) != 0 {
		t.Errorf("nothing is wanted, and there are %d sowings", len(d.Problem.Sowings))
	}
	h = small(t)
	h.Beds = nil
	d := built(t, h)
	if len(d.Problem.Sowings) != 0 || len(d.Notes) != len(h.Wants) {
		t.Errorf("no beds: %d sowings, notes %v", len(d.Problem.Sowings), d.Notes)
	}
	h = small(t)
	h.Wants[0].Vegetable = "moonflower"
	if d := built(t, h); len(d.Notes) != 1 || d.Notes[0].Key != "draft.not_grown" {
		t.Errorf("an unknown vegetable: %v", d.Notes)
	}
}

// What is brought into a store takes room there, what is eaten fresh does not.
func TestStoresAreResources(t *testing.T) {
	d := built(t, small(t))
	kept := 0
	for j := range d.Columns {
		w := &d.Problem.Sowings[j]
		switch {
		case d.Columns[j].Store == "" && len(w.Uses) > 0:
			t.Errorf("%s is eaten fresh and uses %v", w.ID, w.Uses)
		case len(w.Uses) > 0:
			kept++
		}
	}
	if kept == 0 {
		t.Error("nothing takes room in the shed")
	}
	if !slices.ContainsFunc(d.Problem.Resources, func(r programme.Resource) bool { return r.ID == "shed" && r.PerWeek[0] == 80 }) {
		t.Errorf("the shed is not among %v", d.Problem.Resources)
	}
}
