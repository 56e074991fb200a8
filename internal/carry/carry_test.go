package carry_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/carry"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/rotation"
	"garner/internal/sun"
)

var book = sync.OnceValue(func() *crop.Book {
	b, err := crop.Load()
	if err != nil {
		panic(err)
	}
	return b
})

// garden is n beds of 6 m2, south of the equator or north of it.
func garden(n int, south bool, today cal.Date) carry.Setting {
	lat := 52.0
	if south {
		lat = -38
	}
	s := carry.Setting{Book: book(), Sites: []place.Site{{ID: "home", Location: sun.Location{LatitudeDeg: lat}}}, Today: today, Draft: "next"}
	for i := range n {
		s.Beds = append(s.Beds, place.Bed{ID: fmt.Sprintf("b%d", i+1), Site: "home", Kind: "bed", LengthM: 5, WidthM: 1.2, Light: 1})
	}
	return s
}

func planted(id, bed, crop string, from, to cal.Date, areaM2 float64) plan.Planting {
	p := plan.New(id, "p")
	p.Bed, p.Crop, p.Method, p.Date, p.ClearBy, p.AreaM2 = bed, crop, plan.Plant, from, to, areaM2
	return p
}

func of(t rapid.TB, s carry.Setting) *carry.Result {
	t.Helper()
	r, err := carry.Of(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func only(t *testing.T, r *carry.Result) carry.Carried {
	t.Helper()
	if len(r.Sowings) != 1 {
		t.Fatalf("%d sowings: %+v", len(r.Sowings), r.Sowings)
	}
	return r.Sowings[0]
}

// Sowings at both ends of one growing year are near each other once the first is a
// year on; the last of this year is not the first of the next.
func TestTheLastOfThisYearIsNotTheFirstOfTheNext(t *testing.T) {
	s := garden(2, true, cal.Of(2027, 1, 4))
	s.Plantings = []plan.Planting{
		planted("let-26a", "b1", "lettuce", cal.Of(2026, 7, 3), cal.Of(2026, 9, 20), 1),
		planted("let-27z", "b2", "lettuce", cal.Of(2027, 6, 27), cal.Of(2027, 9, 10), 1)}
	if r := of(t, s); len(r.Sowings) != 2 || len(r.Planned) != 0 {
		t.Errorf("carried %+v, planned already %v", r.Sowings, r.Planned)
	}
}

func TestAnEmptyHoldingCarriesNothing(t *testing.T) {
	for _, s := range []carry.Setting{garden(0, false, cal.Of(2027, 5, 1)), garden(3, false, cal.Of(2027, 5, 1)), {Book: book(), Today: cal.Of(2027, 5, 1)}} {
		if r := of(t, s); len(r.Sowings)+len(r.Covers)+len(r.Troubles) > 0 {
			t.Errorf("%+v", r)
		}
	}
}

// The same weekday of the same ISO 8601 week: 2026 has 53 weeks, so its days move by
// 53 weeks and those of other years by 52.
func TestDaysMoveToTheSameWeek(t *testing.T) {
	for _, w := range []struct{ day, want cal.Date }{
		{cal.Of(2027, 4, 12), cal.Of(2028, 4, 10)},
		{cal.Of(2028, 2, 29), cal.Of(2029, 2, 27)},
		{cal.Of(2028, 3, 1), cal.Of(2029, 2, 28)},
		{cal.Of(2026, 5, 20), cal.Of(2027, 5, 26)},
		{cal.Of(2032, 5, 18), cal.Of(2033, 5, 24)},
	} {
		s := garden(1, false, w.day)
		s.Plantings = []plan.Planting{planted("let", "b1", "lettuce", w.day, w.day+60, 1)}
		got := only(t, of(t, s))
		if got.Date != w.want || got.Date.Weekday() != w.day.Weekday() || got.ClearBy != w.want+60 {
			t.Errorf("%s goes to %s until %s, want %s", w.day, got.Date, got.ClearBy, w.want)
		}
	}
}

// Over 28 years of carrying on, a sowing stays within a week of its day of the year
// and keeps its weekday: the first Monday of ISO 8601 years lies between 29 December
// and 4 January, six days apart, and a leap day adds one.
func TestDaysDoNotDriftOverTheYears(t *testing.T) {
	first := cal.Of(2027, 4, 14)
	day := first
	for year := 2028; year < 2055; year++ {
		s := garden(1, false, day)
		s.Plantings = []plan.Planting{planted("let", "b1", "lettuce", day, day+60, 1)}
		day = only(t, of(t, s)).Date
		if off := int(day - cal.Of(year, 4, 14)); off < -7 || off > 7 || day.Weekday() != first.Weekday() {
			t.Fatalf("in %d it is sown on %s", year, day)
		}
	}
}

func TestTheGrowersOwnShiftIsKept(t *testing.T) {
	s := garden(2, false, cal.Of(2027, 11, 1))
	s.Plantings = []plan.Planting{planted("let-27", "b1", "lettuce", cal.Of(2027, 4, 12), cal.Of(2027, 6, 30), 1)}
	s.Records = []record.Record{{ID: "r", Date: cal.Of(2027, 4, 21), What: record.Planted, Planting: "let-27"}}
	got := only(t, of(t, s))
	if got.Date != cal.Of(2028, 4, 19) || got.LaterD != 9 || got.ClearBy != cal.Of(2028, 6, 28) || got.ID != "let-28" {
		t.Errorf("%+v", got)
	}
}

// In the south a year runs from July: summer crops of 2026/27 go to 2027/28.
func TestASouthernYear(t *testing.T) {
	s := garden(4, true, cal.Of(2027, 2, 1))
	s.Plantings = []plan.Planting{
		planted("tom-26", "b1", "tomato", cal.Of(2026, 11, 2), cal.Of(2027, 4, 18), 3),
		planted("lee-27", "b2", "leek", cal.Of(2027, 1, 8), cal.Of(2027, 8, 31), 3),
		planted("pea-27", "b3", "pea", cal.Of(2027, 8, 22), cal.Of(2027, 12, 14), 3),
		planted("old-26", "b4", "pea", cal.Of(2026, 6, 20), cal.Of(2026, 12, 14), 3),
	}
	r := of(t, s)
	if r.Named != "2026/27" || r.Next != "2027/28" || len(r.Sowings) != 2 {
		t.Fatalf("%s to %s: %+v", r.Named, r.Next, r.Sowings)
	}
	if tom, lee := r.Sowings[0], r.Sowings[1]; tom.Date != cal.Of(2027, 11, 8) || tom.ID != "tom-27" || lee.Date != cal.Of(2028, 1, 14) {
		t.Errorf("%+v", r.Sowings)
	}
}

func TestPerennialsAndSilentBedsStay(t *testing.T) {
	s := garden(3, false, cal.Of(2027, 5, 1))
	s.Beds[1].Rotation = rotation.Silent
	s.Plantings = []plan.Planting{
		planted("rhu-27", "b1", "rhubarb", cal.Of(2027, 3, 18), cal.None, 3),
		planted("tom-27", "b2", "tomato", cal.Of(2027, 5, 4), cal.Of(2027, 10, 10), 5),
	}
	r := of(t, s)
	if got := only(t, r); got.From != "tom-27" || got.Bed != "b2" || len(r.Troubles) != 0 {
		t.Errorf("%+v, %+v", got, r.Troubles)
	}
}

// Four beds of four families all move, and none comes back too soon; what stood
// together stays together.
func TestFamiliesRotate(t *testing.T) {
	s := garden(4, false, cal.Of(2027, 5, 1))
	for i, c := range []string{"potato", "cabbage", "carrot", "pea"} {
		s.Plantings = append(s.Plantings, planted(c+"-27", fmt.Sprintf("b%d", i+1), c, cal.Of(2027, 4, 5), cal.Of(2027, 9, 1), 6))
	}
	under := planted("spi-27", "b2", "spinach", cal.Of(2027, 4, 6), cal.Of(2027, 6, 1), 1)
	under.Relation, under.To = plan.Between, "cabbage-27"
	s.Plantings = append(s.Plantings, under)
	r := of(t, s)
	if len(r.Troubles) > 0 {
		t.Errorf("%+v", r.Troubles)
	}
	beds := map[string]string{}
	for _, p := range r.Sowings {
		beds[p.ID] = p.Bed
		if p.Bed == p.FromBed {
			t.Errorf("%s stays in %s", p.ID, p.Bed)
		}
	}
	if beds["spi-28"] != beds["cabbage-28"] || r.Sowings[4].To != "cabbage-28" {
		t.Errorf("%v: %+v", beds, r.Sowings[4])
	}
}

func TestAClashWithoutAWayOutIsTold(t *testing.T) {
	s := garden(2, false, cal.Of(2027, 5, 1))
	for _, bed := range []string{"b1", "b2"} {
		s.Plantings = append(s.Plantings, planted("cab-"+bed, bed, "cabbage", cal.Of(2027, 5, 20), cal.Of(2027, 9, 1), 6))
	}
	r := of(t, s)
	if len(r.Troubles) != 2 || r.Troubles[0].Kind != carry.TooSoon || r.Troubles[0].Clash.Years != 4 || len(r.Troubles[0].Others) != 0 {
		t.Errorf("%+v", r.Troubles)
	}
	s.Beds = append(s.Beds, place.Bed{ID: "pot", Site: "home", Kind: "container", LengthM: 6, WidthM: 1, Light: 1})
	r = of(t, s)
	if len(r.Troubles) != 2 || !slices.Equal(r.Troubles[0].Others, []string{"pot"}) {
		t.Errorf("the other bed is not named: %+v", r.Troubles)
	}
	s.Into = map[string]string{"cab-b1": "pot"}
	s.Leave = map[string]bool{"cab-b2": true}
	if r = of(t, s); len(r.Troubles) != 0 || only(t, r).Bed != "pot" || !slices.Equal(r.Left, []string{"cab-b2"}) {
		t.Errorf("%+v", r)
	}
}

func TestLossesAreToldAndCarried(t *testing.T) {
	s := garden(2, false, cal.Of(2027, 11, 1))
	s.Plantings = []plan.Planting{planted("a-27", "b1", "lettuce", cal.Of(2027, 4, 12), cal.Of(2027, 6, 30), 1),
		planted("b-27", "b2", "pea", cal.Of(2027, 4, 12), cal.Of(2027, 6, 30), 1)}
	s.Records = []record.Record{{ID: "1", Date: cal.Of(2027, 5, 1), What: record.Died, Planting: "a-27"},
		{ID: "2", Date: cal.Of(2027, 5, 1), What: record.Failing, Planting: "b-27", Value: 0.4, Unit: record.ShareUnit}}
	r := of(t, s)
	if len(r.Sowings) != 2 || len(r.Troubles) != 2 || r.Troubles[0].Kind != carry.Lost || r.Troubles[1].Kind != carry.Failed || math.Abs(r.Troubles[1].Share-0.4) > 1e-9 {
		t.Errorf("%+v", r.Troubles)
	}
}

func TestWhatIsPlannedAlreadyIsNotPlannedTwice(t *testing.T) {
	s := garden(2, false, cal.Of(2027, 5, 1))
	s.Plantings = []plan.Planting{planted("pea-27", "b1", "pea", cal.Of(2027, 4, 12), cal.Of(2027, 7, 30), 1),
		planted("pea-27b", "b1", "pea", cal.Of(2027, 4, 26), cal.Of(2027, 8, 10), 1),
		planted("pea-28", "b2", "pea", cal.Of(2028, 4, 14), cal.Of(2028, 7, 30), 1)}
	r := of(t, s)
	if got := only(t, r); got.From != "pea-27b" || !slices.Equal(r.Planned, []string{"pea-27"}) {
		t.Errorf("%+v", r)
	}
}

// A cover for a time goes where its bed's sowings go, a standing one stays.
func TestCoversGoWithTheirBeds(t *testing.T) {
	s := garden(2, false, cal.Of(2027, 5, 1))
	s.Plantings = []plan.Planting{planted("cab-27", "b1", "cabbage", cal.Of(2027, 5, 20), cal.Of(2027, 9, 1), 6)}
	s.Covers = []place.CoverSpell{{ID: "b1-mesh", Bed: "b1", Spell: cover.Spell{Kind: cover.Mesh, On: cal.Of(2027, 5, 21), Off: cal.Of(2027, 8, 20)}}}
	r := of(t, s)
	if got := only(t, r); got.Bed != "b2" {
		t.Fatalf("%+v", got)
	}
	if len(r.Covers) != 1 || r.Covers[0].Bed != "b2" || r.Covers[0].On != cal.Of(2028, 5, 19) || r.Covers[0].ID == "b1-mesh" {
		t.Errorf("%+v", r.Covers)
	}
}

// Sowings go to beds alike only: with as much light and under the same standing cover.
func TestSowingsKeepToBedsAlike(t *testing.T) {
	for name, spoil := range map[string]func(*carry.Setting){
		"alike": func(*carry.Setting) {},
		"dark":  func(s *carry.Setting) { s.Beds[1].Light = 0.8 },
		"kind":  func(s *carry.Setting) { s.Beds[1].Kind = "border" },
		"covered": func(s *carry.Setting) {
			s.Covers = []place.CoverSpell{{ID: "c", Bed: "b2", Spell: cover.Spell{Kind: cover.Mesh, On: cal.Of(2027, 1, 1), Off: cal.None}}}
		},
	} {
		s := garden(2, false, cal.Of(2027, 5, 1))
		s.Plantings = []plan.Planting{planted("cab-27", "b1", "cabbage", cal.Of(2027, 5, 20), cal.Of(2027, 9, 1), 6)}
		spoil(&s)
		if got, want := only(t, of(t, s)).Bed, map[bool]string{true: "b2", false: "b1"}[name == "alike"]; got != want {
			t.Errorf("%s: it goes to %s, want %s", name, got, want)
		}
	}
}

// Ground that was cleared before its day is free, and what was planted after the day by
// which it was to be cleared stands as long as meant.
func TestRecordedDaysCount(t *testing.T) {
	s := garden(1, false, cal.Of(2027, 6, 1))
	s.Plantings = []plan.Planting{
		planted("old", "b1", "leek", cal.Of(2026, 9, 1), cal.Of(2028, 8, 1), 6),
		planted("let-27", "b1", "lettuce", cal.Of(2027, 5, 1), cal.Of(2027, 5, 4), 2)}
	s.Plantings[1].StripOn, s.Plantings[1].StripShare = cal.Of(2027, 5, 3), 0.2
	s.Records = []record.Record{{ID: "a", Date: cal.Of(2027, 5, 10), What: record.Planted, Planting: "let-27"}}
	noRoom := func(r *carry.Result) bool {
		return slices.ContainsFunc(r.Troubles, func(w carry.Trouble) bool { return w.Kind == carry.NoRoom })
	}
	if r := of(t, s); !noRoom(r) {
		t.Errorf("the bed is full, and is told as %+v", r.Troubles)
	}
	s.Records = append(s.Records, record.Record{ID: "b", Date: cal.Of(2027, 5, 9), What: record.Cleared, Planting: "old"})
	r := of(t, s)
	if noRoom(r) {
		t.Errorf("the bed was cleared, and is told as %+v", r.Troubles)
	}
	if c := only(t, r); c.LaterD != 9 || c.ClearBy != c.Date+3 || c.StripOn != c.Date+2 {
		t.Errorf("planted %s, stripped %s, cleared %s", c.Date, c.StripOn, c.ClearBy)
	}
}

// A cover that finds another there is told, one that finds its like is not laid twice,
// and beds whose sowings are planned already keep their own.
func TestCoversThatMeet(t *testing.T) {
	s := garden(1, false, cal.Of(2027, 5, 1))
	s.Plantings = []plan.Planting{planted("cab-27", "b1", "cabbage", cal.Of(2027, 5, 20), cal.Of(2027, 9, 1), 6)}
	lies := func(id string, kind cover.Kind, on cal.Date) place.CoverSpell {
		return place.CoverSpell{ID: id, Bed: "b1", Spell: cover.Spell{Kind: kind, On: on, Off: on + 60}}
	}
	covered := func(r *carry.Result) (n int) {
		for _, w := range r.Troubles {
			if w.Kind == carry.Covered {
				n++
			}
		}
		return n
	}
	for kind, want := range map[cover.Kind]int{cover.Mesh: 0, cover.Fleece: 1} {
		s.Covers = []place.CoverSpell{lies("a", cover.Mesh, cal.Of(2027, 5, 21)), lies("b", kind, cal.Of(2028, 5, 1))}
		if r := of(t, s); len(r.Covers) != 0 || covered(r) != want {
			t.Errorf("%s lies there: %d laid, %d told", kind, len(r.Covers), covered(r))
		}
	}
	s.Covers = s.Covers[:1]
	s.Plantings = append(s.Plantings, planted("cab-28", "b1", "cabbage", cal.Of(2028, 5, 20), cal.Of(2028, 9, 1), 6))
	if r := of(t, s); len(r.Planned) != 1 || len(r.Covers) != 0 {
		t.Errorf("planned already %v, covers %+v", r.Planned, r.Covers)
	}
}

// anyGarden is a garden with sowings that fit on its beds.
func anyGarden(r *rapid.T) carry.Setting {
	south := rapid.Bool().Draw(r, "south")
	s := garden(rapid.IntRange(1, 5).Draw(r, "beds"), south, cal.Of(2027, 5, 1))
	crops := []string{"potato", "cabbage", "kale", "carrot", "pea", "lettuce", "leek", "beetroot", "tomato", "spinach"}
	for i := range s.Beds {
		if rapid.IntRange(0, 5).Draw(r, "silent") == 0 {
			s.Beds[i].Rotation = rotation.Silent
		}
		if rapid.IntRange(0, 4).Draw(r, "small") == 0 {
			s.Beds[i].LengthM = 3
		}
		day := cal.Of(2026, 3, 1) + cal.Date(rapid.IntRange(0, 200).Draw(r, "from"))
		for k := range rapid.IntRange(0, 4).Draw(r, "sowings") {
			to := day + cal.Date(rapid.IntRange(30, 250).Draw(r, "days"))
			area := s.Beds[i].AreaM2() * rapid.Float64Range(0.2, 1).Draw(r, "area")
			s.Plantings = append(s.Plantings, planted(fmt.Sprintf("p%d%d", i, k), s.Beds[i].ID, rapid.SampledFrom(crops).Draw(r, "crop"), day, to, area))
			day = to + cal.Date(rapid.IntRange(0, 60).Draw(r, "gap"))
		}
	}
	return s
}

// What is carried keeps its area and how long it stands; two runs give the same;
// silent beds keep their crops.
func TestWhatIsCarriedIsWhatStood(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := anyGarden(r)
		first, second := of(r, s), of(r, s)
		if !reflect.DeepEqual(first, second) {
			r.Fatalf("%+v\n%+v", first, second)
		}
		from := map[string]plan.Planting{}
		for _, p := range s.Plantings {
			from[p.ID] = p
		}
		ids := map[string]bool{}
		for _, c := range first.Sowings {
			p := from[c.From]
			if c.AreaM2 != p.AreaM2 || c.Crop != p.Crop || c.ClearBy-c.Date != p.ClearBy-p.Date || c.Date.Weekday() != p.Date.Weekday() || c.Plan != "next" {
				r.Fatalf("%+v of %+v", c, p)
			}
			if _, known := from[c.ID]; known || ids[c.ID] {
				r.Fatalf("the id %s is not its own", c.ID)
			}
			ids[c.ID] = true
			for _, b := range s.Beds {
				if b.Rotation == rotation.Silent && (b.ID == c.Bed) != (b.ID == c.FromBed) {
					r.Fatalf("%s moved from %s to %s, and %s keeps its crops", c.ID, c.FromBed, c.Bed, b.ID)
				}
			}
		}
	})
}

