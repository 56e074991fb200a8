package cover

import (
	"math"
	"strings"
	"testing"

	"garner/internal/climate"
)

// TestMeasured holds the covers against what was measured; source beside each
// row. The days outside are our own where the source prints only a difference,
// which is what the tolerance is for.
func TestMeasured(t *testing.T) {
	for _, r := range figures(t, "measured.csv") {
		if r["mark"] != "seen" {
			t.Fatalf("a row marked %q is no evidence", r["mark"])
		}
		out, ra := r.conditions(t)
		got := effect(t, mustLookup(t, Kind(r["cover"])), r["quantity"], out, ra)
		tolerance := r.number(t, "tolerance")
		t.Logf("%s %s: %.2f against %s-%s (%s)", r["cover"], r["quantity"], got, r["low"], r["high"], r["source"])
		if got < r.number(t, "low")-tolerance || got > r.number(t, "high")+tolerance {
			t.Errorf("%s, %s: %.2f, measured %s to %s within %v (%s)",
				r["cover"], r["quantity"], got, r["low"], r["high"], tolerance, r["source"])
		}
	}
}

// TestBands holds each cover within wide bands, our own summary of what was
// measured and what growers say, on typical days.
func TestBands(t *testing.T) {
	days := map[string]row{}
	for _, r := range figures(t, "typical_days.csv") {
		days[r["day"]] = r
	}
	for _, r := range figures(t, "bands.csv") {
		names := strings.Split(r["days"], ";")
		if r["days"] == "" {
			names = []string{"spring mixed"}
		}
		for _, name := range names {
			out, ra := days[name].conditions(t)
			got := effect(t, mustLookup(t, Kind(r["cover"])), r["quantity"], out, ra)
			if got < r.number(t, "low") || got > r.number(t, "high") {
				t.Errorf("%s, %s, %s: %.2f is outside %s to %s", r["cover"], r["quantity"], name, got, r["low"], r["high"])
			}
		}
	}
}

// oregonSpring are days of all degrees of cloud and of a spring's usual winds.
func oregonSpring() []climate.Day {
	var days []climate.Day
	for _, clearness := range []float64{0.2, 0.3, 0.4, 0.5, 0.6, 0.7} {
		for _, wind := range []float64{1, 1.5, 2, 3} {
			days = append(days, climate.Day{TMinC: 7, TMaxC: 18, RadiationMJ: 37 * clearness, WindMS: wind})
		}
	}
	return days
}

// TestRowCoverMeans holds the mean lift of the minimum over a spring within the
// means measured in Oregon in 1983 and 1984, against mulch and against bare
// soil (Oregon State University, North Willamette row cover report 1988).
func TestRowCoverMeans(t *testing.T) {
	for kind, columns := range map[Kind][]string{
		Fleece: {"spunbonded_f"}, LowTunnel: {"perforated_film_f", "slit_film_f"},
	} {
		low, high := math.Inf(1), math.Inf(-1)
		for _, r := range figures(t, "row_cover_nights.csv") {
			if !strings.HasSuffix(r["night"], "mean") {
				continue
			}
			for _, column := range columns {
				for _, open := range []string{"bare_soil_f", "black_mulch_f"} {
					if r[column] == "" {
						continue
					}
					lift := (r.number(t, column) - r.number(t, open)) / 1.8
					low, high = min(low, lift), max(high, lift)
				}
			}
		}
		mean, days := 0.0, oregonSpring()
		for _, day := range days {
			mean += effect(t, mustLookup(t, kind), "night lift", day, 37) / float64(len(days))
		}
		t.Logf("%s: %.2f C within %.2f to %.2f C", kind, mean, low, high)
		if mean < low || mean > high {
			t.Errorf("%s: mean lift %.2f C, measured %.2f to %.2f C", kind, mean, low, high)
		}
	}
}

// TestClearStillNights: on nights chosen because covers did little, thin covers
// were between a degree warmer and 1.7 C colder than bare soil (same report,
// 1984). On a clear, still night the thin covers are colder, and no colder than
// that.
func TestClearStillNights(t *testing.T) {
	worst := 0.0
	for _, r := range figures(t, "row_cover_nights.csv") {
		for _, column := range []string{"spunbonded_f", "perforated_film_f"} {
			if r["bare_soil_f"] != "" && r[column] != "" {
				worst = min(worst, (r.number(t, column)-r.number(t, "bare_soil_f"))/1.8)
			}
		}
	}
	night := climate.Day{TMinC: 5, TMaxC: 18, RadiationMJ: 28, WindMS: 0.3}
	for _, kind := range []Kind{Mesh, Fleece, LowTunnel, Tunnel} {
		if lift := effect(t, mustLookup(t, kind), "night lift", night, 37); lift >= 0 || lift < worst {
			t.Errorf("%s: %.2f C on a clear still night, measured 0 to %.2f C", kind, lift, worst)
		}
	}
	night.RadiationMJ, night.WindMS = 8, 3
	for _, kind := range []Kind{Mesh, Fleece, LowTunnel, Tunnel} {
		if lift := effect(t, mustLookup(t, kind), "night lift", night, 37); lift <= 0 {
			t.Errorf("%s: %.2f C on an overcast night, want more than nothing", kind, lift)
		}
	}
}

// TestTwoFilms: a second film doubles the lift of the first: mean +4 C, frost
// protection 3 C, largest difference 12 C (Acta Horticulturae 187, paper 20).
// Checks the rule by which a cover lies within another.
func TestTwoFilms(t *testing.T) {
	one := mustLookup(t, LowTunnel)
	two := &Cover{kind: LowTunnel, own: one.own, outer: &one.own}
	for _, c := range []struct {
		quantity        string
		out             climate.Day
		ra              float64
		want, tolerance float64
	}{
		{"night lift", climate.Day{TMinC: -1, TMaxC: 10, RadiationMJ: 10, WindMS: 2}, 23, 3, 0.6},
		{"round the clock lift", climate.Day{TMinC: 2, TMaxC: 10, RadiationMJ: 9, WindMS: 2.5}, 23, 4, 0.8},
		{"maximum lift", climate.Day{TMinC: 3, TMaxC: 12, RadiationMJ: 21, WindMS: 0.5}, 30, 12, 2.5},
	} {
		got := effect(t, two, c.quantity, c.out, c.ra)
		t.Logf("two films, %s: %.2f against %v", c.quantity, got, c.want)
		if math.Abs(got-c.want) > c.tolerance {
			t.Errorf("two films, %s: %.2f, measured %v within %v", c.quantity, got, c.want, c.tolerance)
		}
	}
}

// TestStackedLight: film 0.88, frame 0.90 and fleece 0.87 pass 0.689 together:
// the product, without light thrown back and forth. The tunnel with fleece is
// the product of its layers.
func TestStackedLight(t *testing.T) {
	both := mustLookup(t, TunnelInner)
	want := mustLookup(t, Tunnel).LightShare() * both.own.lightShare
	in := both.Under(climate.Day{TMinC: 1, TMaxC: 5, RadiationMJ: 10}, 20)
	if math.Abs(in.RadiationMJ/10-want) > 1e-12 || math.Abs(both.LightShare()-want) > 1e-12 {
		t.Errorf("light through both: %v and %v, want %v", in.RadiationMJ/10, both.LightShare(), want)
	}
}
