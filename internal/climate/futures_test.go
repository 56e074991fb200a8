package climate

import (
	"errors"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/fault"
)

var today = cal.Of(2020, 1, 4)

func deBiltFutures(t testing.TB, src Source) *Futures {
	t.Helper()
	return must(t, func() (*Futures, error) { return NewFutures(deBilt.location, src, today) })
}

// forecastOf makes a forecast of n days from today with one temperature.
func forecastOf(n int, meanC float64) *Record {
	r := &Record{}
	for i := range n {
		r.Days = append(r.Days, Observation{Date: today + cal.Date(i), TMinC: Is(meanC - 3), TMaxC: Is(meanC + 3), RainMM: Is(1)})
	}
	return r
}

func TestFuturesShareThePast(t *testing.T) {
	full := deBilt.record(t) // ends on 2019-12-31: three days are missing before today
	f := deBiltFutures(t, Source{Record: full, Forecast: forecastOf(5, 8)})
	first := cal.Of(2019, 12, 20)
	a := f.Days(1, 0, 0, first, 60, nil)
	b := f.Days(1, 1, 0, first, 60, nil)
	shared := int(today - first)
	if diff := cmp.Diff(a[:shared], b[:shared]); diff != "" {
		t.Error(diff)
	}
	for i := range 15 {
		if a[shared+i].TMinC == b[shared+i].TMinC {
			t.Errorf("two futures are alike %d days ahead", i)
		}
	}
	last := full.Days[len(full.Days)-1]
	if d := a[last.Date-first]; d.TMinC != last.TMinC.Value || d.TMaxC != last.TMaxC.Value || d.RainMM != last.RainMM.Value {
		t.Errorf("last day of the record is %+v, want %+v", d, last)
	}
	// Three days between the record and the forecast are bridged.
	if got := f.Filled(); got != (Filled{Interpolated: 3}) {
		t.Errorf("%+v", got)
	}
}

func TestFuturesReplayTenYearsAndMore(t *testing.T) {
	full := deBilt.record(t)
	f := deBiltFutures(t, Source{Record: full})
	if f.Kind() != Replayed || f.Years() != 40 {
		t.Errorf("%s of %d years", f.Kind(), f.Years())
	}
	nine := &Record{Days: full.Days[31*365+8:]}
	if f := deBiltFutures(t, Source{Record: nine}); f.Kind() != Generated || f.Years() != 9 {
		t.Errorf("%s of %d years", f.Kind(), f.Years())
	}
	n := deBilt.normals(t)
	if f := deBiltFutures(t, Source{Normals: &n}); f.Kind() != Generated || f.Years() != 0 {
		t.Errorf("%s of %d years", f.Kind(), f.Years())
	}
	_, err := NewFutures(deBilt.location, Source{}, today)
	var one *fault.Error
	if !errors.As(err, &one) || one.Phrase.Key != "climate.nothing_known" {
		t.Error(err)
	}
}

// Every year comes once before any comes again, with its rain on its own days
// and its own order of years, from the day of the year that is asked for.
func TestReplayGoesThroughTheYears(t *testing.T) {
	full := deBilt.record(t)
	f := deBiltFutures(t, Source{Record: full})
	byDate := map[cal.Date]Observation{}
	for _, o := range full.Days {
		byDate[o.Date] = o
	}
	seen := map[int]int{}
	const n = 500
	for future := range 80 {
		days := f.Days(9, future, 0, today, n, nil)
		found := 0
		for year := 1980; year <= 2019; year++ {
			same := true
			for i := 0; i < 300 && same; i++ {
				_, m, d := (today + cal.Date(i)).YMD()
				if m == 2 && d == 29 {
					continue
				}
				same = byDate[cal.Of(year, m, d)].RainMM.Value == days[i].RainMM
			}
			if same {
				found = year
			}
		}
		seen[found]++
		next := found + 1
		if next > 2019 {
			next = 1980
		}
		if got, want := days[cal.Of(2021, 3, 1)-today].RainMM, byDate[cal.Of(next, 3, 1)].RainMM.Value; got != want {
			t.Errorf("future %d of %d does not run on into %d: %v, %v", future, found, next, got, want)
		}
	}
	for year := 1980; year <= 2019; year++ {
		if seen[year] != 2 {
			t.Errorf("%d is replayed %d times in 80 futures of 40 years", year, seen[year])
		}
	}
}

func TestFutureSpansAgree(t *testing.T) {
	n := deBilt.normals(t)
	short := &Record{Days: deBilt.record(t).Days[14000:]}
	for name, src := range map[string]Source{
		"replayed":  {Record: deBilt.record(t), Forecast: forecastOf(3, 2)},
		"generated": {Normals: &n, Record: short},
		"normals":   {Normals: &n},
	} {
		f := deBiltFutures(t, src)
		first := cal.Of(2019, 6, 1)
		whole := f.Days(4, 17, 2, first, 1400, nil)
		var out []Day
		rapid.Check(t, func(t *rapid.T) {
			from := rapid.IntRange(0, 1300).Draw(t, "from")
			n := rapid.IntRange(0, 100).Draw(t, "days")
			out = f.Days(4, 17, 2, first+cal.Date(from), n, out)
			if diff := cmp.Diff(whole[from:from+n], out); diff != "" && n > 0 {
				t.Fatalf("%s from %v: %s", name, first+cal.Date(from), diff)
			}
		})
	}
}

