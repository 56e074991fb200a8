package climate

import (
	"math"

	"garner/internal/cal"
)

// spinUpMonths is how long a run is brought up before the quarter it is wanted
// for: by then the departures keep under 1e-4 of where they started.
const spinUpMonths = 2

// Days makes n days from first on, for a seed, a number of the future and a
// number of the site. Two sites with the same number have the same chances on
// the same days; sites near to one another should share a number.
//
// Every day is a function of (seed, future, site, date): a run of other days
// over the same dates gives the same weather. To that end the random numbers
// belong to the month of the date, and the memory of the weather is brought up
// afresh over the two months before each quarter of the year; where one quarter
// gives way to the next the departures differ from an unbroken run by less than
// 1e-4 of their spread.
func (g *Generator) Days(seed, future, site uint64, first cal.Date, n int) []Day {
	return g.appendDays(make([]Day, 0, max(n, 0)), key{seed, future, site}, first, n)
}

// appendDays adds n days from first on to out.
func (g *Generator) appendDays(out []Day, k key, first cal.Date, n int) []Day {
	if n <= 0 {
		return out
	}
	year, month, _ := first.YMD()
	quarter := (month-1)/3*3 + 1
	at := yearMonth{year, quarter}.plus(-spinUpMonths)
	r := run{g: g, key: k, at: at, wave: newSlowWave(g, k, at.plus(-1))}
	r.slow[0], r.slow[1] = r.wave.step(), r.wave.step()
	last := first + cal.Date(n)
	for date := at.first(); date < last; {
		out, date = r.monthInto(out, date, first, last)
	}
	return out
}

// yearMonth is a month of a year, 1-12.
type yearMonth struct{ year, month int }

// plus returns the month n months later.
func (a yearMonth) plus(n int) yearMonth {
	m := a.year*12 + a.month - 1 + n
	return yearMonth{(m - (m%12+12)%12) / 12, (m%12+12)%12 + 1}
}

// first returns the month's first day.
func (a yearMonth) first() cal.Date { return cal.Of(a.year, a.month, 1) }

// state is what the weather remembers: yesterday's departures whether it was
// wet and the day before it.
type state struct {
	x           vector
	wet, wasWet bool
}

// run is the generator on its way through the months.
type run struct {
	g     *Generator
	key   key
	at    yearMonth // the month to come
	wave  *slowWave
	slow  [2]slowVector // of the month before and of this month
	state state
	next  state // brought up for the next quarter
}

// monthInto runs one month from date, its first day, and adds the days from
// first to before last to out.
func (r *run) monthInto(out []Day, date, first, last cal.Date) ([]Day, cal.Date) {
	g, m := r.g, r.at.month-1
	startsQuarter := r.at.month%3 == 1
	if startsQuarter {
		r.state, r.next = r.next, state{}
	}
	next := r.at.plus(1)
	following := r.wave.step()
	stream := r.key.stream(r.at.year, r.at.month, forDays)
	share, amount := g.slowRain(m, r.slow[1][variables])
	days := int(next.first() - date)
	var d draws
	for i := range days {
		drawDay(&stream, &d)
		noise := g.ar[m].b.lowerTimes(&d.normal)
		r.state.step(&g.ar[m].a, &noise, d.rainy, share, g.chain[m].persistence)
		if !startsQuarter { // the two months before a quarter bring its state up
			r.next.step(&g.ar[m].a, &noise, d.rainy, share, g.chain[m].persistence)
		}
		if date >= first && date < last {
			index := dayIndex(r.at.month, i+1)
			slow := slowOn(&r.slow[0], &r.slow[1], &following, i, days)
			day := g.day(&g.days[index], &r.state, &slow)
			if r.state.wet {
				day.RainMM = WetDayMM + g.chain[m].excessMM*amount*g.rain[m].at(d.amount)
			}
			out = append(out, day)
		}
		date++
	}
	r.slow[0], r.slow[1] = r.slow[1], following
	r.at = next
	return out, date
}

