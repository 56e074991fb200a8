package rotation_test

import (
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/rotation"
	"garner/internal/sun"
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

// ground is a garden of one bed, south of the equator or north of it.
func ground(t testing.TB, south bool) rotation.Ground {
	lat := 52.0
	if south {
		lat = -38
	}
	return rotation.Ground{Book: book(t), Sites: []place.Site{{ID: "home", Location: sun.Location{LatitudeDeg: lat}}},
		Beds: []place.Bed{{ID: "b", Site: "home"}, {ID: "other", Site: "home"}}}
}

func planted(id, bed, crop string, from, to cal.Date) plan.Planting {
	p := plan.New(id, "p")
	p.Bed, p.Crop, p.Method, p.Date, p.ClearBy, p.AreaM2 = bed, crop, plan.Plant, from, to, 1
	return p
}

func check(t testing.TB, g rotation.Ground, bed, crop string, day cal.Date) *rotation.Clash {
	t.Helper()
	h, err := rotation.NewHistory(g)
	if err != nil {
		t.Fatal(err)
	}
	return h.Check(bed, rotation.Candidate{Crop: crop, Date: day})
}

func says(c *rotation.Clash) string {
	if c == nil {
		return ""
	}
	return words.English().Text(c.Phrase)
}

// The sentence, with blackleg's three to four years (University of Connecticut
// IPM, rotation periods).
func TestKinIsToldWithItsReason(t *testing.T) {
	g := ground(t, false)
	g.Plantings = []plan.Planting{planted("c", "b", "cabbage", cal.Of(2026, 6, 27), cal.Of(2027, 2, 20))}
	got := says(check(t, g, "b", "kale", cal.Of(2027, 6, 20)))
	want := "Cabbages stood here in 2026. Blackleg asks for four years between crops of the cabbage family: next from 2030."
	if got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if c := check(t, g, "b", "kale", cal.Of(2030, 5, 1)); c != nil {
		t.Errorf("four years on: %s", says(c))
	}
	if c := check(t, g, "other", "kale", cal.Of(2027, 6, 20)); c != nil {
		t.Errorf("another bed: %s", says(c))
	}
	if c := check(t, g, "b", "leek", cal.Of(2027, 6, 20)); c != nil {
		t.Errorf("another family: %s", says(c))
	}
}

// Years between crops as the University of Connecticut IPM gives them.
func TestYearsOfThePublishedTable(t *testing.T) {
	for _, w := range []struct {
		prior, next string
		years       int
		problem     string
	}{
		{"beetroot", "beetroot", 3, "cercospora-leaf-spot"},
		{"kale", "cabbage", 4, "blackleg"},
		{"sweetcorn", "sweetcorn", 3, "yellow-leaf-blight"},
		{"cucumber", "cucumber", 2, "cucurbit-scab"},
		{"melon", "melon", 2, "cucurbit-leaf-spot"},
		{"potato", "aubergine", 4, "verticillium-wilt"},
		{"strawberry", "aubergine", 4, "verticillium-wilt"}, // another family
		{"lettuce", "lettuce", 3, "lettuce-drop"},
		{"asparagus", "asparagus", 99, "asparagus-fusarium"},
	} {
		g := ground(t, false)
		g.Plantings = []plan.Planting{planted("p", "b", w.prior, cal.Of(2026, 5, 20), cal.Of(2026, 9, 1))}
		c := check(t, g, "b", w.next, cal.Of(2027, 5, 20))
		if c == nil || c.Years != w.years || c.Problem != w.problem {
			t.Errorf("%s after %s: %+v, want %d years for %s", w.next, w.prior, c, w.years, w.problem)
		}
	}
}

// Years after a disease was recorded: clubroot seven (University of Connecticut
// IPM), white rot over twenty (UC IPM), Verticillium four and five.
func TestYearsAfterARecordedDisease(t *testing.T) {
	for _, w := range []struct {
		problem, next string
		years         int
	}{
		{"clubroot", "radish", 7}, {"Clubroot", "white-mustard", 7}, {"white rot", "leek", 20}, {"white-rot", "spring-onion", 20},
		{"verticillium-wilt", "tomato", 5}, {"potato-cyst-nematode", "tomato", 6}, {"asparagus-fusarium", "asparagus", 99},
	} {
		g := ground(t, false)
		g.Records = []record.Record{{ID: "r", Date: cal.Of(2025, 9, 1), What: record.Disease, Bed: "b", Problem: w.problem}}
		c := check(t, g, "b", w.next, cal.Of(2026, 5, 1))
		if c == nil || !c.Seen || c.Years != w.years {
			t.Errorf("%s after %s: %+v, want %d years", w.next, w.problem, c, w.years)
		}
		if c := check(t, g, "b", "lambs-lettuce", cal.Of(2026, 5, 1)); c != nil {
			t.Errorf("lamb's lettuce is no host of %s: %s", w.problem, says(c))
		}
	}
}

func TestASilentBedTellsOfDiseaseAlone(t *testing.T) {
	g := ground(t, false)
	g.Beds[0].Rotation = rotation.Silent
	g.Plantings = []plan.Planting{planted("t", "b", "tomato", cal.Of(2026, 5, 6), cal.Of(2026, 10, 6))}
	day := cal.Of(2027, 5, 6)
	if c := check(t, g, "b", "tomato", day); c != nil {
		t.Errorf("the bed is silent: %s", says(c))
	}
	g.Records = []record.Record{{ID: "r", Date: cal.Of(2026, 9, 1), What: record.Disease, Planting: "t", Problem: "verticillium-wilt"}}
	c := check(t, g, "b", "tomato", day)
	if c == nil || !c.Gentle || !strings.Contains(says(c), "Keep an eye on the tomatoes") {
		t.Errorf("the disease is not told: %+v", c)
	}
}

func TestAMovedPlantingCountsInBothBeds(t *testing.T) {
	moved := planted("l2", "other", "leek", cal.Of(2026, 9, 1), cal.Of(2027, 3, 1))
	moved.Relation, moved.To = plan.Moved, "l1"
	asPlanned := ground(t, false)
	asPlanned.Plantings = []plan.Planting{planted("l1", "b", "leek", cal.Of(2026, 6, 1), cal.Of(2027, 3, 1)), moved}
	asRecorded := ground(t, false)
	asRecorded.Plantings = asPlanned.Plantings[:1]
	asRecorded.Records = []record.Record{{ID: "r", Date: cal.Of(2026, 9, 1), What: record.Moved, Planting: "l1", Bed: "other"}}
	for name, g := range map[string]rotation.Ground{"planned": asPlanned, "recorded": asRecorded} {
		for _, bed := range []string{"b", "other"} {
			if c := check(t, g, bed, "garlic", cal.Of(2027, 10, 1)); c == nil || c.Last != 2026 {
				t.Errorf("%s, bed %s: %+v", name, bed, c)
			}
		}
	}
}

func TestCropsOfOneYearAreOneCourse(t *testing.T) {
	g := ground(t, false)
	g.Plantings = []plan.Planting{planted("r", "b", "radish", cal.Of(2027, 4, 1), cal.Of(2027, 5, 10))}
	if c := check(t, g, "b", "kale", cal.Of(2027, 6, 20)); c != nil {
		t.Errorf("radish and kale of one year: %s", says(c))
	}
	g.Records = []record.Record{{ID: "d", Date: cal.Of(2027, 5, 9), What: record.Disease, Bed: "b", Problem: "clubroot"}}
	if c := check(t, g, "b", "kale", cal.Of(2027, 6, 20)); c == nil || c.Years != 7 {
		t.Errorf("clubroot seen in May: %+v", c)
	}
}

func TestGrowingYearsOfTheSouth(t *testing.T) {
	g := ground(t, true)
	g.Plantings = []plan.Planting{planted("c", "b", "cabbage", cal.Of(2026, 11, 1), cal.Of(2027, 2, 20))}
	if c := check(t, g, "b", "kale", cal.Of(2027, 3, 20)); c != nil {
		t.Errorf("the same summer: %s", says(c))
	}
	c := check(t, g, "b", "kale", cal.Of(2027, 10, 1))
	if c == nil || !strings.HasPrefix(says(c), "Cabbages stood here in 2026/27") || c.Next != cal.Of(2030, 7, 2) {
		t.Errorf("%+v %s", c, says(c))
	}
}

// A longer gap never clashes more, and what clashes is before its own next day.
func TestALongerGapNeverClashesMore(t *testing.T) {
	b := book(t)
	var ids []string
	for _, c := range b.Crops() {
		ids = append(ids, c.ID)
	}
	problems := rotation.Problems()
	rapid.Check(t, func(r *rapid.T) {
		g := ground(t, rapid.Bool().Draw(r, "south"))
		g.Book = b
		from := cal.Of(2024, 1, 1) + cal.Date(rapid.IntRange(0, 700).Draw(r, "from"))
		for i := range rapid.IntRange(1, 4).Draw(r, "plantings") {
			to := from + cal.Date(rapid.IntRange(1, 400).Draw(r, "days"))
			g.Plantings = append(g.Plantings, planted(string(rune('a'+i)), "b", rapid.SampledFrom(ids).Draw(r, "crop"), from, to))
		}
		if rapid.Bool().Draw(r, "disease") {
			g.Records = []record.Record{{ID: "r", Date: from, What: record.Disease, Bed: "b", Problem: rapid.SampledFrom(problems).Draw(r, "problem").ID}}
		}
		h, err := rotation.NewHistory(g)
		if err != nil {
			r.Fatal(err)
		}
		next := rotation.Candidate{Crop: rapid.SampledFrom(ids).Draw(r, "next"), Date: from + 800} // past the growing year of what stood: one course does not clash
		early := h.Check("b", next)
		if early != nil && early.Next.IsSet() && early.Next <= next.Date {
			r.Fatalf("clashes on %s, but next from %s", next.Date, early.Next)
		}
		next.Date += cal.Date(rapid.IntRange(1, 4000).Draw(r, "later"))
		late := h.Check("b", next)
		switch {
		case late == nil:
		case early == nil:
			r.Fatalf("no clash at first, but later: %+v", late)
		case late.Years < 99 && late.Early >= early.Early:
			r.Fatalf("waits longer later on: %+v, then %+v", early, late)
		}
	})
}
