package desk

import (
	"math"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/record"
)

func demoLarder(t *testing.T) *LarderView {
	t.Helper()
	v, err := Larder(sampleHolding(t), OutlookOptions{Years: 40, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestTheLarderHoldsEveryBatch(t *testing.T) {
	h := sampleHolding(t)
	v := demoLarder(t)
	there := map[string]*BatchLine{}
	last := cal.None
	for i := range v.Stocks {
		s := &v.Stocks[i]
		if i > 0 && soonest(last, s.Out.P50) > 0 {
			t.Errorf("%s is out of order", s.Vegetable)
		}
		last = s.Out.P50
		for _, share := range []float64{s.Outlasts, s.Judged, s.Meets} {
			if !(share >= 0 && share <= 1+1e-9) {
				t.Errorf("%s: a share of %g", s.Vegetable, share)
			}
		}
		if soonest(s.Out.P10, s.Out.P50) > 0 || soonest(s.Out.P50, s.Out.P90) > 0 {
			t.Errorf("%s: runs out %v", s.Vegetable, s.Out)
		}
		for k := range s.Batches {
			there[s.Batches[k].ID] = &s.Batches[k]
		}
	}
	for _, b := range h.Batches {
		line := there[b.ID]
		if line == nil {
			t.Errorf("batch %s is not told", b.ID)
			continue
		}
		if line.Kg != b.Kg || line.Stored != b.Stored || line.Planting != b.Planting || (b.Planting != "") != (line.PlantingName != "") {
			t.Errorf("batch %s is told as %+v", b.ID, line)
		}
	}
	if len(v.Stores) != len(h.Stores) {
		t.Errorf("%d stores, want %d", len(v.Stores), len(h.Stores))
	}
}

// A batch counted weeks ago is told with what is left of it by now, one that is eaten
// since then as such, and one that is all planting stock not as food.
func TestBatchesThatAreNotWhatWasTold(t *testing.T) {
	h := sampleHolding(t)
	h.Records = append(h.Records[:len(h.Records)-1],
		record.Record{ID: "x1", Date: cal.Of(2026, 11, 8), What: record.Counted, Store: "shed", Value: 58, Unit: "kg"},
		record.Record{ID: "x2", Date: cal.Of(2026, 10, 4), What: record.Counted, Batch: "b-calabrese", Value: 0.3, Unit: "kg"})
	for i := range h.Plantings {
		if p := &h.Plantings[i]; p.Crop == "garlic" && p.Date > h.Today {
			p.Stock = plan.OwnStock
		}
	}
	for i := range h.Batches {
		if h.Batches[i].ID == "b-garlic" {
			h.Batches[i].Kg = 0.3
		}
	}
	v, err := Larder(h, OutlookOptions{Years: 20, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string]*BatchLine{}
	for i := range v.Stocks {
		for k := range v.Stocks[i].Batches {
			lines[v.Stocks[i].Batches[k].ID] = &v.Stocks[i].Batches[k]
		}
	}
	potato, calabrese, garlic := lines["b-potato"], lines["b-calabrese"], lines["b-garlic"]
	if want := 58 - 8*2.6; math.Abs(potato.Kg-want) > 3 {
		t.Errorf("%g kg of potatoes, eight weeks of 2.6 kg after 58 were counted", potato.Kg)
	}
	if got := potato.EatenKg + potato.LostKg + potato.SownKg + potato.LeftKg; math.Abs(got-potato.Kg) > 0.1 {
		t.Errorf("%g kg of potatoes become %g", potato.Kg, got)
	}
	if calabrese.Says.Key != "desk.batch_gone" || garlic.Says.Key != "desk.batch_stock" {
		t.Errorf("calabrese: %s, garlic: %s", calabrese.Says.Key, garlic.Says.Key)
	}
	for _, b := range v.EatFirst {
		if b.ID == "b-calabrese" || b.ID == "b-garlic" {
			t.Errorf("%s is to be eaten first", b.ID)
		}
	}
}

// What is to be given away is of the surplus, week by week.
func TestGivingAwayIsOfTheSurplus(t *testing.T) {
	h := sampleHolding(t)
	h.Today = cal.Of(2027, 7, 5)
	v, err := Larder(h, OutlookOptions{Years: 40, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	r, err := Outlook(h, OutlookOptions{Years: 40, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(v.Give) == 0 || len(v.Surplus) == 0 {
		t.Fatal("nothing goes over in the summer of the demo")
	}
	for _, s := range v.Surplus {
		if !slices.Equal(s.Course, r.of(t, s.Vegetable).OverKg) {
			t.Errorf("%s: the surplus is not the table's over", s.Vegetable)
		}
		sum := 0.0
		for _, w := range s.Weeks {
			if w.Week >= s.First && w.Week <= s.Last {
				sum += w.Mid
			}
			if w.Chance < likelySurplus || w.Mid <= 0 || w.Mid > w.Good || w.Poor > w.Mid {
				t.Errorf("%s: %+v", s.Vegetable, w)
			}
		}
		if math.Abs(sum-s.Kg) > 1e-9 {
			t.Errorf("%s: %g kg go over at first, its weeks add up to %g", s.Vegetable, s.Kg, sum)
		}
		if n := len(s.Ways); n == 0 || s.Ways[n-1].Kind != "give" {
			t.Errorf("%s cannot be given away", s.Vegetable)
		}
		for _, w := range s.Ways {
			if !(w.RoomKg >= 0) {
				t.Errorf("%s: room for %g kg in %s", s.Vegetable, w.RoomKg, w.Store)
			}
		}
	}
	for i, g := range v.Give {
		if g.Week < h.Today.Monday() || i > 0 && g.Week <= v.Give[i-1].Week || len(g.Lines) == 0 {
			t.Errorf("week %s of the list is out of place", g.Week)
		}
	}
}

// Each caution that the larder may tell is in the crop book with a source, and
// those of jars and freezers are told only where there are any.
func TestLarderCautions(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := larderCautionRows()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, row := range rows {
		c, ok := b.Caution(row.key)
		if !ok {
			t.Errorf("the crop book has no caution %s", row.key)
			continue
		}
		s, ok := b.Source(c.Source)
		if !ok || s.Citation == "" {
			t.Errorf("caution %s has no source", row.key)
		}
		all[c.Text] = row.key
		for _, id := range row.crops {
			if _, ok := b.Crop(id); !ok {
				t.Errorf("caution %s is about %s, which is no crop", row.key, id)
			}
		}
	}
	told := func(v *LarderView) map[string]bool {
		out := map[string]bool{}
		for _, c := range v.Cautions {
			out[all[c.Text.Args["text"].(string)]] = true
		}
		return out
	}
	full := told(demoLarder(t))
	for _, key := range []string{"botulism-low-acid", "freezing", "garlic-oil", "potato-green", "mould"} {
		if !full[key] {
			t.Errorf("the demo's larder does not tell %s", key)
		}
	}
	h := sampleHolding(t)
	h.Batches = h.Batches[:1] // potatoes in sacks
	h.Plantings, h.Changes = nil, nil
	v, err := Larder(h, OutlookOptions{Years: 3, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	few := told(v)
	if few["botulism-low-acid"] || few["freezing"] || few["garlic-oil"] || !few["potato-green"] {
		t.Errorf("of potatoes in sacks is told %v", few)
	}
}
