package larder

import (
	"math"
	"testing"

	"garner/internal/crop"
)

// Carrots wilt in dry air and onions rot in damp air; where the air is as wanted,
// or nothing is told, the losses are the book's. By hand: carrots want 0.93 and
// get 0.60, 0.23 beyond the tolerance, which doubles the losses 1.15 times over.
func TestHumidityMultipliesTheLosses(t *testing.T) {
	carrot, onion := crop.Storage{Humidity: 0.93}, crop.Storage{Humidity: 0.68}
	for _, c := range []struct {
		air  Humidity
		of   crop.Storage
		want float64
	}{
		{Dry, carrot, math.Exp2(1.15)}, {Ordinary, carrot, math.Exp2(0.4)}, {Damp, carrot, 1}, {HumidityAsMethod, carrot, 1},
		{Dry, onion, 1}, {Ordinary, onion, 1}, {Damp, onion, math.Exp2(0.75)}, {Dry, crop.Storage{}, 1},
	} {
		near(t, string(c.air), c.air.LossFactor(c.of), c.want)
	}
}

// More is lost in air that is too dry, and the balance holds.
func TestADryStoreLosesMore(t *testing.T) {
	row := kept
	row.Humidity = 0.93
	lost := func(air Humidity) float64 {
		in := simple(30, 0, row, sand(50))
		in.Stores[0].Humidity = air
		in.Batches = []Opening{carrots("a", 10, monday)}
		return run(t, in, Future{}).Stores[0].DecayedKg
	}
	if told, damp, dry := lost(HumidityAsMethod), lost(Damp), lost(Dry); told != damp || dry < 2*damp || dry > 2.3*damp {
		t.Errorf("lost %g kg, damp %g, dry %g", told, damp, dry)
	}
}

// The book tells every use that feeds what humidity it wants, within what
// Handbook 66 prints for anything.
func TestTheBookTellsTheHumidityWanted(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, s := range u.Storage {
				if way, ok := u.Way(s.Method); !ok || way.Humidity < 0.4 || way.Humidity > 1 {
					t.Errorf("%s %s by %s: %g", c.ID, u.Name, s.Method, way.Humidity)
				}
			}
		}
	}
}

// A store holds what is told, or what its litres and jars come to: a freezer of
// 120 litres about 66 kg, sixty jars 24 kg.
func TestCapacityFromRoomAndJars(t *testing.T) {
	for _, c := range []struct {
		store Store
		want  float64
	}{
		{Store{CapacityKg: 7}, 7}, {Store{Method: Frozen, Litres: 120}, 66}, {Store{Method: "damp sand", Litres: 100}, 35},
		{Store{Method: "cool shed", Litres: 100}, 50}, {Store{Method: "bottled", Jars: 60}, 24}, {Store{}, 0},
	} {
		near(t, c.store.Method, c.store.Holds(), c.want)
	}
	in := simple(20, 1, plain, Store{ID: "sand", Name: "Sand", Method: "damp sand", WinterC: 2, SummerC: 2, Litres: 10})
	s := supply("p", 0)
	s.Standing, s.Store, s.Lift = []float32{10, 10}, "sand", true
	y := run(t, in, Future{Supplies: []*Supply{s}})
	near(t, "put into ten litres", y.Plantings[0].PutKg, 3.5)
}
