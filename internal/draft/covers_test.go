package draft_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/draft"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/programme"
	"garner/internal/protect"
)

// geared is the small garden of a household that wants lettuce in the cold months and
// has a low tunnel and a fleece, each for one bed.
func geared(t testing.TB) *holding.Holding {
	h := small(t)
	h.Today = cal.Of(2027, 9, 6)
	h.Gear = []place.Gear{{ID: "film", Kind: "film", Pieces: 1, LengthM: 8, WidthM: 3}, {ID: "hoops", Kind: "hoop", Pieces: 8},
		{ID: "fleece", Kind: "fleece", Pieces: 1, LengthM: 8, WidthM: 2}}
	h.Wants = []larder.Want{{ID: "p", Vegetable: "lettuce", KgPerWeek: 2, From: cal.MonthDay{Month: 2, Day: 1}, To: cal.MonthDay{Month: 5, Day: 31}}}
	return h
}

// coveredIn are the sowings of a problem that stand under a cover.
func coveredIn(d *draft.Draft) []int {
	var out []int
	for j := range d.Columns {
		if d.Columns[j].Under.Kind != "" {
			out = append(out, j)
		}
	}
	return out
}

// Without gear that a draft lays, and with none at all, the problem is the same, and
// nothing stands under a cover.
func TestWithoutGearNothingIsCovered(t *testing.T) {
	h := geared(t)
	h.Gear = nil
	none := built(t, h)
	h.Gear = []place.Gear{{ID: "mesh", Kind: "mesh", Pieces: 4, LengthM: 16, WidthM: 3}}
	mesh := built(t, h)
	if !reflect.DeepEqual(none.Problem, mesh.Problem) || len(coveredIn(none)) > 0 {
		t.Error("a mesh changes the problem, or something is covered without gear")
	}
	h.Gear = []place.Gear{{ID: "scrap", Kind: "fleece", Pieces: 1, LengthM: 2, WidthM: 1}}
	if scrap := built(t, h); !reflect.DeepEqual(none.Problem, scrap.Problem) {
		t.Error("a piece too short for any bed changes the problem")
	}
}

// What a sowing gives under a cover is what the season engine gives it in a holding
// where the cover lies over the bed, and it is offered only where that is more, or
// sooner, than in the open.
func TestColumnsUnderCoversGiveWhatTheSeasonGives(t *testing.T) {
	h := geared(t)
	d := built(t, h)
	looked := 0
	for _, j := range coveredIn(d) {
		c, w := &d.Columns[j], &d.Problem.Sowings[j]
		if w.Last == d.Problem.Weeks-1 {
			continue
		}
		bed := d.Classes[w.Ground].Pieces[0].Bed
		own := *h
		own.Covers = []place.CoverSpell{{ID: "over", Bed: bed, Spell: c.Under}}
		scales, err := outlook.NewScales(setting(t, &own).Setting, outlook.NewMemory())
		if err != nil {
			t.Fatal(err)
		}
		p := plan.New("again", h.Plan)
		p.Bed, p.Crop, p.Use, p.Method, p.Date, p.AreaM2, p.ClearBy = bed, c.Crop.ID, c.Use.Name, c.Method, c.Date, d.Classes[w.Ground].UnitM2, c.Clear
		tried, err := scales.TryFair(bed, []plan.Planting{p}, draft.Futures)
		if err != nil {
			t.Fatal(err)
		}
		for f, o := range tried[0].Years {
			low, high := 0.0, 0.0
			for _, kg := range o.Flow {
				low, high = low+float64(kg), high+float64(kg)
			}
			if n := len(o.Standing); n > 0 {
				near := o.Standing[max(0, n/2-1):min(n, n/2+2)]
				low, high = low+float64(slices.Min(near)), high+float64(slices.Max(near))
			}
			got := 0.0
			for _, l := range w.Lots[f] {
				got += l.Kg
			}
			if slack := 1e-4 * float64(1+len(w.Lots[f])); got < low-slack || got > high+slack {
				t.Errorf("%s under future %d gives %.4f kg, the season %.4f to %.4f", w.ID, f, got, low, high)
			}
		}
		looked++
	}
	if looked < 5 {
		t.Errorf("only %d sowings under covers were looked at", looked)
	}
}

