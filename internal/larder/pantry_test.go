package larder

import (
	"errors"
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/words"
)

// Each fault of a setting is told by its own key, with a text for it.
func TestSettingFaults(t *testing.T) {
	for _, c := range []struct {
		key   string
		spoil func(*Setting)
	}{
		{"larder.no_days", func(in *Setting) { in.Days = 0 }},
		{"larder.no_days", func(in *Setting) { in.First = cal.None }},
		{"larder.vegetable_twice", func(in *Setting) { in.Vegetables = append(in.Vegetables, "carrot") }},
		{"larder.store_twice", func(in *Setting) { in.Stores = append(in.Stores, sand(4)) }},
		{"larder.capacity", func(in *Setting) { in.Stores[0].CapacityKg = 0 }},
		{"larder.capacity", func(in *Setting) { in.Stores[0].CapacityKg = math.NaN() }},
		{"larder.store_temperature", func(in *Setting) { in.Stores[0].SummerC = 70 }},
		{"larder.want_vegetable", func(in *Setting) { in.Wants[0].Vegetable = "yam" }},
		{"larder.want_weight", func(in *Setting) { in.Wants[0].KgPerWeek = -1 }},
		{"larder.left_vegetable", func(in *Setting) { in.Left = []GapLeft{{ID: "l", Vegetable: "yam", From: monday, To: monday}} }},
		{"larder.purchase_vegetable", func(in *Setting) {
			in.Purchases = []Purchase{{Vegetable: "yam", From: monday, To: monday, KgPerWeek: 1}}
		}},
		{"larder.purchase_span", func(in *Setting) {
			in.Purchases = []Purchase{{Vegetable: "carrot", From: monday, To: monday - 1, KgPerWeek: 1}}
		}},
		{"larder.want_buy", func(in *Setting) { in.Purchases = []Purchase{{Vegetable: "carrot", From: monday, To: monday}} }},
		{"larder.left_span", func(in *Setting) { in.Left = []GapLeft{{ID: "l", Vegetable: "carrot", From: monday, To: monday - 1}} }},
		{"larder.left_span", func(in *Setting) { in.Left = []GapLeft{{ID: "l", Vegetable: "carrot", From: cal.None, To: monday}} }},
		{"larder.group_twice", func(in *Setting) { in.Groups = []Group{rooted("g", "carrot"), rooted("g", "carrot")} }},
		{"larder.group_empty", func(in *Setting) { in.Groups = []Group{rooted("g")} }},
		{"larder.member_vegetable", func(in *Setting) { in.Groups = []Group{rooted("g", "carrot", "yam")} }},
		{"larder.member_twice", func(in *Setting) { in.Groups = []Group{rooted("g", "carrot", "carrot")} }},
		{"larder.want_group", func(in *Setting) { in.Wants = append(in.Wants, Want{ID: "x", Group: "roots", KgPerWeek: 1}) }},
		{"larder.want_buy", func(in *Setting) { in.Wants[0].BuyKgPerWeek = -1 }},
		{"larder.eaters", func(in *Setting) { in.Visits = []Visit{{ID: "g", From: monday, To: monday, Eaters: 1}} }},
		{"larder.eaters_on", func(in *Setting) {
			in.Eaters, in.Visits = 2, []Visit{{ID: "g", From: monday, To: monday, Eaters: -3}}
		}},
		{"larder.batch_vegetable", func(in *Setting) { in.Batches[0].Vegetable = "yam" }},
		{"larder.batch_store", func(in *Setting) { in.Batches[0].Store = "loft" }},
		{"larder.claim_weight", func(in *Setting) { in.Claims = []Claim{{Planting: "p", Day: monday, Kg: math.NaN()}} }},
		{"larder.batch_weight", func(in *Setting) { in.Batches[0].Kg = -1 }},
		{"larder.batch_date", func(in *Setting) { in.Batches[0].Stored = cal.None }},
		{"larder.batch_method", func(in *Setting) { in.Stores[0].Method = "hung" }},
		{"larder.batch_method", func(in *Setting) { in.Keeping = only(crop.Storage{Method: "damp sand"}) }},
	} {
		in := simple(5, 1, plain, sand(5))
		in.Batches = []Opening{carrots("b", 1, monday)}
		c.spoil(&in)
		_, err := NewPantry(in)
		var told fault.List
		if !errors.As(err, &told) || len(told) != 1 || told[0].Phrase.Key != c.key {
			t.Errorf("want the one fault %s, got %v", c.key, err)
		} else if !words.English().Has(c.key) {
			t.Errorf("%s has no text", c.key)
		}
	}
}

// All faults are told at once.
func TestSettingTellsAllFaults(t *testing.T) {
	in := simple(5, -1, plain, sand(-5))
	in.Batches = []Opening{carrots("b", -1, monday), carrots("c", 1, cal.None)}
	_, err := NewPantry(in)
	var told fault.List
	if !errors.As(err, &told) || len(told) != 4 {
		t.Errorf("want four faults, got %v", err)
	}
}

// A supply that cannot be is refused before anything is reckoned.
func TestSupplyFaults(t *testing.T) {
	for _, c := range []struct {
		key   string
		spoil func(*Supply, *Future)
	}{
		{"larder.supply_vegetable", func(s *Supply, _ *Future) { s.Vegetable = "yam" }},
		{"larder.supply_store", func(s *Supply, _ *Future) { s.Store = "loft" }},
		{"larder.supply_unsound", func(s *Supply, _ *Future) { s.Flow = []float32{1} }},
		{"larder.supply_unsound", func(s *Supply, _ *Future) { s.Standing[1] = float32(math.NaN()) }},
		{"larder.supply_unsound", func(s *Supply, _ *Future) { s.Standing[1] = -1 }},
		{"larder.supply_unsound", func(s *Supply, _ *Future) { s.HoldDays = -1 }},
		{"larder.life_factor", func(_ *Supply, f *Future) { f.SupplyLife = []float64{0} }},
		{"larder.life_factor", func(_ *Supply, f *Future) { f.BatchLife = []float64{math.NaN()} }},
	} {
		p, err := NewPantry(simple(5, 1, plain, sand(5)))
		if err != nil {
			t.Fatal(err)
		}
		s := supply("p", 0)
		s.Standing = []float32{1, 1}
		f := Future{Supplies: []*Supply{s}}
		c.spoil(s, &f)
		var told *fault.Error
		if err := p.Run(p.NewScratch(), f, p.NewYear()); !errors.As(err, &told) || told.Phrase.Key != c.key {
			t.Errorf("want %s, got %v", c.key, err)
		} else if !words.English().Has(c.key) {
			t.Errorf("%s has no text", c.key)
		}
	}
}

// The balance refuses what does not add up, and what is no number.
func TestBalanceRefusesAResidual(t *testing.T) {
	good := Balance{SuppliedKg: 100, FreshKg: 60, PutKg: 30, OverKg: 8, GroundKg: 2, StoredKg: 25, PreparedKg: 3, SpoiledKg: 2}
	if err := good.check(); err != nil {
		t.Error(err)
	}
	for _, spoil := range []func(*Balance){
		func(b *Balance) { b.FreshKg += 0.001 },
		func(b *Balance) { b.StoreKg -= 0.001 },
		func(b *Balance) { b.OverKg = math.NaN() },
		func(b *Balance) { b.Share = 0.001 },
	} {
		b := good
		spoil(&b)
		if err := b.check(); fault.KindOf(err) != fault.Internal || err == nil {
			t.Errorf("%+v passes: %v", b, err)
		}
	}
	if !words.English().Has("larder.balance") {
		t.Error("larder.balance has no text")
	}
}