// The first open days start from what was seen: after a forecast 8 C above the
// season the next day keeps most of it and a fortnight later nothing is left.
func TestFuturesStartFromWhatWasSeen(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t), Forecast: forecastOf(5, 12)})
	usual := deBiltFutures(t, Source{Record: deBilt.record(t)})
	var gap [20]float64
	for future := range 40 { // every year once
		with := f.Days(1, future, 0, today+5, len(gap), nil)
		without := usual.Days(1, future, 0, today+5, len(gap), nil)
		for i := range gap {
			gap[i] += (with[i].MeanC() - without[i].MeanC()) / 40
		}
	}
	if gap[0] < 4 || gap[0] > 8 || math.Abs(gap[19]) > 0.3 || gap[2] > gap[0] {
		t.Errorf("warmer by %.1f", gap)
	}
}

// De Bilt warmed by about 0.04 C a year over 1980-2019: the years on file come
// back at the level of their end, not of their middle.
func TestReplayIsAtThePresentLevel(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t)})
	sum := 0.0
	for future := range 40 {
		for _, d := range f.Days(1, future, 0, cal.Of(2021, 1, 1), 365, nil) {
			sum += d.MeanC() / 365 / 40
		}
	}
	var all, late moments
	for _, o := range deBilt.record(t).Days {
		v := (o.TMinC.Value + o.TMaxC.Value) / 2
		all.add(v)
		if o.Date.Year() >= 2010 {
			late.add(v)
		}
	}
	t.Logf("futures %.2f C, all years %.2f, the last ten %.2f", sum, all.mean(), late.mean())
	if sum < all.mean()+0.4 || math.Abs(sum-late.mean()) > 0.4 {
		t.Errorf("futures %.2f C, all years %.2f, the last ten %.2f", sum, all.mean(), late.mean())
	}
}

func TestLeapDays(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t)})
	for future := range 40 {
		days := f.Days(1, future, 0, cal.Of(2024, 2, 27), 4, nil) // to 1 March 2024
		if len(days) != 4 {
			t.Fatalf("%d days", len(days))
		}
		common := f.Days(1, future, 0, cal.Of(2023, 2, 27), 3, nil)
		if len(common) != 3 {
			t.Fatalf("%d days", len(common))
		}
	}
}

func TestGapsAreBridgedOrFilled(t *testing.T) {
	full := deBilt.record(t).Days[14000:]
	r := &Record{}
	for i, o := range full {
		if i >= 100 && i < 105 || i >= 200 && i < 220 {
			continue
		}
		if i == 300 {
			o.TMinC = Maybe{} // one of the two is as bad as none
		}
		r.Days = append(r.Days, o)
	}
	n := deBilt.normals(t)
	f := deBiltFutures(t, Source{Record: r, Normals: &n})
	if got := f.Filled(); got != (Filled{Interpolated: 6, Generated: 20}) {
		t.Errorf("%+v", got)
	}
	days := f.Days(1, 0, 0, full[0].Date, len(full), nil)
	before, after := full[99], full[105]
	want := before.TMinC.Value + (after.TMinC.Value-before.TMinC.Value)/6
	if got := days[100].TMinC; math.Abs(got-want) > 1e-9 {
		t.Errorf("first day of the gap %.2f, want %.2f", got, want)
	}
}

func TestTrendOfAKnownSlope(t *testing.T) {
	g := must(t, func() (*Generator, error) { return NewGenerator(deBiltNormals(), benchPlace) })
	first := cal.Of(1950, 1, 1)
	r := recordOf(first, g.Days(3, 0, 0, first, 70*365))
	for i := range r.Days {
		years := float64(i) / 365.25
		r.Days[i].TMinC.Value += 0.03 * years
		r.Days[i].TMaxC.Value += 0.03 * years
	}
	trend := trendOf(r)
	for v, curve := range trend.perYear {
		mean := 0.0
		for _, s := range curve {
			mean += s / daysInYear
		}
		if mean < 0.015 || mean > 0.042 {
			t.Errorf("element %d: %.3f C a year, put in 0.030", v, mean)
		}
	}
	// Ten years say little: their slope is mostly chance and is mostly dropped.
	short := trendOf(&Record{Days: r.Days[:3653]})
	for v, curve := range short.perYear {
		for _, s := range curve {
			if math.Abs(s) > 0.06 {
				t.Errorf("element %d: %.3f C a year from ten years", v, s)
			}
		}
	}
}

// Futures that replay the same year are alike to the bit, and no others are; without
// years on file each has weather of its own.
func TestFuturesOfAYearAreAlike(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t)})
	n := f.Distinct()
	if n != f.Years() {
		t.Fatalf("alike after %d futures", n)
	}
	days := func(future int) []Day { return f.Days(9, future, 7, today-400, 900, nil) }
	for future := range n {
		if !slices.Equal(days(future), days(future+n)) || slices.Equal(days(future), days((future+1)%n)) {
			t.Errorf("future %d", future)
		}
	}
	normals, err := NormalsOf(deBilt.record(t))
	if err != nil {
		t.Fatal(err)
	}
	if made := deBiltFutures(t, Source{Normals: &normals}); made.Distinct() != 0 {
		t.Errorf("made weather comes again after %d futures", made.Distinct())
	}
}
