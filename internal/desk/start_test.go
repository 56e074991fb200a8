package desk

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"garner/internal/appetite"
	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/gazetteer"
	"garner/internal/holding"
	"garner/internal/sun"
)

// newcomer is what a household tells in its first five minutes.
func newcomer() Start {
	return Start{HouseholdName: "Plover Yard", Zone: "Europe/London", Adults: 2, Children: 2, Place: "ukmo-oxford", Today: cal.Of(2027, 1, 4),
		Beds:     "11 beds 6 x 1.2, tunnel 6 x 4",
		Ticks:    map[string]appetite.Tick{"leek": appetite.Often, "carrot": appetite.Often, "potato": appetite.Often, "onion": appetite.Often, "tomato": appetite.Often, "spinach": appetite.Sometimes},
		Notebook: "leeks bed 1, 42 left\ncarrots early July, half bed 5\nearly potatoes bed 2 April\nonion sets bed 3 half 25 March\ntomatoes 6 plants tunnel mid May\na row of spinach in the tunnel, early March\ngarlic 40 cloves October bed 4\nsomething nobody can read"}
}

func southerner() Start {
	s := newcomer()
	s.HouseholdName, s.Zone, s.Place = "", "Australia/Hobart", gazetteer.Search("Hobart", 1)[0].ID
	s.Notebook = "tomatoes 6 plants tunnel November\ncarrots early January half bed 5\nleeks bed 1, 40 left\ngarlic 60 cloves April bed 2\npotatoes bed 3 half September"
	return s
}

// plan makes a holding that must have no fault.
func planned(t testing.TB, s Start) *holding.Holding {
	t.Helper()
	h, _, faults := Plan(s)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	h.Today = s.Today
	return h
}

// From nothing to a computed table, on either side of the line.
func TestStartGivesATable(t *testing.T) {
	for _, s := range []Start{newcomer(), southerner()} {
		h := planned(t, s)
		table, err := Table(h, OutlookOptions{Years: 5, Weeks: 78, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		fresh, stored := 0.0, 0.0
		for i := range table.Vegetables {
			for _, y := range table.Vegetables[i].Years {
				for d := range y.Fresh {
					fresh, stored = fresh+float64(y.Fresh[d]), stored+float64(y.Stored[d])
				}
			}
		}
		if fresh/5 < 25 || stored <= 0 {
			t.Errorf("%s: %.0f kg eaten fresh and %.1f kg from store in a year and a half", h.Name, fresh/5, stored/5)
		}
		if len(table.Plantings) < 5 {
			t.Errorf("%s: %d plantings in the table", h.Name, len(table.Plantings))
		}
	}
}

// What was made can be written, read and checked like any holding, without a
// fault, and says where its weather comes from.
func TestStartGivesASoundHolding(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []Start{newcomer(), southerner()} {
		files, err := exchange.Write(planned(t, s))
		if err != nil {
			t.Fatal(err)
		}
		folder := fstest.MapFS{}
		for name, content := range files {
			folder[name] = &fstest.MapFile{Data: content}
		}
		read, report := exchange.CheckFolder(folder, b)
		if !report.OK() || len(report.Warnings) > 0 {
			t.Fatalf("%v, %v", report.Faults, report.Warnings)
		}
		again, err := exchange.Write(read)
		if err != nil {
			t.Fatal(err)
		}
		for name := range files {
			if !bytes.Equal(files[name], again[name]) {
				t.Errorf("%s is written otherwise the second time", name)
			}
		}
		if source := read.Weather[0].Source; !strings.Contains(source, "Data basis: Deutscher Wetterdienst") && !strings.Contains(source, "Open Government Licence") {
			t.Errorf("no credit in %q", source)
		}
	}
}

// Every line of the notebook is told of; what was not understood is left out.
func TestStartTellsHowLinesWereRead(t *testing.T) {
	h, lines, faults := Plan(newcomer())
	if len(faults) > 0 || len(lines) != 8 || len(h.Plantings) != 7 || lines[7].Planting != nil || len(lines[7].Questions) == 0 {
		t.Errorf("%v: %d lines, %d plantings", faults, len(lines), len(h.Plantings))
	}
	if h.Eaters != 3 || len(h.Wants) != 6 || h.Plan != "main" || h.Today.IsSet() {
		t.Errorf("%+v", h)
	}
}

// A garden of its own height takes the station that suits it, and its
// temperatures move.
func TestStartByLocation(t *testing.T) {
	s := newcomer()
	s.Place, s.Location = "", &sun.Location{LatitudeDeg: 51.8, LongitudeDeg: -1.3, ElevationM: 260}
	h := planned(t, s)
	own, _, err := gazetteer.Normals(h.Sites[0].Weather, math.NaN())
	if err != nil {
		t.Fatal(err)
	}
	station, _ := gazetteer.Find(h.Sites[0].Weather)
	want := -0.006 * (260 - station.Location.ElevationM)
	if shift := h.Weather[0].Normals[6].TMaxC - own[6].TMaxC; math.Abs(shift-want) > 0.1 {
		t.Errorf("July is %.2f C from the station's, want %.2f", shift, want)
	}
	if !strings.Contains(h.Weather[0].Source, "lower") {
		t.Errorf("the source does not tell: %s", h.Weather[0].Source)
	}
}

// All that is wrong is told at once, and there is no holding.
func TestStartTellsAllThatIsWrong(t *testing.T) {
	for key, spoil := range map[string]func(*Start){
		"desk.zone":                 func(s *Start) { s.Zone = "Middle/Earth" },
		"desk.start_nobody":         func(s *Start) { s.Adults, s.Children = 0, 0 },
		"desk.start_no_place":       func(s *Start) { s.Place = "" },
		"gazetteer.unknown":         func(s *Start) { s.Place = "nowhere" },
		"gazetteer.none_near":       func(s *Start) { s.Place, s.Location = "", &sun.Location{LatitudeDeg: 30, LongitudeDeg: -40} },
		"desk.start_no_beds":        func(s *Start) { s.Beds = " " },
		"notebook.bed_size":         func(s *Start) { s.Beds = "11 beds" },
		"sun.latitude_out_of_range": func(s *Start) { s.Location = &sun.Location{LatitudeDeg: 80} },
		"gazetteer.too_far_apart":   func(s *Start) { s.Location = &sun.Location{LatitudeDeg: 51.8, LongitudeDeg: -1.2, ElevationM: 900} },
	} {
		s := newcomer()
		spoil(&s)
		h, lines, faults := Plan(s)
		if h != nil || len(faults) != 1 || faults[0].Phrase.Key != key || len(lines) != 8 {
			t.Errorf("%s: holding %v, %v, %d lines", key, h != nil, faults, len(lines))
		}
	}
	if _, _, faults := Plan(Start{}); len(faults) != 4 {
		t.Errorf("nothing told gives %v", faults)
	}
}

// BenchmarkStart times the making of a holding from what a newcomer tells.
func BenchmarkStart(b *testing.B) {
	s := newcomer()
	for b.Loop() {
		planned(b, s)
	}
}

// BenchmarkStartAndTable times it with a table of 78 weeks and 20 years of
// weather from cold.
func BenchmarkStartAndTable(b *testing.B) {
	for i := 0; b.Loop(); i++ {
		if _, err := Table(planned(b, newcomer()), OutlookOptions{Years: 20, Seed: uint64(i + 10)}); err != nil {
			b.Fatal(err)
		}
	}
}
