package frost

import (
	"cmp"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/place"
)

// The last frost and the odds of one after a day, against the last frosts of the real
// days on record, of the years from 1990 on (De Bilt, KNMI): the futures are those years
// brought to the level of today, so that they may run some days early, and not late.
func TestLastFrostsAgainstTheRecord(t *testing.T) {
	seen := seenOn(t, "", cal.Of(2027, 3, 1), 40, func(h *holding.Holding) { h.Beds, h.Plantings, h.Covers = h.Beds[:1], nil, nil })
	last := map[int]cal.Date{}
	for _, o := range seen.setting.Holding.Weather[0].Record.Days {
		if y := o.Date.Year(); y >= 1990 && o.TMinC.Known && o.TMinC.Value <= climate.FrostC && o.Date < cal.Of(y, 7, 20) {
			last[y] = o.Date
		}
	}
	var days []int
	for _, d := range last {
		days = append(days, d.DayOfYear())
	}
	slices.Sort(days)
	at := func(p float64) int { return days[int(p*float64(len(days)-1)+0.5)] }
	s := answered(t, seen, Question{}).Sites[0]
	if s.Last == nil || s.Last.Share < 0.95 {
		t.Fatalf("last frost %+v", s.Last)
	}
	for _, c := range []struct {
		name string
		got  cal.Date
		want int
	}{{"one year in ten", s.Last.P10, at(0.1)}, {"half the years", s.Last.P50, at(0.5)}, {"nine years in ten", s.Last.P90, at(0.9)}} {
		if late := c.got.DayOfYear() - c.want; late < -14 || late > 4 {
			t.Errorf("last frost past in %s: day %d, on record %d", c.name, c.got.DayOfYear(), c.want)
		}
	}
	for _, day := range []cal.Date{cal.Of(2027, 4, 1), cal.Of(2027, 4, 15), cal.Of(2027, 5, 1), cal.Of(2027, 5, 15)} {
		record := 0
		for _, d := range days {
			if d > day.DayOfYear() {
				record++
			}
		}
		b := &bed{sky: seen.skies["home"]}
		drawn := 0
		for f := range seen.futures {
			if b.freezes(int(day-seen.setting.Today), min(141, seen.nights), f) {
				drawn++
			}
		}
		if off := float64(drawn)/float64(seen.futures) - float64(record)/float64(len(days)); off > 0.1 || off < -0.35 {
			t.Errorf("a frost after %v: %d of %d futures, %d of %d years", day, drawn, seen.futures, record, len(days))
		}
	}
}

// A forecast stands in the middle of tonight's spread, and the spread is as wide as
// forecasts miss.
func TestAForecastIsSpreadAsForecastsMiss(t *testing.T) {
	seen := seenOn(t, "", cal.Of(2027, 5, 14), 40, func(h *holding.Holding) {
		h.Weather[0].Forecast = &climate.Record{Days: []climate.Observation{
			{Date: cal.Of(2027, 5, 14), TMinC: climate.Is(4), TMaxC: climate.Is(12)}, {Date: cal.Of(2027, 5, 15), TMinC: climate.Is(-3), TMaxC: climate.Is(11)}}}
	})
	a := answered(t, seen, Question{})
	n := a.Sites[0].Nights[0]
	if !n.Told || a.Sites[0].Nights[1].Told {
		t.Errorf("told %v, then %v", n.Told, a.Sites[0].Nights[1].Told)
	}
	if m := n.C.Middle(); m < -3.8 || m > -2.2 {
		t.Errorf("the middle of a forecast of -3 is %g", m)
	}
	if wide := n.C[8] - n.C[1]; wide < 2 || wide > 5 {
		t.Errorf("eight of ten nights lie within %g C", wide)
	}
	if worst := slices.MaxFunc(a.Beds, func(x, y Bed) int { return cmp.Compare(x.Nights[0].Odds, y.Nights[0].Odds) }); worst.Nights[0].Odds < 0.9 {
		t.Errorf("tender plants in a frost of 3 C: %v", worst.Nights[0].Odds)
	}
}

