package advise_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/demotest"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/window"
)

// quick is a number of futures for tests that weigh much.
const quick = 20

// short is the expected shortage of a full table with plantings set in the plan [kg].
func short(t testing.TB, h *holding.Holding, years int, set ...plan.Planting) float64 {
	t.Helper()
	own := *h
	own.Plantings = append([]plan.Planting(nil), h.Plantings...)
	for _, p := range set {
		found := false
		for i := range own.Plantings {
			if own.Plantings[i].ID == p.ID {
				own.Plantings[i], found = p, true
			}
		}
		if !found {
			own.Plantings = append(own.Plantings, p)
		}
	}
	table, err := outlook.Compute(demotest.Setting(t, &own, years), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, v := range table.Summarise(false).Vegetables {
		for _, kg := range v.Short {
			sum += kg
		}
	}
	return sum
}

// within a hundredth, or what seven figures of two whole tables leave open.
func same(a, b float64) bool { return math.Abs(a-b) <= 0.01*math.Abs(b)+1e-4 }

// Every worth told equals the difference of two full tables within 1 % (the
// issue's own check): follow-ons of an open bed, of a bed in use and of one under
// cover, refills, and leaving or clearing.
func TestWorthIsTheDifferenceOfTwoTables(t *testing.T) {
	h := demo(t)
	a := adviser(t, h, quick)
	before := short(t, h, quick)
	for _, q := range []advise.Asked{
		{Bed: "h9", From: cal.Of(2027, 3, 1)}, {Bed: "h5", From: cal.Of(2027, 8, 1)},
		{Bed: "t1", From: cal.Of(2027, 5, 31), Until: cal.Of(2027, 10, 12)}} {
		s, err := a.Space(q)
		if err != nil {
			t.Fatal(err)
		}
		r, err := a.Rank(s)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Candidates) < 5 {
			t.Errorf("%s: only %d candidates", q.Bed, len(r.Candidates))
		}
		for _, c := range r.Candidates[:min(3, len(r.Candidates))] {
			if full := before - short(t, h, quick, c.Planting); !same(c.DropKg, full) {
				t.Errorf("%s in %s is told to be worth %.4f kg; two tables differ by %.4f", c.Use.Label, q.Bed, c.DropKg, full)
			}
		}
	}
}

func TestRefillIsWorthTheDifferenceOfTwoTables(t *testing.T) {
	h := demo(t)
	h.OnHand = append(h.OnHand, plan.Lot{ID: "few", Form: "plants", Crop: "leek", Amount: 12, Unit: "plants", Since: cal.None})
	h.Today = cal.Of(2027, 6, 1)
	a := adviser(t, h, quick)
	before := short(t, h, quick)
	s, err := a.Space(advise.Asked{Bed: "h9", From: cal.Of(2027, 6, 24), AreaM2: 2})
	if err != nil {
		t.Fatal(err)
	}
	r, err := a.Refill(s)
	if err != nil {
		t.Fatal(err)
	}
	hand, plants, got := 0, 0, 0
	for i, c := range r.Candidates {
		switch {
		case c.Lot == nil:
			got++
		case got > 0:
			t.Errorf("%s is on hand and comes after what is not", c.Use.Label)
		default:
			hand++
		}
		if c.Lot != nil && c.Lot.Form == "plants" {
			plants++
			if c.Plants > 12 || c.Planting.AreaM2 >= 2 || c.Planting.Date != s.From {
				t.Errorf("12 leeks are to fill %.2f m2 with %.0f on %v", c.Planting.AreaM2, c.Plants, c.Planting.Date)
			}
		}
		if c.Lot == nil && c.Planting.Method == plan.Plant && c.RaiseFrom < h.Today {
			t.Errorf("%s should have been sown on %v", c.Use.Label, c.RaiseFrom)
		}
		if i%6 == 0 {
			if full := before - short(t, h, quick, c.Planting); !same(c.DropKg, full) {
				t.Errorf("%s is told to be worth %.4f kg; two tables differ by %.4f", c.Use.Label, c.DropKg, full)
			}
		}
	}
	if hand == 0 || plants == 0 || got == 0 {
		t.Errorf("%d of hand, %d of them plants, %d to be got", hand, plants, got)
	}
}

