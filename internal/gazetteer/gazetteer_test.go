package gazetteer_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/gazetteer"
	"garner/internal/sun"
)

// observed reads the monthly means worked out from daily series (sources in
// testdata/README.md), by station.
func observed(t *testing.T) map[string]climate.Normals {
	t.Helper()
	f, err := os.Open("testdata/observed.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]climate.Normals{}
	for _, r := range rows[1:] {
		var v [6]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(r[1+i], 64); err != nil {
				t.Fatal(err)
			}
		}
		n := out[r[0]]
		n[int(v[0])-1] = climate.MonthNormal{TMinC: v[1], TMaxC: v[2], RainMM: v[3], SunH: climate.Is(v[4]), RadiationMJ: climate.Is(v[5])}
		out[r[0]] = n
	}
	return out
}

// The stations' means agree with the stations' own daily series of other years
// within the figures of testdata/README.md.
func TestNormalsAgreeWithDailySeries(t *testing.T) {
	for station, id := range map[string]string{"de_bilt_nl": "wmo-06260", "valentia_ie": "wmo-03953"} {
		want := observed(t)[station]
		got, _, err := gazetteer.Normals(id, math.NaN())
		if err != nil {
			t.Fatal(err)
		}
		var low, high, rain, sunshine, light [2]float64
		for m := range got {
			for k, n := range []climate.MonthNormal{got[m], want[m]} {
				low[k] += n.TMinC / 12
				high[k] += n.TMaxC / 12
				rain[k] += n.RainMM
				sunshine[k] += n.SunH.Value
				light[k] += n.RadiationMJ.Value
			}
		}
		for what, gap := range map[string]float64{"minima": low[0] - low[1], "maxima": high[0] - high[1]} {
			if gap < 0 || gap > 0.55 {
				t.Errorf("%s: %s %.2f C above the series", station, what, gap)
			}
		}
		for what, r := range map[string][3]float64{"rain": {rain[0] / rain[1], 0.92, 1.08}, "sunshine": {sunshine[0] / sunshine[1], 1, 1.09}, "radiation": {light[0] / light[1], 0.94, 1.08}} {
			if r[0] < r[1]-0.005 || r[0] > r[2]+0.005 {
				t.Errorf("%s: %s %.3f times the series, beyond %.2f to %.2f", station, what, r[0], r[1], r[2])
			}
		}
	}
}

// Every station's normals are fit for the weather generator.
func TestEveryStationServes(t *testing.T) {
	all := gazetteer.Near(sun.Location{}, 5000)
	if len(all) != 2830 {
		t.Fatalf("%d places, want 2,830", len(all))
	}
	borrowed, dry := 0, 0
	for _, m := range all {
		n, a, err := gazetteer.Normals(m.ID, m.Location.ElevationM)
		if err != nil {
			t.Fatal(err)
		}
		if a.ShiftC != 0 {
			t.Errorf("%s: shifted by %g C at its own height", m.ID, a.ShiftC)
		}
		if a.RainFrom != nil {
			borrowed++
		}
		if a.NoRain {
			dry++
		}
		if math.Abs(m.Location.LatitudeDeg) <= 66 {
			if faults := n.CheckAt(m.Location); len(faults) > 0 {
				t.Errorf("%s %s: %v", m.ID, m.Name, faults)
			}
		}
	}
	if borrowed+dry != 50 || dry > 15 {
		t.Errorf("%d stations borrow their rain and %d have none, want 50 together", borrowed, dry)
	}
}

// Six tenths of a degree by the hundred metres, and no more than 400 m.
func TestHeightMovesTemperatureAndIsRefused(t *testing.T) {
	own, _, err := gazetteer.Normals("wmo-06610", math.NaN()) // Payerne, 491 m
	if err != nil {
		t.Fatal(err)
	}
	for higher, shift := range map[float64]float64{300: -1.8, -200: 1.2, 400: -2.4, -400: 2.4} {
		n, a, err := gazetteer.Normals("wmo-06610", 491+higher)
		if err != nil {
			t.Fatal(err)
		}
		for m := range n {
			if math.Abs(n[m].TMinC-own[m].TMinC-shift) > 0.051 || math.Abs(n[m].TMaxC-own[m].TMaxC-shift) > 0.051 || n[m].RainMM != own[m].RainMM {
				t.Fatalf("%g m higher: month %d is %+v, own %+v", higher, m+1, n[m], own[m])
			}
		}
		if a.ShiftC != shift || a.HigherM != higher || len(a.Notes()) != 1 {
			t.Errorf("%g m higher: %+v", higher, a)
		}
	}
	for _, higher := range []float64{401, -401, 2000} {
		_, _, err := gazetteer.Normals("wmo-06610", 491+higher)
		if fault.KindOf(err) != fault.OutOfRange {
			t.Errorf("%g m higher: %v", higher, err)
		}
	}
	if _, _, err := gazetteer.Normals("nowhere", 0); fault.KindOf(err) != fault.NotFound {
		t.Errorf("%v", err)
	}
}

