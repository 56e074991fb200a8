package soilcare_test

import (
	"math"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/soilcare"
	"garner/internal/words"
)

func book(t testing.TB) *crop.Book {
	t.Helper()
	b, err := loaded()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// loaded reads the book once for all tests.
var loaded = sync.OnceValues(crop.Load)

// ground is a bed of 10 m2 in January 2027.
func ground(t testing.TB) soilcare.Ground {
	return soilcare.Ground{Book: book(t), Bed: place.Bed{ID: "b", Kind: "bed", LengthM: 10, WidthM: 1, Texture: "sandy loam", PH: 6.1}, Today: cal.Of(2027, 1, 4)}
}

func look(t testing.TB, g soilcare.Ground) *soilcare.Care {
	t.Helper()
	care, err := soilcare.Look(g)
	if err != nil {
		t.Fatal(err)
	}
	return care
}

func planted(crop string, day cal.Date) plan.Planting {
	p := plan.New(crop, "p")
	p.Bed, p.Crop, p.Date, p.AreaM2 = "b", crop, day, 1
	return p
}

func given(what record.What, day cal.Date, value float64, unit string) record.Record {
	return record.Record{ID: string(what), What: what, Date: day, Bed: "b", Value: value, Unit: unit}
}

func says(care *soilcare.Care) string {
	var lines []string
	for _, d := range care.Due {
		lines = append(lines, words.English().Text(d.Phrase))
	}
	for _, c := range care.Cautions {
		lines = append(lines, words.English().Text(c))
	}
	return strings.Join(lines, "\n")
}

// 3 to 5 cm a year are 30 to 50 L/m2 (arithmetic; the depth is of C. Dowding).
func TestCompostIsThirtyToFiftyLitresASquareMetre(t *testing.T) {
	care := look(t, ground(t))
	if care.Compost.LowL != 300 || care.Compost.HighL != 500 {
		t.Errorf("10 m2: %+v", care.Compost)
	}
	if got := says(care); !strings.HasPrefix(got, "Compost is due: 3 to 5 cm, which is 300 L to 500 L or 3 to 6 barrows of 90 L.") {
		t.Errorf("%s", got)
	}
}

// What is given, in litres or barrows, and what is still due make up a year's
// dressing.
func TestCompostGivenAndDueMakeADressing(t *testing.T) {
	barrow, err := soilcare.Of("barrow")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(r *rapid.T) {
		g := ground(t)
		g.Bed.LengthM = rapid.Float64Range(1, 30).Draw(r, "length")
		barrows := rapid.IntRange(1, 20).Draw(r, "barrows")
		g.Records = []record.Record{given(record.Composted, g.Today-cal.Date(rapid.IntRange(0, 300).Draw(r, "ago")), float64(barrows), "barrows")}
		care := look(t, g)
		had := float64(barrows) * barrow.Value
		for _, d := range care.Due {
			if d.What == record.Composted && math.Abs(had+d.Litres-30*g.Bed.AreaM2()) > 1e-6 {
				r.Fatalf("%v m2: %v L given and %v L due", g.Bed.AreaM2(), had, d.Litres)
			}
		}
		if due := len(care.Due) > 0; due != (had < 30*g.Bed.AreaM2()) {
			r.Fatalf("%v m2, %v L given: due %v", g.Bed.AreaM2(), had, due)
		}
	})
}

func TestADressingLastsAYear(t *testing.T) {
	g := ground(t)
	g.Records = []record.Record{given(record.Composted, cal.Of(2026, 11, 1), 400, "L")}
	if care := look(t, g); len(care.Due) > 0 || care.Last[0].Date != cal.Of(2026, 11, 1) {
		t.Errorf("dressed in November: %+v", care)
	}
	g.Today = cal.Of(2027, 11, 15)
	if care := look(t, g); len(care.Due) != 1 {
		t.Errorf("a year on: %+v", care)
	}
}