func TestLeavingAndClearingAreDifferencesOfTwoTables(t *testing.T) {
	h := demo(t)
	a := adviser(t, h, quick)
	by := map[string]plan.Planting{}
	for _, p := range h.Plantings {
		by[p.ID] = p
	}
	for _, id := range []string{"spi-26", "kal-26", "lam-26"} {
		c, err := a.KeepOrClear(id)
		if err != nil {
			t.Fatal(err)
		}
		cleared := func(k int) plan.Planting {
			p := by[id]
			p.ClearBy = c.Weeks[k].Clear
			return p
		}
		atOnce := short(t, h, quick, cleared(0))
		for _, k := range []int{1, c.Best, len(c.Weeks) - 1} {
			alone := short(t, h, quick, cleared(k))
			if w := c.Weeks[k]; !same(w.KeepKg, atOnce-alone) {
				t.Errorf("%s: leaving it to %v is told to give %.4f kg; two tables differ by %.4f", id, w.Clear, w.KeepKg, atOnce-alone)
			}
		}
		if w := c.Weeks[c.Best]; c.Next != nil {
			alone := short(t, h, quick, cleared(c.Best))
			if full := alone - short(t, h, quick, cleared(c.Best), c.Next.Planting); !same(w.NextKg, full) {
				t.Errorf("%s: what follows is told to give %.4f kg; two tables differ by %.4f", id, w.NextKg, full)
			}
		}
		for k, w := range c.Weeks {
			if w.TotalKg > c.Weeks[c.Best].TotalKg+0.02 || !same(w.TotalKg, w.KeepKg+w.NextKg) {
				t.Errorf("%s: week %d gives %.3f, the best %.3f", id, k, w.TotalKg, c.Weeks[c.Best].TotalKg)
			}
		}
	}
}

// What is advised goes in at a time of the year at which it is usually started: on
// its day the windows of the crop's page give it the chance under which a season
// is not told at all, and onions to stand the winter are not sown in June though
// the ground is free (common practice, no source).
func TestCandidatesGoInWithinTheirWindows(t *testing.T) {
	const years, leastChance = 30, 0.25
	h := demo(t)
	a := adviser(t, h, quick)
	site := h.Sites[0]
	source := slices.IndexFunc(h.Weather, func(w holding.WeatherSource) bool { return w.ID == site.Weather && w.Normals != nil })
	at, err := window.GeneratedPlace(site.Location, *h.Weather[source].Normals, window.UsualSeed, years, 1, cover.Open)
	if err != nil {
		t.Fatal(err)
	}
	for _, from := range []cal.Date{cal.Of(2027, 3, 1), cal.Of(2027, 6, 1)} {
		r, err := a.Rank(advise.Space{Bed: "h9", From: from, Until: cal.None, AreaM2: 0.8})
		if err != nil {
			t.Fatal(err)
		}
		for i := range r.Candidates {
			c := &r.Candidates[i]
			on := &c.Planting
			found := window.Find(window.Question{Use: c.Use, Start: growth.StartOf(string(on.Method)), Place: at, Years: years, Step: 7, Chance: window.UsualChance})
			_, month, day := on.Date.YMD()
			if chance := found.ByDay[cal.MonthDay{Month: month, Day: day}.DayOfYear()-1]; chance < leastChance {
				t.Errorf("%s: %s on %v has a chance of %.2f in the crop's windows", c.Use.Label, on.Method, on.Date, chance)
			}
			if c.Use.StartAfterSolsticeDays > 0 && month < 7 {
				t.Errorf("%s is to go in on %v", c.Use.Label, on.Date)
			}
		}
	}
}

// few is the demo of a household that wants four vegetables only, so that much can
// be ranked.
func few(t testing.TB) *advise.Adviser {
	h := demo(t)
	var wants []larder.Want
	for _, w := range h.Wants {
		switch w.Vegetable {
		case "spinach", "lettuce", "carrot", "kale":
			wants = append(wants, w)
		}
	}
	h.Wants = wants
	return adviser(t, h, 8)
}