// slowRain returns a month's share of wet days and the factor on their rain,
// with the slow departure z of its rain shared evenly between them.
func (g *Generator) slowRain(m int, z float64) (share, amount float64) {
	c := &g.chain[m]
	part := c.slow / 2
	room := math.Min(c.wetShare, 1-c.wetShare) * 0.9
	share = c.wetShare + math.Max(-room, math.Min(room, part*z*c.wetShare))
	// The mean of (1 + part z) exp(part z - part^2/2) is 1 + part^2.
	return share, math.Exp(part*z-part*part/2) / (1 + part*part)
}

// step moves the state on by a day.
func (s *state) step(a *matrix, noise *vector, rainy, share, persistence float64) {
	chance := afterDry(share, persistence)
	if s.wet {
		chance = afterWet(share, persistence)
	}
	s.wet, s.wasWet = rainy < chance, s.wet
	x := *noise
	for i := range x {
		row := &a[i]
		x[i] += row[0]*s.x[0] + row[1]*s.x[1] + row[2]*s.x[2] + row[3]*s.x[3] + row[4]*s.x[4]
	}
	s.x = x
}

// lowerTimes multiplies a lower triangular matrix with a vector.
func (m *matrix) lowerTimes(v *vector) vector {
	return vector{
		m[0][0] * v[0],
		m[1][0]*v[0] + m[1][1]*v[1],
		m[2][0]*v[0] + m[2][1]*v[1] + m[2][2]*v[2],
		m[3][0]*v[0] + m[3][1]*v[1] + m[3][2]*v[2] + m[3][3]*v[3],
		m[4][0]*v[0] + m[4][1]*v[1] + m[4][2]*v[2] + m[4][3]*v[3] + m[4][4]*v[4],
	}
}

// slowOn turns the slow departures of three months into those of day i of the
// middle one: between the middles of two months the weights turn a quarter of a
// circle, scaled so that the spread is the same on every day.
func slowOn(before, this, after *slowVector, i, days int) (out vector) {
	other := after
	if 2*i+1 < days {
		other = before
	}
	weights := &slowTable[days-28][i]
	one, two := weights[0], weights[1]
	for v := range out {
		out[v] = one*this[v] + two*other[v]
	}
	return out
}

// slowWeightsOn returns the weights of the month itself and of the nearer of its
// neighbours on day i.
func slowWeightsOn(i, days int) (own, other float64) {
	turn := math.Abs((float64(i)+0.5)/float64(days) - 0.5)
	sin, cos := math.Sincos(turn * math.Pi / 2)
	scale := 1 / math.Sqrt(1+2*sin*cos*slowNeighbour)
	return cos * scale, sin * scale
}

// slowTable holds the weights for months of 28 to 31 days.
var slowTable = func() (t [4][31][2]float64) {
	for n := range t {
		for i := range 28 + n {
			t[n][i][0], t[n][i][1] = slowWeightsOn(i, 28+n)
		}
	}
	return t
}()

// day turns departures into weather, rain apart.
func (g *Generator) day(d *dayModel, s *state, slow *vector) Day {
	st := &d.spell[spellOf(s.wet, s.wasWet)]
	var z vector
	for v := range z {
		z[v] = d.fast[v]*s.x[v] + d.slow[v]*slow[v]
	}
	mean := st.meanC + st.meanSD*st.meanBend.at(z[varMean])
	root := st.rangeA + st.rangeB*st.rangeBend.at(z[varRange])
	half := root * root / 2
	gust := st.windA + st.windB*z[varWind]
	return Day{
		TMinC:       mean - half,
		TMaxC:       mean + half,
		RadiationMJ: d.skyLow + d.skySpan*logistic(st.sunMid+st.sunSpread*z[varSun]),
		HumidityPct: 100 * logistic(st.rhMid+st.rhSpread*z[varHumidity]),
		WindMS:      gust * gust,
	}
}