// Lime before brassicas under pH 6.5, 250-750 g/m2 by soil (a British
// garden-centre directory), never just before potatoes (common practice).
func TestLimeBeforeBrassicasNotBeforePotatoes(t *testing.T) {
	lime := func(g soilcare.Ground) *soilcare.Due {
		care := look(t, g)
		for i := range care.Due {
			if care.Due[i].What == record.Limed {
				return &care.Due[i]
			}
		}
		return nil
	}
	g := ground(t)
	g.Plantings = []plan.Planting{planted("cabbage", cal.Of(2027, 6, 20))}
	if d := lime(g); d == nil || d.Kg != 2.5 || d.Until != cal.Of(2027, 2, 28) {
		t.Errorf("light soil: %+v", d)
	}
	g.Bed.Texture = "clay"
	if d := lime(g); d == nil || d.Kg != 7.5 {
		t.Errorf("heavy soil: %+v", d)
	}
	g.Bed.PH = 6.8
	if d := lime(g); d != nil {
		t.Errorf("pH 6.8: %+v", d)
	}
	g.Bed.PH = 6.1
	g.Plantings = append(g.Plantings, planted("potato", cal.Of(2027, 4, 10)))
	if d := lime(g); d != nil || !strings.Contains(says(look(t, g)), "Lime after them") {
		t.Errorf("before potatoes: %+v", d)
	}
	g.Plantings = g.Plantings[:1]
	g.Records = []record.Record{given(record.Limed, cal.Of(2025, 11, 1), 0, "")}
	if d := lime(g); d != nil {
		t.Errorf("limed last winter: %+v", d)
	}
	g.Records, g.Today = nil, cal.Of(2027, 5, 1)
	if d := lime(g); d != nil {
		t.Errorf("in May it is too late: %+v", d)
	}
	g.Plantings = append(g.Plantings, planted("kale", cal.Of(2028, 3, 20)))
	if d := lime(g); d == nil || d.Until != cal.Of(2028, 2, 19) {
		t.Errorf("for the kale of next spring it is not too late: %+v", d)
	}
}

// Raw manure: 120 days where the food touches the soil, else 90 (US National
// Organic Program, 7 CFR 205.203).
func TestDaysFromRawManureToHarvest(t *testing.T) {
	for crop, days := range map[string]int{"carrot": 120, "lettuce": 120, "winter-squash": 120, "sweetcorn": 90, "tomato": 90} {
		if got, err := soilcare.HarvestAfter(crop); err != nil || got != days {
			t.Errorf("%s: %d days, want %d (%v)", crop, got, days, err)
		}
	}
	g := ground(t)
	g.Records = []record.Record{given(record.Manured, cal.Of(2026, 12, 1), 5, "barrows")}
	if got := says(look(t, g)); !strings.Contains(got, "wait 120 days, until 31 March 2027") || !strings.Contains(got, "90 days, until 1 March 2027") {
		t.Errorf("%s", got)
	}
}

// Common practice, no source: roots fork in ground manured the same year.
func TestManureIsKeptOffRoots(t *testing.T) {
	g := ground(t)
	g.Records = []record.Record{given(record.Manured, cal.Of(2026, 12, 1), 5, "barrows"), given(record.Limed, cal.Of(2026, 12, 20), 2, "kg")}
	g.Plantings = []plan.Planting{planted("parsnip", cal.Of(2027, 4, 1)), planted("leek", cal.Of(2027, 6, 1))}
	got := says(look(t, g))
	if !strings.Contains(got, "parsnips fork") || strings.Contains(got, "leeks fork") {
		t.Errorf("%s", got)
	}
	if !strings.Contains(got, "Leave a month between them") {
		t.Errorf("lime beside manure: %s", got)
	}
	g.Plantings[0].Date = cal.Of(2028, 4, 1)
	if got := says(look(t, g)); strings.Contains(got, "fork") {
		t.Errorf("the year after: %s", got)
	}
}
