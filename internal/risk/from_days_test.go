package risk

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
)

// daysFrom sums hours to the daily record that a station would have kept.
func daysFrom(w *Weather, humid bool) *climate.Record {
	r := &climate.Record{}
	for i := range w.Days {
		d := &w.Days[i]
		if !d.Humid {
			continue
		}
		sum := 0.0
		for _, h := range w.of(d) {
			sum += h.HumidityPct
		}
		o := climate.Observation{Date: d.Date, TMinC: climate.Is(d.TMinC), TMaxC: climate.Is(d.TMaxC), RainMM: climate.Is(d.RainMM)}
		if humid {
			o.HumidityPct = climate.Is(sum / float64(d.to-d.from))
		}
		r.Days = append(r.Days, o)
	}
	return r
}

// What hours made from days find of the Hutton days of the real hours, and how many
// of theirs are wrong; the figures stand in docs/models/risk.md.
func TestHoursMadeFromDays(t *testing.T) {
	rule := ruleNamed(t, "hutton")
	var real, made, both [2]int
	for _, name := range []string{"athenry_ie_2017", "johnstown_castle_ie_2017", "malin_head_ie_2017", "de_bilt_nl_2000", "new_york_jfk_us_2013"} {
		w := record(t, name)
		on := map[cal.Date]bool{}
		for _, x := range rule.Fired(w, Options{Since: cal.None}) {
			on[x.Date] = true
		}
		for k, humid := range []bool{true, false} {
			real[k] += len(on)
			m := FromDays(daysFrom(w, humid))
			if !m.Estimated {
				t.Error("made hours do not say so")
			}
			for _, x := range rule.Fired(m, Options{Since: cal.None}) {
				made[k]++
				if on[x.Date] {
					both[k]++
				}
			}
		}
	}
	if 10*both[0] < 9*real[0] || 2*made[0] > 3*real[0] {
		t.Errorf("with mean humidity %d of %d days were found, and %d told", both[0], real[0], made[0])
	}
	if made[1] <= made[0] {
		t.Error("humidity does not help: say so in the document")
	}
	t.Logf("with mean humidity: %d of %d found, %d told; without: %d of %d found, %d told", both[0], real[0], made[0], both[1], real[1], made[1])
}

// Made hours keep the day's extremes.
func TestMadeHoursKeepTheExtremes(t *testing.T) {
	w := record(t, "de_bilt_nl_2000")
	r := daysFrom(w, true)
	m := FromDays(r)
	for i := range m.Days {
		o := &r.Days[i]
		if d := &m.Days[i]; d.Date != o.Date || d.TMinC > o.TMinC.Value+1e-9 || d.TMaxC < o.TMaxC.Value-1e-9 || math.Abs(d.RainMM-o.RainMM.Value) > 1e-9 {
			t.Errorf("%s: %+v from %+v", o.Date, *d, *o)
		}
	}
}
