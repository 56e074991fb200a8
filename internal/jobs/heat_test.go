package jobs_test

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/demotest"
	"garner/internal/jobs"
	"garner/internal/words"
)

var (
	july = cal.Of(2027, 7, 12)
	hot  = climate.Day{TMinC: 20, TMaxC: 36, RadiationMJ: 26, HumidityPct: 55, WindMS: 2}
)

// of are the jobs of a kind.
func of(all []jobs.Job, kind jobs.Kind) (out []jobs.Job) {
	for _, j := range all {
		if j.Kind == kind {
			out = append(out, j)
		}
	}
	return out
}

// In hot days the tunnel is shaded and fruit that sets is helped, by the temperatures of
// the rules of heat; in mild ones nothing of it is asked for. Source: risk/data/heat.csv,
// common practice.
func TestHotDaysAskForShadeAndHelp(t *testing.T) {
	q := spring(t, july, hot, nil)
	all := derived(t, q)
	shade := of(all, jobs.Shade)
	if len(shade) != 1 || shade[0].Best != july || !strings.Contains(words.English().Text(shade[0].Why), "30 °C") {
		t.Errorf("shade: %+v", shade)
	}
	var says string
	for _, j := range of(all, jobs.Heat) {
		says += words.English().Text(j.Why) + "\n"
	}
	for _, want := range []string{"tomatoes under cover", "32 °C", "set poorly", "runner beans", "drop their flowers"} {
		if !strings.Contains(says, want) {
			t.Errorf("%q is not told: %s", want, says)
		}
	}
	mild := derived(t, spring(t, july, climate.Day{TMinC: 9, TMaxC: 17, RadiationMJ: 10, HumidityPct: 75, WindMS: 2}, nil))
	if n := len(of(mild, jobs.Shade)) + len(of(mild, jobs.Heat)); n != 0 {
		t.Errorf("%d jobs of heat in mild days", n)
	}
}

// Lettuce seed sleeps in warm soil: a sowing in a hot week says so, outdoors and in trays,
// one in a mild week does not, nor does another crop. Source: risk/data/heat.csv, from
// 25 C.
func TestSowingsSayThatSeedSleeps(t *testing.T) {
	for sky, want := range map[*climate.Day]bool{&hot: true, &fine: false} {
		h := demotest.Holding(t, "")
		h.Today = july
		for i := range h.Plantings {
			if p := &h.Plantings[i]; p.ID == "lef-27b" {
				p.Date, p.ClearBy = july+2, cal.None
			}
		}
		q := question(t, h, 14)
		q.Skies = told(h, *sky, nil)
		all := derived(t, q)
		for id, sleeps := range map[string]bool{"sow:lef-27b": want, "sow-indoors:let-27i": want, "sow:bee-27b": false} {
			slept := false
			for _, n := range must(t, all, id).Notes {
				slept = slept || n.Key == "risk.heat_sleeping_seed"
			}
			if slept != sleeps {
				t.Errorf("%s at %g C sleeps: %v", id, sky.TMaxC, slept)
			}
		}
	}
}
