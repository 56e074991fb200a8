package desk

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/record"
	"garner/internal/window"
)

// Every parameter of the book is told in one group, and no other.
func TestEveryParameterIsToldInOneGroup(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	count := map[string]int{}
	for _, g := range groupsOfFacts {
		for _, name := range g.parameters {
			count[name]++
		}
	}
	for _, p := range b.Parameters() {
		if count[p.Name] != 1 {
			t.Errorf("%s is told %d times", p.Name, count[p.Name])
		}
		delete(count, p.Name)
	}
	for name := range count {
		t.Errorf("%s is told and not in the book", name)
	}
}

// A crop is found by any of its names, by the beginnings of their words, and by
// what is nearest to a name nobody knows.
func TestCropsAreFoundByAnyName(t *testing.T) {
	o := demoOffice(t)
	for _, c := range []struct{ name, crop, use string }{
		{"zucchini", "courgette", ""}, {"Daucus carota subsp. sativus", "carrot", ""}, {"rutabaga", "swede", ""}, {"turnip greens", "turnip", "tops"},
	} {
		found, err := o.FindCrop(c.name)
		if err != nil || found.Crop != c.crop || found.Use != c.use {
			t.Errorf("%s leads to %+v (%v)", c.name, found, err)
		}
	}
	if found, _ := o.FindCrop("Brassica oleracea Italica Group"); found.Crop != "" || len(found.Several) < 2 {
		t.Errorf("a shared botanical name leads to %+v", found)
	}
	if found, _ := o.FindCrop("bean"); found.Crop != "" || !slices.Contains(found.Several, "runner-bean") {
		t.Errorf("bean leads to %+v", found)
	}
	if found, _ := o.FindCrop("zuchinni"); found.Crop != "" || !slices.Contains(found.Nearest, "zucchini") {
		t.Errorf("zuchinni leads to %+v", found)
	}
}

// The year laid out is the answer of the window, day for day.
func TestCropYearIsTheWindow(t *testing.T) {
	o := demoOffice(t)
	y, err := o.CropYear("carrot", "table", "")
	if err != nil {
		t.Fatal(err)
	}
	h := sampleHolding(t)
	w, err := Window(WindowOptions{Crop: "carrot", Use: "table", Method: "seed", Site: h.Sites[0].Location, Normals: h.Weather[0].Normals, Seed: pageSeed})
	if err != nil {
		t.Fatal(err)
	}
	open := y.Starts[0]
	if open.Cover != "open" || open.Method != "seed" || len(open.Spells) != len(w.Windows) || y.Wanted != window.UsualChance {
		t.Fatalf("%+v, the window has %+v", open, w)
	}
	for i, s := range open.Spells {
		its := w.Windows[i]
		if cal.MonthDayOf(commonDay(s.First)) != its.First || cal.MonthDayOf(commonDay(s.Last)) != its.Last || s.Chance != its.Chance {
			t.Errorf("%+v, the window has %+v", s, its)
		}
		if !slices.IsSorted(s.Early[:]) || !slices.IsSorted(s.Late[:]) || s.Early[0] <= s.First {
			t.Errorf("ready in ten years on %v and %v", s.Early, s.Late)
		}
	}
	for k, c := range open.Chance {
		if c < 0 || c > 1+1e-9 {
			t.Errorf("chance %g on day %d", c, k)
		}
	}
	var covers []string
	for _, s := range y.Starts {
		covers = append(covers, s.Cover)
	}
	if want := []string{"open", "mesh", "fleece", "low tunnel", "cold frame", "tunnel"}; !reflect.DeepEqual(covers, want) && len(h.Sites) == 1 {
		t.Errorf("covers %v, the household has %v", covers, want)
	}
}

// A year asked for again is the one kept, also by another office over the same
// keeper; another number of the grower's asks anew.
func TestCropYearIsKept(t *testing.T) {
	keeper := newShelf(sampleHolding(t))
	first, err := NewOffice(keeper).CropYear("radish", "", "")
	if err != nil {
		t.Fatal(err)
	}
	if len(keeper.results) != 1 {
		t.Fatalf("%d results are kept", len(keeper.results))
	}
	again, err := NewOffice(keeper).CropYear("radish", "", "")
	if err != nil || !reflect.DeepEqual(first, again) {
		t.Errorf("the kept year is another (%v)", err)
	}
	own := *keeper.h
	own.Overrides = append(slices.Clone(own.Overrides), crop.Override{ID: "x", Crop: "radish", Parameter: "soil_minimum_c", Value: "9", Unit: "C"})
	keeper.h = &own
	if _, err := NewOffice(keeper).CropYear("radish", "", ""); err != nil || len(keeper.results) != 2 {
		t.Errorf("another number did not ask anew: %d results (%v)", len(keeper.results), err)
	}
}

// Who does not wait gets nothing at first, and the same year as the others when it
// is there; many who ask at once are served by one run.
func TestCropYearDoesNotHoldUp(t *testing.T) {
	o := demoOffice(t)
	if y, err := o.CropYearWithin("lettuce", "", "", 0); y != nil || err != nil {
		t.Errorf("a year worked out in no time: %v (%v)", y, err)
	}
	years := make(chan *CropYear)
	for range 4 {
		go func() {
			y, err := o.CropYear("lettuce", "", "")
			if err != nil {
				t.Error(err)
			}
			years <- y
		}()
	}
	first := <-years
	for range 3 {
		if other := <-years; !reflect.DeepEqual(first, other) {
			t.Error("two who ask at once are told different years")
		}
	}
	if y, err := o.CropYearWithin("lettuce", "", "", 0); err != nil || !reflect.DeepEqual(y, first) {
		t.Errorf("the year that is there is not found at once (%v)", err)
	}
	if n := len(o.underWay); n != 0 {
		t.Errorf("%d years are still under way", n)
	}
}

