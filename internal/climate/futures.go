package climate

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/sun"
	"garner/internal/words"
)

// Source is what is known of a place's weather; any part may be missing, but
// not both the normals and the record.
type Source struct {
	Normals      *Normals
	Record       *Record
	Forecast     *Record // from the end of the record on
	ForecastAgeD int     // days since the forecast was made, which misses the more for it [d]
}

// replayYears is how many years must be on file before they are replayed.
const replayYears = 10

// The kinds of futures.
const (
	Replayed  = "replay"    // the record's own years, shifted to the present level
	Generated = "generator" // years made from the normals
)

// Futures joins the weather so far, a forecast and many possible continuations.
type Futures struct {
	generator *Generator
	known     Series // the record up to today and the forecast
	seen      int    // days of known before today: those after them are forecast, and every future misses them by a draw of its own
	lead      int    // days from the forecast's making to the first of those
	filled    Filled
	replay    *replay // nil without ten years on file
	years     int
}

// NewFutures prepares the futures of a place as seen on a day. Of the record
// only the days before today are used; the forecast counts from the day after them.
func NewFutures(loc sun.Location, src Source, today cal.Date) (*Futures, error) {
	f := &Futures{}
	past := before(src.Record, today)
	f.years = yearsOnFile(past)
	g, err := generatorFor(loc, src.Normals, past, f.years)
	if err != nil {
		return nil, err
	}
	f.generator = g
	if f.years >= replayYears {
		f.replay = newReplay(past, g, today)
	}
	seen := joined(past, src.Forecast)
	first, n := seen.span()
	f.known, f.filled = fillRecord(seen, g, first, n)
	f.seen = len(f.known.Days)
	if n > 0 {
		f.seen = min(n, max(0, int(today-first)))
		f.lead = max(0, int(first-today)) + max(0, src.ForecastAgeD)
	}
	return f, nil
}

// generatorFor makes the generator that fills gaps and, without enough years on
// file, makes the futures: from the normals given, else from the record's own.
func generatorFor(loc sun.Location, n *Normals, past *Record, years int) (*Generator, error) {
	if n == nil && len(past.Days) == 0 {
		return nil, fault.New(fault.Invalid, "climate.nothing_known", words.Args{"years": replayYears})
	}
	if n == nil || years >= replayYears {
		own, err := NormalsOf(past)
		if err != nil {
			return nil, err
		}
		n = &own
	}
	return NewGenerator(*n, loc)
}

// Years is the number of distinct calendar years on file that are complete
// enough to be replayed.
func (f *Futures) Years() int { return f.years }

// Kind tells where the days to come are taken from: Replayed or Generated.
func (f *Futures) Kind() string {
	if f.replay != nil {
		return Replayed
	}
	return Generated
}

// Distinct is after how many futures the same weather comes again: the number of years
// that are replayed. 0: every future has weather of its own.
func (f *Futures) Distinct() int {
	if f.replay != nil {
		return len(f.replay.years)
	}
	return 0
}

// Filled tells what was missing in the record and how it was made up.
func (f *Futures) Filled() Filled { return f.filled }

// before returns the days of a record before a date.
func before(r *Record, today cal.Date) *Record {
	out := &Record{}
	if r == nil {
		return out
	}
	out.ID = r.ID
	end := len(r.Days)
	for end > 0 && r.Days[end-1].Date >= today {
		end--
	}
	out.Days = r.Days[:end]
	return out
}

// joined puts the forecast behind the record; a gap between them is filled like
// any other. Days before today that were forecast and never recorded are the best
// that is known of them.
func joined(past, forecast *Record) *Record {
	out := &Record{Days: append([]Observation(nil), past.Days...)}
	if forecast == nil {
		return out
	}
	for _, o := range forecast.Days {
		if len(out.Days) == 0 || o.Date > out.Days[len(out.Days)-1].Date {
			out.Days = append(out.Days, o)
		}
	}
	return out
}

// joinFade is the share of the gap at the join that is left a day later: the
// lag-1 correlation of daily means.
const joinFade = 0.75

// joinDays is how long the join is felt; by then under 1 % of the gap is left.
const joinDays = 16

// joinLeft is the share of the gap that is left so many days after the join.
var joinLeft = func() (left [joinDays + 1]float64) {
	left[0] = 1
	for i := 1; i <= joinDays; i++ {
		left[i] = left[i-1] * joinFade
	}
	return left
}()

// Days fills out with n days from first on, in one future: the record, then the
// forecast, which each future misses in a way of its own, then the future's own days,
// whose daily mean starts from the last known day's and finds its way to its own over about a week. Days before the
// record are the generator's. The futures of two sites are alike day by day
// where the records are, or where the sites have the same number.
func (f *Futures) Days(seed uint64, future int, site uint64, first cal.Date, n int, out []Day) []Day {
	out = out[:0]
	k := key{seed, uint64(future), site}
	if len(f.known.Days) == 0 {
		return f.generator.appendDays(out, k, first, n)
	}
	end := first + cal.Date(n)
	if first < f.known.First {
		out = f.generator.appendDays(out, key{seed: fillSeed}, first, int(min(end, f.known.First)-first))
		first += cal.Date(len(out))
	}
	foretold := f.foretold(k)
	last := f.known.Last()
	ahead := last + 1 - cal.Date(len(foretold)) // the first day that is forecast
	if first < ahead && first < end {
		stop := min(end, ahead)
		out = append(out, f.known.Days[first-f.known.First:stop-f.known.First]...)
		first = stop
	}
	if first <= last && first < end {
		stop := min(end, last+1)
		out = append(out, foretold[first-ahead:stop-ahead]...)
		first = stop
	}
	if first < end {
		lastC := f.known.Days[len(f.known.Days)-1].MeanC()
		if len(foretold) > 0 {
			lastC = foretold[len(foretold)-1].MeanC()
		}
		out = f.open(out, k, first, int(end-first), lastC)
	}
	return out
}

// open adds the days after the last known one, whose mean is told [C].
func (f *Futures) open(out []Day, k key, first cal.Date, n int, lastC float64) []Day {
	last := f.known.Last()
	start := len(out)
	if first-last > joinDays {
		return f.own(out, k, first, n)
	}
	// One day more at the front tells how far the future stood from what was seen.
	out = f.own(out, k, last, n+int(first-last))
	gap := lastC - out[start].MeanC()
	skip := int(first - last)
	copy(out[start:], out[start+skip:])
	out = out[:len(out)-skip]
	for i := start; i < len(out) && skip+i-start <= joinDays; i++ {
		left := gap * joinLeft[skip+i-start]
		out[i].TMinC += left
		out[i].TMaxC += left
	}
	return out
}

// own adds a future's days as they come from the replay or the generator.
func (f *Futures) own(out []Day, k key, first cal.Date, n int) []Day {
	if f.replay != nil {
		return f.replay.appendDays(out, k, first, n)
	}
	return f.generator.appendDays(out, k, first, n)
}

// yearOrder returns which of n years a future replays: every year once before
// any comes again, in an order set by the seed.
func yearOrder(seed uint64, n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	s := num.NewStream(seed, num.Key("order of years"))
	for i := n - 1; i > 0; i-- {
		j := s.IntN(i + 1)
		order[i], order[j] = order[j], order[i]
	}
	return order
}
