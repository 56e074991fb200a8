package exchange

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/plan"
)

// large is a holding of 120 plantings with forty years of daily record.
func large(b *testing.B) *holding.Holding {
	h := mustRead(b, inFolder(hand(b)))
	for i := len(h.Plantings); i < 120; i++ {
		p := h.Plantings[2]
		p.ID = fmt.Sprintf("more-%d", i)
		h.Plantings = append(h.Plantings, p)
	}
	var r climate.Record
	for i := range 40 * 365 {
		mean := 10 - 7*math.Cos(2*math.Pi*float64(i)/365)
		r.Days = append(r.Days, climate.Observation{Date: cal.Of(1987, 1, 1) + cal.Date(i), TMinC: climate.Is(tenth(mean - 4)), TMaxC: climate.Is(tenth(mean + 4)),
			RainMM: climate.Is(tenth(float64(i % 7))), RadiationMJ: climate.Is(tenth(mean))})
	}
	h.Weather[0].Record = &r
	return h
}

func tenth(v float64) float64 { return math.Round(v*10) / 10 }

func BenchmarkReadZip(b *testing.B) {
	var packed bytes.Buffer
	if err := WriteZip(&packed, large(b)); err != nil {
		b.Fatal(err)
	}
	book := testBook(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, report := CheckZip(bytes.NewReader(packed.Bytes()), int64(packed.Len()), book); !report.OK() {
			b.Fatal(report.Faults)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	h := large(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Write(h); err != nil {
			b.Fatal(err)
		}
	}
}

// A draft of 500 steps is resolved a few times while a holding is checked.
func BenchmarkCheckLongDraft(b *testing.B) {
	h := large(b)
	for i := range 500 {
		h.Changes = append(h.Changes, plan.Change{ID: fmt.Sprintf("step-%d", i), Plan: "most", Order: 10 + i, Action: "set",
			Planting: fmt.Sprintf("more-%d", 5+i%100), Field: "date", Value: "2027-06-01"})
	}
	book := testBook(b)
	for b.Loop() {
		if faults := Check(h, book); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}