// A sowing comes back too soon only where no other bed alike has room for it
// without that.
func TestRotationIsNeverBrokenWhereThereIsAnotherBed(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := anyGarden(r)
		got := of(r, s)
		h, err := rotation.NewHistory(rotation.Ground{Book: s.Book, Sites: s.Sites, Beds: s.Beds, Plantings: s.Plantings})
		if err != nil {
			r.Fatal(err)
		}
		told := map[string]bool{}
		for _, w := range got.Troubles {
			told[w.Carried] = true
		}
		silent := map[string]bool{}
		for _, b := range s.Beds {
			silent[b.ID] = b.Rotation == rotation.Silent
		}
		for _, c := range got.Sowings {
			clash := h.Check(c.Bed, rotation.Candidate{Crop: c.Crop, Use: c.Use, Date: c.Date})
			if clash == nil || silent[c.Bed] {
				continue
			}
			if !told[c.ID] {
				r.Fatalf("%s comes back too soon to %s, which is not told", c.ID, c.Bed)
			}
			for _, b := range s.Beds {
				if silent[b.ID] || b.ID == c.Bed || h.Check(b.ID, rotation.Candidate{Crop: c.Crop, Use: c.Use, Date: c.Date}) != nil {
					continue
				}
				if free(s, got, &c, b) {
					r.Fatalf("%s comes back too soon to %s, and %s is free", c.ID, c.Bed, b.ID)
				}
			}
		}
	})
}