// Whatever is sown, the covers that are laid for it are there: no piece is over two
// beds at once, no bed under two covers.
func TestCoversStayWithinTheGear(t *testing.T) {
	h := geared(t)
	d := built(t, h)
	covered := coveredIn(d)
	laid := 0
	rapid.Check(t, func(t *rapid.T) {
		s := d.Problem.NewStanding()
		for range rapid.IntRange(1, 20).Draw(t, "sowings") {
			from := rapid.IntRange(0, len(d.Problem.Sowings)-1).Draw(t, "any")
			if rapid.Bool().Draw(t, "covered") {
				from = rapid.SampledFrom(covered).Draw(t, "sowing")
			}
			if room := s.Room(from); room > 0 {
				s.Add(from, rapid.IntRange(1, room).Draw(t, "units"))
			}
		}
		rows, err := d.Lay(s.Units)
		if err != nil {
			t.Fatal(err)
		}
		spells := d.Covers(rows)
		laid += len(spells)
		stock, err := protect.Count(h.Gear, d.With(rows).Covers, h.Beds, h.Today)
		if err != nil || len(stock.Short) > 0 {
			t.Fatalf("short of %+v: %v", stock.Short, err)
		}
		for _, b := range h.Beds {
			var over []cover.Spell
			for _, c := range place.CoversOf(spells, b.ID) {
				over = append(over, c.Spell)
			}
			if fault := cover.Check(over); fault != nil {
				t.Fatal(fault)
			}
		}
		for i := range rows {
			if r := &rows[i]; r.Under.Kind != "" && !slices.ContainsFunc(spells, func(c place.CoverSpell) bool {
				return c.Bed == r.Planting.Bed && c.Kind == r.Under.Kind && c.On <= max(r.Under.On, r.Planting.Date) && c.Off >= min(r.Under.Off, d.Columns[r.Parts[0].Sowing].Clear)
			}) {
				t.Fatalf("%s has no cover: %+v", r.Planting.ID, spells)
			}
		}
	})
	if laid == 0 {
		t.Error("no cover was laid")
	}
}

// A draft with covers, worked out in full, lacks less than the same sowings in the
// open, and foresees about what the table says.
func TestCoversFeedTheTable(t *testing.T) {
	h := geared(t)
	d := built(t, h)
	s := greedy(d.Problem, 60)
	rows, err := d.Lay(s.Units)
	if err != nil {
		t.Fatal(err)
	}
	short := func(own *holding.Holding) (sum float64) {
		table, err := outlook.Compute(setting(t, own).Setting, outlook.NewMemory())
		if err != nil {
			t.Fatal(err)
		}
		for v := range table.Vegetables {
			for _, kg := range table.Weekly(v, false).Short {
				sum += kg
			}
		}
		return sum
	}
	with := d.With(rows)
	open := *with
	open.Covers = h.Covers
	bare, covered, none := short(&open), short(with), short(d.With(nil))
	if len(with.Covers) == 0 || covered > bare-2 {
		t.Errorf("%d covers; %.1f kg lack with them, %.1f without", len(with.Covers), covered, bare)
	}
	start := d.Problem.NewStanding()
	foreseen := (start.DemandCost(0) - s.DemandCost(0)) / d.Problem.Demands[0].Levels[0].Cost
	// judgement: three quarters of it, as for drafts in the open.
	if none-covered < 0.75*foreseen {
		t.Errorf("%.1f kg lack with the draft, %.1f with nothing sown; %.1f kg less were foreseen", covered, none, foreseen)
	}
	if better := greedy(builtOpen(t, h), 60); better.Objective() < s.Objective()-1e-9 {
		t.Errorf("a draft costs %.1f with gear, %.1f without", s.Objective(), better.Objective())
	}
}

func builtOpen(t testing.TB, h *holding.Holding) *programme.Problem {
	own := *h
	own.Gear = nil
	return built(t, &own).Problem
}

// Work on covers costs: a sowing under one costs more than the same in the open.
func TestCoversTakeWork(t *testing.T) {
	d := built(t, geared(t))
	for _, j := range coveredIn(d) {
		w := &d.Problem.Sowings[j]
		least := 0.05 * d.Classes[w.Ground].UnitM2 // data/labour.csv: 0.05 h/m2
		if w.Cost < least || math.IsNaN(w.Cost) {
			t.Errorf("%s costs %v", w.ID, w.Cost)
		}
	}
}
