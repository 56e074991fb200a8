package window

import "sort"

// yearDays is the length of the common year, on which sowing days are counted.
const yearDays = 365

// tally counts the sowings of one day over the years.
type tally struct {
	years, good int
	took        []int // days from sowing to ready in the good years
}

func (t tally) chance() float64 {
	if t.years == 0 {
		return 0
	}
	return float64(t.good) / float64(t.years)
}

func (t tally) median() int {
	if len(t.took) == 0 {
		return 0
	}
	s := append([]int(nil), t.took...)
	sort.Ints(s)
	return s[len(s)/2]
}

// tenYears are the days that ten good years of ten took, from early to late.
func (t tally) tenYears() (out [10]int) {
	if len(t.took) == 0 {
		return out
	}
	s := append([]int(nil), t.took...)
	sort.Ints(s)
	for k := range out {
		out[k] = s[(2*k+1)*len(s)/20]
	}
	return out
}

// odds are the chances of a usable crop by sowing day round the year.
type odds struct {
	days   []int // sowing days tried, rising
	tried  []tally
	chance [yearDays]float64 // smoothed, index is day of the year - 1
}

func newOdds() *odds { return &odds{} }

func (o *odds) set(day int, t tally) {
	o.days = append(o.days, day)
	o.tried = append(o.tried, t)
}

// smoothing is the half-width of the triangle over which the chances of
// neighbouring sowing days are averaged [d].
const smoothing = 8

// smooth draws straight lines between the days tried and averages round the
// year with a triangle.
func (o *odds) smooth() {
	var raw [yearDays]float64
	n := len(o.days)
	for i, d := range o.days {
		next, gap := o.tried[(i+1)%n].chance(), yearDays-d+o.days[0]
		if i+1 < n {
			gap = o.days[i+1] - d
		}
		c := o.tried[i].chance()
		for k := 0; k < gap; k++ {
			raw[(d-1+k)%yearDays] = c + (next-c)*float64(k)/float64(gap)
		}
	}
	for i := range o.chance {
		sum, weight := 0.0, 0.0
		for k := -smoothing; k <= smoothing; k++ {
			w := float64(smoothing + 1 - max(k, -k))
			sum += w * raw[wrap(i+k)]
			weight += w
		}
		o.chance[i] = sum / weight
	}
}

// wrap takes an index round the year.
func wrap(i int) int { return ((i % yearDays) + yearDays) % yearDays }

// took returns the median days from sowing to ready round a day index.
func (o *odds) took(i int) int { return o.near(i).median() }

// near is what was tried nearest to a day index and came ready in some year.
func (o *odds) near(i int) tally {
	best, found := yearDays, tally{}
	for k, d := range o.days {
		gap := wrap(d - 1 - i)
		gap = min(gap, yearDays-gap)
		if gap < best && o.tried[k].median() > 0 {
			best, found = gap, o.tried[k]
		}
	}
	return found
}
