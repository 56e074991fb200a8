package desk

import (
	"encoding/json"
	"math"
	"reflect"
	"sync"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/num"
	"garner/internal/plan"
)

// shelfKeeper keeps one holding in memory, for the views.
type shelfKeeper struct {
	Keeper  // the rest is not asked for
	h       *holding.Holding
	mu      sync.Mutex
	results map[num.Digest][]byte
}

func (k *shelfKeeper) Holding() (*holding.Holding, int64, error)      { return k.h, 1, nil }
func (k *shelfKeeper) Row(string, string) (journal.Row, int64, error) { return nil, 0, nil }
func (k *shelfKeeper) Result(d num.Digest) ([]byte, bool, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	r, ok := k.results[d]
	return r, ok, nil
}
func (k *shelfKeeper) Keep(d num.Digest, result []byte) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.results[d] = result
	return nil
}

func newShelf(h *holding.Holding) *shelfKeeper {
	return &shelfKeeper{h: h, results: map[num.Digest][]byte{}}
}

func demoOffice(t testing.TB) *Office {
	return NewOffice(newShelf(sampleHolding(t)))
}

// The ribbons are the computed table: the mean height of a week's threads is the
// share of the want that is eaten.
func TestRibbonsAreTheTable(t *testing.T) {
	o := demoOffice(t)
	v, err := o.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Outlook(sampleHolding(t), OutlookOptions{Seed: pageSeed})
	if err != nil {
		t.Fatal(err)
	}
	for i := range v.Vegetables {
		rib, w := &v.Vegetables[i], r.of(t, v.Vegetables[i].Name)
		for k := range w.WantKg {
			if w.WantKg[k] <= 0 || k == 0 || k+1 == len(w.WantKg) || w.WantKg[k] != w.WantKg[k-1] || w.WantKg[k] != w.WantKg[k+1] {
				continue // a week that is wanted in part has fewer steps
			}
			height := 0.0
			for q := range 4 {
				for j := range Threads {
					height += float64(rib.Food[j][4*k+q]) / (4 * Threads)
				}
			}
			eaten := (w.FreshKg[k] + w.StoredKg[k]) / w.WantKg[k]
			if math.Abs(height-eaten) > 0.07 {
				t.Errorf("%s week %d: threads %.3f of the want, table %.3f", rib.Name, k, height, eaten)
			}
		}
	}
	for k := range r.Share {
		if v.Share.WantKg[k] <= 0 {
			t.Fatalf("nothing wanted in week %d", k)
		}
	}
	if v.Thinnest < v.From || v.ThinPoor > v.ThinShare+0.02 || v.ThinGood < v.ThinShare-0.02 {
		t.Errorf("thinnest %s: %.2f, poor %.2f, good %.2f", v.Thinnest, v.ThinShare, v.ThinPoor, v.ThinGood)
	}
}

// A view is kept under the digest of its inputs and comes back the same.
func TestKeptViewIsTheSame(t *testing.T) {
	k := newShelf(sampleHolding(t))
	first, err := NewOffice(k).TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	again, err := NewOffice(k).TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	a, _ := json.Marshal(first)
	b, _ := json.Marshal(again)
	if again.Stale || string(a) != string(b) {
		t.Error("the kept view differs from the computed one")
	}
	changed := *k.h
	changed.Plantings = append([]plan.Planting{}, k.h.Plantings...)
	changed.Plantings[0].AreaM2 /= 2
	k.h = &changed
	stale, err := NewOffice(k).TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	if !stale.Stale {
		t.Error("after a change and a cold start the old figures were not shown")
	}
}

// Trying a change shows it beside the table as it stands, and writes nothing.
func TestTryingWritesNothing(t *testing.T) {
	o := demoOffice(t)
	id := ""
	for _, p := range sampleHolding(t).Plantings {
		if p.Crop == "carrot" && p.Date > cal.Of(2027, 4, 1) {
			id = p.ID
			break
		}
	}
	try := []plan.Change{{Action: "set", Planting: id, Field: "area_m2", Value: "0.2"}}
	v, err := o.VegetableView("carrot", try)
	if err != nil {
		t.Fatal(err)
	}
	if v.Before == nil || reflect.DeepEqual(v.Ribbon.Food, v.Before.Ribbon.Food) {
		t.Error("the change shows nothing")
	}
	after, err := o.VegetableView("carrot", nil)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(after.Ribbon, v.Before.Ribbon) {
		t.Error("the table as it stands moved")
	}
}

// What the sources give adds up to what is eaten.
func TestSourcesAddUp(t *testing.T) {
	o := demoOffice(t)
	r, err := Outlook(sampleHolding(t), OutlookOptions{Seed: pageSeed})
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"carrot", "onion", "lettuce", "potato", "rhubarb"} {
		v, err := o.VegetableView(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		w := r.of(t, name)
		for k := range w.WantKg {
			fresh, stored := 0.0, 0.0
			for _, s := range v.Sources {
				fresh, stored = fresh+s.FreshKg[k], stored+s.StoredKg[k]
			}
			if math.Abs(fresh-w.FreshKg[k]) > 1e-4 || math.Abs(stored-w.StoredKg[k]) > 1e-4 {
				t.Fatalf("%s week %d: sources %.4f fresh and %.4f stored, table %.4f and %.4f", name, k, fresh, stored, w.FreshKg[k], w.StoredKg[k])
			}
		}
		if len(v.Plantings) == 0 {
			t.Errorf("%s has no plantings", name)
		}
	}
}

// A planting's page says when it is ready, why, and how sure that is.
func TestPlantingViewTellsWhy(t *testing.T) {
	o := demoOffice(t)
	v, err := o.PlantingView("late-27", nil)
	if err != nil {
		t.Fatal(err)
	}
	if v.Fails < 0.8 || len(v.Why) < 3 || len(v.Course) < 20 || len(v.Facts) < 5 {
		t.Errorf("late carrots: fails %.2f, %d reasons, %d days, %d facts", v.Fails, len(v.Why), len(v.Course), len(v.Facts))
	}
	still := false
	for _, w := range v.Why {
		still = still || w.Key == "desk.why_light"
	}
	if !still {
		t.Errorf("no word of the light in %v", v.Why)
	}
}

func BenchmarkTryOneChange(b *testing.B) {
	o := demoOffice(b)
	if _, err := o.VegetableView("carrot", nil); err != nil {
		b.Fatal(err)
	}
	day := 0
	for b.Loop() {
		day++
		try := []plan.Change{{Action: "set", Planting: "car-27s", Field: "date", Value: (cal.Of(2027, 5, 1) + cal.Date(day%40)).String()}}
		if _, err := o.VegetableView("carrot", try); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkTryOnTable times the whole table's view with one planting tried on
// another day.
func BenchmarkTryOnTable(b *testing.B) {
	o := demoOffice(b)
	if _, err := o.TableView(nil); err != nil {
		b.Fatal(err)
	}
	day := 0
	for b.Loop() {
		day++
		try := []plan.Change{{Action: "set", Planting: "car-27s", Field: "date", Value: (cal.Of(2027, 5, 1) + cal.Date(day%40)).String()}}
		if _, err := o.TableView(try); err != nil {
			b.Fatal(err)
		}
	}
}