// In the south the year is laid out so that summer's windows stay whole.
func TestYearCutsNoWindowWhereItCan(t *testing.T) {
	h, err := Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"garlic", "tomato", "lettuce"} {
		y, err := NewOffice(newShelf(h)).CropYear(id, "", "")
		if err != nil {
			t.Fatal(err)
		}
		now, _ := today(h)
		if y.From > now || now-y.From > 366 {
			t.Errorf("%s: laid out from %s", id, y.From)
		}
		for _, s := range y.Starts {
			for _, w := range s.Spells {
				if w.Last < w.First || w.First < y.From || w.First >= y.From+366 {
					t.Errorf("%s, %s under %s: %s to %s", id, s.Method, s.Cover, w.First, w.Last)
				}
			}
		}
	}
}

// The grower's own number stands beside the book's.
func TestOwnNumbersStandBesideTheBooks(t *testing.T) {
	v, err := demoOffice(t).CropView("runner-bean", "table")
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, g := range v.Facts {
		for _, f := range g.Facts {
			if f.Own == "" {
				continue
			}
			found = true
			if f.Parameter != "days_seed" || f.Value != 78 || f.Sure != "own" || f.Book == nil || f.Book.Value == 78 || f.Book.Sure == "own" || f.Book.Source.Text == "" {
				t.Errorf("%+v over %+v", f, f.Book)
			}
		}
	}
	if !found {
		t.Error("the own number is not told")
	}
}

// Seed for a sowing is its rows' length times the seeds in a metre over the seeds
// in a gram.
func TestSeedForASowing(t *testing.T) {
	u := crop.Use{BetweenRowM: 0.3, SowPerM: 60, SeedsPerGram: 600}
	if got := SeedG(&u, 3); math.Abs(got-1) > 1e-12 {
		t.Errorf("%g g for 3 m2 in rows 0.3 m apart, 60 seeds a metre, 600 to the gram: want 1", got)
	}
	if got := SeedG(&crop.Use{BetweenRowM: 0.3, SeedsPerGram: 600}, 3); got != 0 {
		t.Errorf("%g g where nobody tells how thick it is sown", got)
	}
}

func TestRecordsOfACropAreSummedUp(t *testing.T) {
	h := sampleHolding(t)
	own := *h
	var p = h.Plantings[0]
	for _, q := range h.Plantings {
		if q.ID == "bea-26" || q.Plan == h.Plan && q.Crop == "leek" {
			p = q
			break
		}
	}
	own.Records = []record.Record{
		{ID: "1", Planting: p.ID, What: record.Emerged, Date: p.Date + 12},
		{ID: "2", Planting: p.ID, What: record.FirstPick, Date: p.Date + 100, Value: 2, Unit: "kg"},
		{ID: "3", Planting: p.ID, What: record.Picked, Date: p.Date + 110, Value: 3, Unit: "kg"},
		{ID: "4", Planting: p.ID, What: record.Cleared, Date: p.Date + 120},
	}
	v := recordedOf(&own, p.Crop)
	if v.Records != 4 || len(v.Plantings) != 1 || v.Days != (Between{100, 100, 1}) || v.YieldKgM2.Of != 1 || math.Abs(v.YieldKgM2.Most-5/p.AreaM2) > 1e-12 {
		t.Errorf("%+v", v)
	}
	if l := v.Plantings[0]; l.First != p.Date+100 || l.Last != p.Date+110 || !l.Over {
		t.Errorf("%+v", l)
	}
	if v := recordedOf(&own, "unicorn"); v.Records != 0 || v.Days.Of != 0 {
		t.Errorf("%+v", v)
	}
}

// A standing perennial tells its heir; the years in the ground come from the
// grower where the book has none. Rhubarb is split every five to eight years:
// common practice, no source.
func TestStandingPerennialTellsItsHeir(t *testing.T) {
	own := *sampleHolding(t)
	own.Overrides = append(slices.Clone(own.Overrides), crop.Override{ID: "renew", Crop: "rhubarb", Parameter: "renew_years", Value: "7", Unit: "a"})
	v, err := NewOffice(newShelf(&own)).CropView("rhubarb", "")
	if err != nil {
		t.Fatal(err)
	}
	if len(v.AgeYield) != 6 || len(v.Heirs) == 0 {
		t.Fatalf("%d shares of yield, %d heirs", len(v.AgeYield), len(v.Heirs))
	}
	heir := v.Heirs[0]
	if heir.Over.Year() != 2028 || heir.Heir >= heir.Over || heir.Bed == "" {
		t.Errorf("planted %s, heir %s, over %s", heir.Since, heir.Heir, heir.Over)
	}
	annual, err := demoOffice(t).CropView("carrot", "")
	if err != nil || annual.AgeYield != nil || annual.Heirs != nil {
		t.Errorf("an annual has heirs (%v)", err)
	}
}

func BenchmarkCropYearCold(b *testing.B) {
	keeper := newShelf(sampleHolding(b))
	for b.Loop() {
		keeper.results = newShelf(&holding.Holding{}).results
		if _, err := NewOffice(keeper).CropYear("leek", "", ""); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCropYearWarm(b *testing.B) {
	o := demoOffice(b)
	if _, err := o.CropYear("leek", "", ""); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := o.CropYear("leek", "", ""); err != nil {
			b.Fatal(err)
		}
	}
}
