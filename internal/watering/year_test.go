package watering_test

import (
	"math"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/outlook"
	"garner/internal/record"
	"garner/internal/watering"
)

// The year of the demo from midwinter: litres by month are those by day, most falls
// from May to August, dry years ask no less, and asking again gives the same.
func TestTheYearOfTheDemo(t *testing.T) {
	h := demotest.Holding(t, "main")
	h.Today = cal.Of(2027, 1, 4)
	s := demotest.Setting(t, h, 20)
	s.Today, s.From = h.Today, h.Today.Monday()
	m := outlook.NewMemory()
	began := time.Now()
	d, err := watering.Year(s, m)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%v", time.Since(began))
	var all []string
	for _, b := range h.Beds {
		all = append(all, b.ID)
	}
	months, mean, dry := d.Months(all)
	if len(months) != 13 && len(months) != 12 || months[0].First != cal.Of(2027, 1, 1) {
		t.Fatalf("%d months from %v", len(months), months[0].First)
	}
	summer := 0.0
	for _, month := range months {
		if month.DryL < month.MeanL || month.MeanL < 0 {
			t.Errorf("%+v", month)
		}
		if n := month.First.Month(); n >= 5 && n <= 8 {
			summer += month.MeanL
		}
	}
	if !(dry >= mean) || summer < 0.6*mean || mean < 3000 || mean > 60000 {
		t.Errorf("%.0f L in the year, %.0f in a dry one, %.0f of them from May to August", mean, dry, summer)
	}
	addsUp(t, d, all, months, mean)
	byDay := 0.0
	for _, l := range d.Of(all, 3) {
		byDay += l
	}
	byBed := 0.0
	for _, id := range all {
		for _, l := range d.Of([]string{id}, 3) {
			byBed += l
		}
	}
	if math.Abs(byDay-byBed) > 1e-6*byDay {
		t.Errorf("%v L by day, %v by bed", byDay, byBed)
	}
}

// What is told of beds adds up to that of all, by month and year, and months to the year.
func addsUp(t *testing.T, d *watering.Demand, all []string, months []watering.Month, meanL float64) {
	t.Helper()
	byMonth := make([]float64, len(months))
	beds := 0.0
	for _, id := range all {
		own, year, _ := d.Months([]string{id})
		for i, m := range own {
			byMonth[i] += m.MeanL
		}
		beds += year
	}
	sum := 0.0
	for i, m := range months {
		sum += m.MeanL
		if math.Abs(byMonth[i]-m.MeanL) > 1e-6*max(1, m.MeanL) {
			t.Errorf("%v: beds ask %v L, all together %v", m.First, byMonth[i], m.MeanL)
		}
	}
	if math.Abs(beds-meanL) > 1e-6*meanL || math.Abs(sum-meanL) > 1e-6*meanL {
		t.Errorf("the year is %v L, %v by bed and %v by month", meanL, beds, sum)
	}
}

// Records are summed by the month and bed they are of, feed with water.
func TestGivenByMonth(t *testing.T) {
	h := demotest.Holding(t, "main")
	p := h.Plantings[0]
	records := []record.Record{
		{Date: cal.Of(2027, 5, 1), What: record.Watered, Bed: "h1", Value: 10}, {Date: cal.Of(2027, 5, 31), What: record.Fed, Bed: "h1", Value: 5},
		{Date: cal.Of(2027, 6, 1), What: record.Watered, Planting: p.ID, Value: 7}, {Date: cal.Of(2027, 6, 1), What: record.Composted, Bed: "h1", Value: 90},
		{Date: cal.Of(2027, 5, 2), What: record.Fed, Bed: "h1", Value: 0.3, Unit: "kg"},
	}
	got := watering.GivenByMonth(records, h.Plantings)
	if got["h1"][cal.Of(2027, 5, 1)] != 15 || got[p.Bed][cal.Of(2027, 6, 1)] != 7 || got["h1"][cal.Of(2027, 6, 1)] != 0 && p.Bed != "h1" {
		t.Errorf("%v", got)
	}
}