// Apples at De Bilt are in full bloom in the second half of April or early in May (common
// practice, no source), by published sums of warmth.
func TestApplesBloom(t *testing.T) {
	seen := seenOn(t, "", cal.Of(2027, 3, 1), 20, func(h *holding.Holding) {
		h.Beds, h.Plantings, h.Covers = h.Beds[:1], nil, nil
		h.Features = append(h.Features, place.Feature{ID: "apple", Site: "home", Name: "Apple", Kind: place.DeciduousTree})
	})
	a := answered(t, seen, Question{})
	i := slices.IndexFunc(a.Fruit, func(f Fruit) bool { return f.ID == "apple" })
	if i < 0 || a.Fruit[i].Bloom == nil {
		t.Fatalf("no apple in bloom: %+v", a.Fruit)
	}
	f := &a.Fruit[i]
	if f.Bloom.P50 < cal.Of(2027, 4, 10) || f.Bloom.P50 > cal.Of(2027, 5, 7) || f.Bloom.P10 > f.Bloom.P50 || f.Bloom.P50 > f.Bloom.P90 {
		t.Errorf("full bloom %+v", f.Bloom)
	}
	told := answered(t, seen, Question{Stages: map[string]string{"apple": "full_bloom", "pear": "full_bloom"}})
	for _, f := range told.Fruit {
		if !f.Told || f.Stage == nil || f.Stage.Stage != "full_bloom" {
			t.Errorf("%s is told in full bloom: %+v", f.ID, f.Stage)
		}
	}
}

// A stage that was recorded starts the sum from its day: a week later the blossom is no
// less far than on that day, goes on with the warmth since, and stands elsewhere than by
// the sum alone. What is told today goes before it.
func TestBlossomGoesOnFromWhatWasSeen(t *testing.T) {
	today := cal.Of(2027, 4, 20)
	seen := seenOn(t, "", today, 20, func(h *holding.Holding) {
		h.Beds, h.Plantings, h.Covers = h.Beds[:1], nil, nil
		h.Features = append(h.Features, place.Feature{ID: "apple", Site: "home", Name: "Apple", Kind: place.DeciduousTree})
	})
	apple := func(q Question) *Fruit {
		a := answered(t, seen, q)
		return &a.Fruit[slices.IndexFunc(a.Fruit, func(f Fruit) bool { return f.ID == "apple" })]
	}
	at := func(f *Fruit) int { return slices.Index(f.Stages, f.Stage) }
	bySum := apple(Question{})
	early := apple(Question{Seen: map[string]SeenStage{"apple": {"green_tip", today - 2}}})
	late := apple(Question{Seen: map[string]SeenStage{"apple": {"petal_fall", today - 2}}})
	if at(early) > 1 || at(late) != 4 || at(early) >= at(late) || !late.Told || late.On != today-2 || bySum.Told {
		t.Errorf("by sum %d, from green tip %d, from petal fall %d", at(bySum), at(early), at(late))
	}
	if old := apple(Question{Seen: map[string]SeenStage{"apple": {"green_tip", today - 60}}}); at(old) <= at(early) {
		t.Errorf("green tip two months ago is at %d, of two days ago at %d", at(old), at(early))
	}
	if told := apple(Question{Stages: map[string]string{"apple": "full_bloom"}, Seen: map[string]SeenStage{"apple": {"green_tip", today - 2}}}); told.Stage.Stage != "full_bloom" || told.On != today {
		t.Errorf("told %+v on %s", told.Stage, told.On)
	}
}

// Where no sum is known a stage stands for ten nights from the day it was seen; after
// that nothing is told of where it stands.
func TestBlossomWithoutASumGoesOut(t *testing.T) {
	today := cal.Of(2027, 4, 20)
	seen := seenOn(t, "", today, 10, func(h *holding.Holding) { h.Beds, h.Plantings, h.Covers = h.Beds[:1], nil, nil })
	pear := func(on cal.Date) *Fruit {
		a := answered(t, seen, Question{Seen: map[string]SeenStage{"pear": {"full_bloom", on}}})
		return &a.Fruit[slices.IndexFunc(a.Fruit, func(f Fruit) bool { return f.ID == "pear" })]
	}
	if f := pear(today - 4); f.Stage == nil || f.Nights[5].Stage == nil || f.Nights[6].Stage != nil {
		t.Errorf("seen four days ago: %+v", f.Nights)
	}
	if f := pear(today - 10); !f.Stale || f.Told || len(f.If) == 0 {
		t.Errorf("seen ten days ago: %+v", f)
	}
}

// No young plant is taken to bear more than the same grown, whatever was fitted for it.
func TestNoYoungPlantBearsMore(t *testing.T) {
	seen := seenOn(t, "", cal.Of(2027, 4, 20), 1, nil)
	for _, c := range seen.setting.Book.Crops() {
		for _, u := range c.Uses {
			for _, harden := range []float64{0, 0.5, 1} {
				if young, grown := lethalC(u, 5, harden), lethalC(u, grownD, harden); young < grown {
					t.Errorf("%s %s: young dies at %g, grown at %g", c.ID, u.Name, young, grown)
				}
			}
		}
	}
}