// What is told as a gain is one, has fair odds, and lies within its space.
func TestCandidatesAreGains(t *testing.T) {
	a := few(t)
	rapid.Check(t, func(t *rapid.T) {
		bed := rapid.SampledFrom([]string{"h1", "h4", "h9", "hb", "t2", "s1", "f2"}).Draw(t, "bed")
		from := cal.Of(2027, 1, 4) + cal.Date(rapid.IntRange(0, 40).Draw(t, "week")*7)
		s := advise.Space{Bed: bed, From: from, Until: from + cal.Date(rapid.IntRange(0, 200).Draw(t, "days")), AreaM2: rapid.Float64Range(0.2, 4).Draw(t, "area")}
		r, err := a.Rank(s)
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range r.Candidates {
			p := c.Planting
			switch {
			case c.DropKg <= 0 || c.Odds < 0.4 || c.Odds > 1:
				t.Fatalf("%s: %.3f kg at odds of %.2f", p.ID, c.DropKg, c.Odds)
			case p.Date < s.From || p.Date >= s.Until || p.ClearBy != s.Until || p.AreaM2 > s.AreaM2:
				t.Fatalf("%+v does not lie in %+v", p, s)
			case c.Last < p.Date || c.Last > s.Until:
				t.Fatalf("%s: goes in on %v, at the latest on %v", p.ID, p.Date, c.Last)
			case i > 0 && c.Clash == nil && (r.Candidates[i-1].Clash != nil || c.DropKg > r.Candidates[i-1].DropKg):
				t.Fatal("not the most worth first")
			}
		}
	})
}

// More ground never gives less odds of a usable crop, nor less at the table.
func TestMoreGroundNeverGivesLess(t *testing.T) {
	a := few(t)
	rapid.Check(t, func(t *rapid.T) {
		from := cal.Of(2027, 3, 1) + cal.Date(rapid.IntRange(0, 20).Draw(t, "week")*7)
		area := rapid.Float64Range(0.2, 3).Draw(t, "area")
		more := area * rapid.Float64Range(1.1, 3).Draw(t, "times")
		odds := map[string]float64{}
		for _, m2 := range []float64{area, more} {
			r, err := a.Rank(advise.Space{Bed: "h9", From: from, Until: from + 100, AreaM2: m2})
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range r.Candidates {
				k := c.Use.Label + string(c.Planting.Method) + c.Planting.Date.String()
				if less, known := odds[k]; known && m2 == more && c.Odds < less-1e-9 {
					t.Fatalf("%s: odds of %.2f on %.2f m2, %.2f on %.2f", k, less, area, c.Odds, more)
				}
				odds[k] = c.Odds
			}
		}
	})
}

// The spinach of a bed that is needed in May cannot be left beyond it, and what
// is not in the ground can be neither left nor cleared.
func TestOnlyWhatStandsIsLeftOrCleared(t *testing.T) {
	a := adviser(t, demo(t), quick)
	c, err := a.KeepOrClear("spi-26")
	if err != nil {
		t.Fatal(err)
	}
	if last := c.Weeks[len(c.Weeks)-1].Clear; c.Until.IsSet() && last >= c.Until {
		t.Errorf("left to %v on ground that is needed on %v", last, c.Until)
	}
	for _, id := range []string{"late-27", "pot-26", "rhu-21", "nothing"} {
		if _, err := a.KeepOrClear(id); err == nil {
			t.Errorf("%s can be left", id)
		}
	}
}

func TestASpaceIsFilledInFromTheFreeGround(t *testing.T) {
	a := adviser(t, demo(t), quick)
	s, err := a.Space(advise.Asked{Bed: "t1", From: cal.Of(2027, 6, 1)})
	if err != nil || s.AreaM2 <= 0 || !s.Until.IsSet() {
		t.Errorf("%+v, %v", s, err)
	}
	for _, wrong := range []advise.Asked{{Bed: "nowhere"}, {Bed: "t1", From: cal.Of(2030, 1, 1)},
		{Bed: "t1", From: cal.Of(2027, 6, 1), Until: cal.Of(2027, 5, 1)}} {
		if s, err := a.Space(wrong); err == nil {
			t.Errorf("%+v gives %+v", wrong, s)
		}
	}
}

// Where nothing for the table fits before the ground is needed, it can be covered.
func TestBareGroundIsOffered(t *testing.T) {
	a := adviser(t, demo(t), quick)
	r, err := a.Rank(advise.Space{Bed: "s1", From: cal.Of(2027, 9, 1), Until: cal.Of(2028, 4, 1), AreaM2: 3})
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[string]bool{}
	for _, o := range r.Offers {
		kinds[o.Kind] = true
		if o.Kind == "green manure" && o.OffBy >= cal.Of(2028, 4, 1) {
			t.Errorf("%s stands until %v", o.Crop, o.OffBy)
		}
	}
	if !kinds["green manure"] || !kinds["mulch"] || !kinds["sheet"] {
		t.Errorf("offered: %v", kinds)
	}
}