// Stations south of the line have their winter in July.
func TestSouthernStations(t *testing.T) {
	for _, query := range []string{"Hobart, Australia", "Auckland", "Wellington, New Zealand", "Mount Gambier", "Cape Town", "Montevideo"} {
		found := gazetteer.Search(query, 1)
		if len(found) == 0 || found[0].Location.LatitudeDeg >= 0 {
			t.Errorf("%s: %+v", query, found)
			continue
		}
		n, _, err := gazetteer.Normals(found[0].ID, math.NaN())
		if err != nil || n[6].TMaxC >= n[0].TMaxC || n[6].RadiationMJ.Value >= n[0].RadiationMJ.Value {
			t.Errorf("%s: July %+v, January %+v, %v", query, n[6], n[0], err)
		}
	}
}

func TestSearch(t *testing.T) {
	for query, want := range map[string]string{
		"De Bilt":          "De Bilt, Netherlands",
		"de bilt":          "De Bilt, Netherlands",
		"DE BILT, Holland": "De Bilt, Netherlands",
		"valen, ireland":   "Valentia Observ., Ireland",
		"München":          "Muenchen-Stadt, Germany",
		"munich":           "Muenchen-Stadt, Germany",
		"Malmö":            "Arkona, Germany",
		"Zürich":           "Zuerich/Fluntern, Switzerland",
		"Göteborg":         "Goteborg, Sweden",
		"Kraków":           "Krakow-Balice, Poland",
		"London, UK":       "Heathrow, United Kingdom",
		"oxford":           "Oxford, United Kingdom",
		"oxford uk":        "Oxford, United Kingdom",
		"perth, australia": "Perth/WA, Australia",
		"perth australia":  "Perth/WA, Australia",
		"Des Moines":       "Des Moines Airport/IA, United States",
		"columbia, sc":     "West Columbia/SC, United States",
		"Copenhagen":       "Arkona, Germany",
		"New York":         "New York/J.F.K./NY, United States",
		"Oxfrod":           "Oxford, United Kingdom", // spelt wrongly
		"Vallentia":        "Valentia Observ., Ireland",
		"Heathrew":         "Heathrow, United Kingdom",
	} {
		found := gazetteer.Search(query, 3)
		if len(found) == 0 {
			t.Errorf("%q: nothing", query)
			continue
		}
		if got := found[0].Name + ", " + found[0].Country; got != want {
			t.Errorf("%q: %s, want %s (then %v)", query, got, want, found[1:])
		}
	}
	for _, m := range gazetteer.Search("Uruguay", 50) {
		if m.Country != "Uruguay" && !strings.Contains(m.Name, "Uruguay") {
			t.Errorf("Uruguay: %+v", m)
		}
	}
	for _, m := range gazetteer.Search("Oxfrod", 3) {
		if !m.Spelled {
			t.Errorf("not told to be a guess: %+v", m)
		}
	}
	for _, nonsense := range []string{"", "  ", ",", "zzzzqqqqxxx", strings.Repeat("long ", 1000), "\xff\xfe", "日本"} {
		if found := gazetteer.Search(nonsense, 5); len(found) > 0 {
			t.Errorf("%.20q: %+v", nonsense, found)
		}
	}
}

// Distances are those of Greenwich to Paris and of a degree along a meridian
// (IUGG mean radius: 111.195 km).
func TestDistance(t *testing.T) {
	if d := gazetteer.DistanceKm(sun.Location{LatitudeDeg: 40}, sun.Location{LatitudeDeg: 41}); math.Abs(d-111.195) > 0.01 {
		t.Errorf("a degree of latitude is %.3f km", d)
	}
	if d := gazetteer.DistanceKm(sun.Location{LongitudeDeg: 179.5}, sun.Location{LongitudeDeg: -179.5}); math.Abs(d-111.195) > 0.01 {
		t.Errorf("a degree across the date line is %.3f km", d)
	}
}

// A station by its own place is itself; a mountain station is not taken for the
// valley, as Paganella (2,125 m) would be for Trento's at 13 km.
func TestChooseMindsHeight(t *testing.T) {
	p, _ := gazetteer.Find("wmo-06260")
	if m, err := gazetteer.Choose(p.Location); err != nil || m.ID != "wmo-06260" {
		t.Errorf("%+v, %v", m, err)
	}
	valley := sun.Location{LatitudeDeg: 46.1, LongitudeDeg: 11.12, ElevationM: 310}
	if near := gazetteer.Near(valley, 1); near[0].Name != "Paganella" {
		t.Errorf("nearest is %+v", near[0])
	}
	m, err := gazetteer.Choose(valley)
	if err != nil || math.Abs(m.HigherM) > 400 || m.Name == "Paganella" {
		t.Errorf("%+v, %v", m, err)
	}
	for _, at := range []sun.Location{{LatitudeDeg: 30, LongitudeDeg: -40}, {LatitudeDeg: 89}, {LatitudeDeg: math.NaN()}, {LatitudeDeg: 45, LongitudeDeg: 7, ElevationM: 4900}} {
		if m, err := gazetteer.Choose(at); err == nil {
			t.Errorf("%+v: %+v", at, m)
		}
	}
}

func BenchmarkSearch(b *testing.B) {
	for b.Loop() {
		gazetteer.Search("perth, australia", 8)
	}
}

func BenchmarkSearchMisspelt(b *testing.B) {
	for b.Loop() {
		gazetteer.Search("Oxfrod", 8)
	}
}

func BenchmarkChoose(b *testing.B) {
	for b.Loop() {
		if _, err := gazetteer.Choose(sun.Location{LatitudeDeg: 52, LongitudeDeg: 5}); err != nil {
			b.Fatal(err)
		}
	}
}