// free tells whether a bed has room for a sowing on each of its days.
func free(s carry.Setting, got *carry.Result, c *carry.Carried, b place.Bed) bool {
	for day := c.Date; day < c.ClearBy; day++ {
		held := c.AreaM2
		for _, p := range s.Plantings {
			if p.Bed == b.ID && p.Date <= day && day < p.ClearBy {
				held += p.AreaM2
			}
		}
		for _, p := range got.Sowings {
			if p.ID != c.ID && p.Bed == b.ID && p.Date <= day && day < p.ClearBy {
				held += p.AreaM2
			}
		}
		if held > b.AreaM2()+0.01 {
			return false
		}
	}
	return true
}

// What was raised in one bed and lifted into another is so again.
func TestWhatWasLiftedIsLiftedAgain(t *testing.T) {
	s := garden(4, false, cal.Of(2027, 5, 1))
	lifted := planted("lee-27b", "b2", "leek", cal.Of(2027, 7, 1), cal.Of(2027, 12, 1), 5)
	lifted.Relation, lifted.To = plan.Moved, "lee-27"
	s.Plantings = []plan.Planting{planted("lee-27", "b1", "leek", cal.Of(2027, 4, 1), cal.Of(2027, 7, 1), 1), lifted}
	r := of(t, s)
	if len(r.Sowings) != 2 || r.Sowings[1].To != "lee-28" || r.Sowings[1].Relation != plan.Moved || r.Sowings[0].Bed == r.Sowings[1].Bed {
		t.Errorf("%+v", r.Sowings)
	}
}
