package risk

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Every cell of the published tables of severity values, in the middle of its band
// of temperature and for each of its hours; the edges where they are exact.
// Source: testdata/README.md.
func TestEveryCellOfTheSeverityTables(t *testing.T) {
	ids := map[string]string{"wallin": "wallin", "tomcast_pitblado": "tomcast", "tomcast_uw": "tomcast-wisconsin", "cercospora_div": "cercospora"}
	cells := 0
	for _, row := range rows(t, "tables.csv") {
		id, ok := ids[row["table"]]
		if !ok {
			continue
		}
		low, high := -10.0, 45.0
		if row["temperature_lo_C"] != "" {
			low = number(t, row["temperature_lo_C"])
		}
		if row["temperature_hi_C"] != "" {
			high = number(t, row["temperature_hi_C"])
		}
		if low == high { // the cold band of sugar beet tables has one edge
			low = -10
		}
		if strings.HasPrefix(row["temperature_band_C"], ">") {
			low, high = low+0.01, 45
		}
		at := []float64{(low + high) / 2}
		if id != "cercospora" && row["temperature_lo_C"] != "" && row["temperature_hi_C"] != "" {
			at = append(at, low, high)
		}
		rule := ruleNamed(t, id)
		for h := int(number(t, row["hours_lo"])); h <= int(number(t, row["hours_hi"])); h++ {
			for _, c := range at {
				cells++
				if got := rule.table.value(c, h); float64(got) != number(t, row["value"]) {
					t.Errorf("%s, %g C, %d h: %d, want %s", id, c, h, got, row["value"])
				}
			}
		}
	}
	if cells < 700 {
		t.Errorf("only %d cells were held", cells)
	}
}

// Every cell of the weekly schedule.
func TestEveryCellOfTheSchedule(t *testing.T) {
	cells := 0
	for _, row := range rows(t, "tables.csv") {
		if row["table"] != "blitecast_matrix" {
			continue
		}
		cells++
		rain := []int{0, 1, 2, 3, 4}
		if row["hours_lo"] == ">4" {
			rain = []int{5, 6, 7}
		}
		severity := []int{0, 1, 2}
		switch s := row["hours_hi"]; {
		case s == ">6":
			severity = []int{7, 12, 28}
		case s != "<3":
			severity = []int{int(number(t, s))}
		}
		for _, r := range rain {
			for _, s := range severity {
				if got := messageOf(ruleNamed(t, "blitecast").cells, r, s); float64(got) != number(t, row["value"]) {
					t.Errorf("%d days, %d values: %d, want %s", r, s, got, row["value"])
				}
			}
		}
	}
	if cells != 12 {
		t.Errorf("%d cells were held, want 12", cells)
	}
}

// The warmth of a day by every method.
// Source: testdata/degree_day_examples.csv.
func TestDegreeDayExamples(t *testing.T) {
	byName := map[string]Method{"simple": Average, "modified average (limits applied to Tmax and Tmin)": Modified,
		"single sine, no upper": Sine, "single sine, horizontal cutoff": Sine, "single triangle, no upper": Triangle}
	done := 0
	for _, row := range rows(t, "degree_day_examples.csv") {
		m, ok := byName[row["method"]]
		if !ok {
			t.Fatalf("no method %q", row["method"])
		}
		upper := math.Inf(1)
		if row["upper_C"] != "" && !strings.Contains(row["method"], "no upper") {
			upper = number(t, row["upper_C"])
		}
		got := m.DegreeDays(number(t, row["Tmin_C"]), number(t, row["Tmax_C"]), number(t, row["base_C"]), upper)
		if math.Abs(got-number(t, row["expected_dd_C"])) > number(t, row["tolerance"]) {
			t.Errorf("%s %s: %g, want %s", row["example_id"], row["method"], got, row["expected_dd_C"])
		}
		done++
	}
	if done < 120 {
		t.Errorf("only %d examples", done)
	}
}

// The table of BOTCAST is laid out from inequalities; here they are again, over a
// fine grid.
// Source: University of Wisconsin vegetable disease models, read.
func TestBotcastTableIsItsInequalities(t *testing.T) {
	rule := ruleNamed(t, "botcast")
	for tenth := 0; tenth <= 350; tenth++ {
		c := float64(tenth) / 10
		for h := range 25 {
			hours, want := float64(h), 1
			switch {
			case h <= 6, c < 6, c > 28, h <= 12 && c < 9:
				want = 0
			case c <= 8:
				if h > 22 {
					want = 2
				}
			case h <= 15 && c >= 27, h <= 7 && c >= 24:
				want = 0
			case h >= 15 && c <= 25, h >= 14 && c >= 11 && c <= 16.5, h >= 11 && c >= 13.5 && c <= 16.5:
				want = 2
			case hours-12 <= 9-c:
				want = 0
			}
			if got := rule.table.value(c, h); got != want {
				t.Errorf("%s C, %d h: %d, want %d", strconv.FormatFloat(c, 'f', 1, 64), h, got, want)
			}
		}
	}
}
