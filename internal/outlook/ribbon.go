package outlook

import (
	"sort"

	"garner/internal/larder"
	"garner/internal/num"
)

// StepsAWeek is the number of steps into which a ribbon divides a week: ends are
// true to 1.75 days.
const StepsAWeek = 4

// Threads is the number of threads a ribbon is woven of.
const Threads = 10

// Ribbon is one vegetable's want as ten threads over time. At thread j and step
// s, Ground is the share of futures in which food out of the ground alone
// reaches the thread's middle, (j+0.5)/10 of the want, and Food the same for
// ground and store together. Over holds what is to spare in a week as a share of
// the want, in the poor, middle and good year of ten, one for each step. Bought is the
// same as Food with what is bought, nil where nothing of it may be.
type Ribbon struct {
	Ground, Food [Threads][]float32
	Bought       [Threads][]float32
	Over         [3][]float32
}

// Ribbon weaves one vegetable. What it returns is shared and must not be changed.
func (t *Table) Ribbon(v *Vegetable) Ribbon {
	return v.sums.ribbons.of(v.Name, func() Ribbon {
		w := newWeaver(t.Weeks)
		for f := range v.Years {
			w.add(&v.Years[f])
		}
		return w.ribbon(len(v.Years))
	})
}

// Plate weaves all vegetables added up: the household's whole want.
func (t *Table) Plate() Ribbon {
	w := newWeaver(t.Weeks)
	for f := range t.Years {
		sum := emptyCourse(7 * t.Weeks)
		for i := range t.Vegetables {
			addCourse(&sum, &t.Vegetables[i].Years[f])
		}
		w.add(&sum)
	}
	return w.ribbon(t.Years)
}

// emptyCourse is that of a table without a vegetable.
func emptyCourse(days int) larder.Course {
	return larder.Course{Want: make([]float32, days), Fresh: make([]float32, days), Stored: make([]float32, days), Over: make([]float32, days)}
}

func addCourse(sum, c *larder.Course) {
	for _, pair := range [][2]*[]float32{{&sum.Want, &c.Want}, {&sum.Fresh, &c.Fresh}, {&sum.Stored, &c.Stored}, {&sum.Over, &c.Over}} {
		for i, kg := range *pair[1] {
			(*pair[0])[i] += kg
		}
	}
}

// weaver counts the futures that reach each thread.
type weaver struct {
	weeks        int
	ground, food [Threads][]int32
	all          [Threads][]int32 // with what is bought
	buys         bool
	over         [][]float64 // by week, one for each future
	wanted       float64     // mean want of the weeks that have one [kg]
	sums         [4][]float64
}

func newWeaver(weeks int) *weaver {
	w := &weaver{weeks: weeks, over: make([][]float64, weeks)}
	for j := range Threads {
		w.ground[j] = make([]int32, weeks*StepsAWeek)
		w.food[j] = make([]int32, weeks*StepsAWeek)
		w.all[j] = make([]int32, weeks*StepsAWeek)
	}
	for k := range w.sums {
		w.sums[k] = make([]float64, 7*weeks+1)
	}
	return w
}

// add counts one future.
func (w *weaver) add(c *larder.Course) {
	for k, course := range [][]float32{c.Want, c.Fresh, c.Stored, c.Bought} {
		if course == nil {
			continue
		}
		sum := 0.0
		for d := range 7 * w.weeks {
			sum += float64(course[d])
			w.sums[k][d+1] = sum
		}
	}
	w.buys = w.buys || c.Bought != nil
	for s := range w.weeks * StepsAWeek {
		want := w.within(0, s)
		if want <= 0 {
			continue
		}
		fresh := w.within(1, s)
		threads := func(counts *[Threads][]int32, kg float64) {
			n := min(Threads, int(kg/want*Threads+0.5+1e-6))
			for j := range n {
				counts[j][s]++
			}
		}
		threads(&w.ground, fresh)
		food := fresh + w.within(2, s)
		threads(&w.food, food)
		if w.buys {
			threads(&w.all, food+w.within(3, s))
		}
	}
	w.addOver(c)
}

// within returns what falls into a step of a course, from its running sums.
func (w *weaver) within(course, step int) float64 {
	const length = 7.0 / StepsAWeek
	return w.upTo(course, float64(step+1)*length) - w.upTo(course, float64(step)*length)
}

func (w *weaver) upTo(course int, day float64) float64 {
	s := w.sums[course]
	i := int(day)
	if i >= len(s)-1 {
		return s[len(s)-1]
	}
	return s[i] + (day-float64(i))*(s[i+1]-s[i])
}

func (w *weaver) addOver(c *larder.Course) {
	wanted, weeks := 0.0, 0
	for k := range w.weeks {
		over, want := 0.0, 0.0
		for d := 7 * k; d < 7*k+7; d++ {
			over += float64(c.Over[d])
			want += float64(c.Want[d])
		}
		w.over[k] = append(w.over[k], over)
		if want > 0 {
			wanted, weeks = wanted+want, weeks+1
		}
	}
	if weeks > 0 {
		w.wanted = wanted / float64(weeks)
	}
}

func (w *weaver) ribbon(futures int) Ribbon {
	var r Ribbon
	steps := w.weeks * StepsAWeek
	for j := range Threads {
		r.Ground[j], r.Food[j] = shares(w.ground[j], futures), shares(w.food[j], futures)
		if w.buys {
			r.Bought[j] = shares(w.all[j], futures)
		}
	}
	for i, p := range []float64{0.1, 0.5, 0.9} {
		r.Over[i] = make([]float32, steps)
		for k, kg := range w.over {
			if w.wanted <= 0 {
				continue
			}
			if i == 0 {
				sort.Float64s(kg)
			}
			share := float32(num.Quantile(kg, p) / w.wanted)
			for q := range StepsAWeek {
				r.Over[i][k*StepsAWeek+q] = share
			}
		}
	}
	return r
}

func shares(counts []int32, of int) []float32 {
	out := make([]float32, len(counts))
	for i, n := range counts {
		out[i] = float32(n) / float32(of)
	}
	return out
}
