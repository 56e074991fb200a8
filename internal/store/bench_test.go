package store

import (
	"fmt"
	"testing"

	"garner/internal/desk"
	"garner/internal/num"
)

// demo keeps the demo household: 138 plantings and forty years of daily weather.
func demo(b *testing.B) (*Data, *Store, *desk.Office) {
	b.Helper()
	d := inFolder(b)
	s, err := d.Create("demo")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { s.Close() })
	h, err := desk.Sample("")
	if err != nil {
		b.Fatal(err)
	}
	o := desk.NewOffice(s)
	if err := o.Begin(desk.Author{Entry: "first"}, h); err != nil {
		b.Fatal(err)
	}
	return d, s, o
}

// BenchmarkOpen times the opening of a holding with 20 MB of results kept: all of
// it is looked through for damage.
func BenchmarkOpen(b *testing.B) {
	d, s, _ := demo(b)
	for n := range 20 {
		if err := s.Keep(num.Digest{byte(n)}, make([]byte, 1<<20)); err != nil {
			b.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		again, err := d.Open("demo")
		if err != nil {
			b.Fatal(err)
		}
		if err := again.Close(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkHoldingCold times the building of a holding that was just opened,
// weather read and all.
func BenchmarkHoldingCold(b *testing.B) {
	_, s, _ := demo(b)
	for b.Loop() {
		if _, _, err := newStore("demo", s.db).Holding(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkHoldingKept times asking for a holding that nobody changed.
func BenchmarkHoldingKept(b *testing.B) {
	_, s, _ := demo(b)
	for b.Loop() {
		if _, _, err := s.Holding(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSave times an edit of a planting from the form to the disk, and the
// holding after it.
func BenchmarkSave(b *testing.B) {
	_, s, o := demo(b)
	rows, err := o.Rows("plantings")
	if err != nil {
		b.Fatal(err)
	}
	id, n := rows[5].ID, 0
	for b.Loop() {
		n++
		row, err := o.Row("plantings", id)
		if err != nil {
			b.Fatal(err)
		}
		cells := map[string]string{"area_m2": fmt.Sprintf("%.2f", 0.5+float64(n%2)/10)}
		if _, err := o.Save(desk.Author{Entry: fmt.Sprint("e", n)}, "plantings", id, cells, row.Version); err != nil {
			b.Fatal(err)
		}
		if _, _, err := s.Holding(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBegin times the writing of a whole holding.
func BenchmarkBegin(b *testing.B) {
	h, err := desk.Sample("")
	if err != nil {
		b.Fatal(err)
	}
	d, n := inFolder(b), 0
	for b.Loop() {
		n++
		s, err := d.Create(fmt.Sprint("h", n))
		if err != nil {
			b.Fatal(err)
		}
		if err := desk.NewOffice(s).Begin(desk.Author{Entry: "first"}, h); err != nil {
			b.Fatal(err)
		}
		s.Close()
	}
}
