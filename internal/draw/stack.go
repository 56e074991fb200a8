package draw

import (
	"garner/internal/cal"
	"garner/internal/desk"
)

// StackOptions say how a vegetable's want and what fills it are drawn.
type StackOptions struct {
	HeightPX float64                                     // of the greatest want
	Label    string                                      // what it shows, in text
	Source   func(s desk.SourceView, stored bool) string // the name upon a band; nil: its letter
	Figure   func(kg float64) string                     // a figure of the scale; the unit stands in the page
	Want     string                                      // at the end of the want's line
	Gap      func(g desk.GapView) string                 // under a gap; nil: its line alone
	Mended   func(weeks int) string                      // under what is mended by a change tried
	Bought   string                                      // upon what is bought
	Short    string                                      // upon an open stretch
	Plain    bool                                        // plain blocks with a poor-year edge in place of threads
}

// stackThread is the thickness of a thread of a large drawing [px]; the ten
// thresholds are repeated over as many as there are.
const stackThread = 4.2

// stackOver is how far what is to spare is drawn above the want, as a share of
// the height.
const stackOver = 0.42

// band is one source as it lies in a stack.
type band struct {
	source *desk.SourceView
	stored bool
	class  string
	weave  *weave
	tried  *weave // what only a change tried gives
}

// stack is a stack being drawn.
type stack struct {
	view    *desk.VegetableView
	options StackOptions
	scale   Scale
	n       int
	x       []int
	want    []int // by step [tenths of px]
	most    float64
	base    int
	rows    int // threads to the top of the greatest want
	bands   []*band
	over    *weave
	bought  *weave // what is bought, above all sources
}

// Stack draws a vegetable's want as a line of steps and what fills it, planting
// by planting and store by store: solid out of the ground, hatched out of store,
// neighbours told apart by the turn of the hatch and by shade; gridded what is bought. Threads end as in
// a ribbon; which source a thread comes from goes by the sources' shares of the
// week.
func Stack(v *desk.VegetableView, s Scale, o StackOptions) string {
	k := newStack(v, s, o)
	k.lay()
	var c sheet
	height := float64(k.base)/10 + 26
	c.frame("stack", "img", o.Label, s.WidthPX, height, false)
	c.path("month", monthLines(s, 0, height))
	c.path("open", between(k.x, k.base, func(int) int { return 0 }, func(i int) int { return k.want[i] }))
	c.path("over", k.over.outline())
	c.path("bought", k.bought.outline())
	for _, b := range k.bands {
		c.path(b.class, b.weave.outline())
	}
	for _, b := range k.bands {
		c.path("draft", b.tried.outline())
	}
	if o.Plain {
		c.edge(stepLine(k.x, k.base, k.poor))
	}
	k.line(&c)
	c.level("base", 0, s.WidthPX, float64(k.base)/10+.5)
	k.names(&c)
	k.figures(&c)
	k.gaps(&c)
	if s.has(v.Today) {
		c.upright("pen today", s.X(v.Today), 0, height)
	}
	return c.done()
}

func newStack(v *desk.VegetableView, s Scale, o StackOptions) *stack {
	h := tenths(o.HeightPX)
	k := &stack{view: v, options: o, scale: s, n: len(v.Ribbon.Food[0]), rows: int(o.HeightPX/stackThread) + 1}
	k.base = h + int(float64(h)*stackOver)
	k.x = s.steps(k.n)
	k.want = make([]int, k.n)
	for _, kg := range v.WantKg {
		k.most = max(k.most, kg)
	}
	for i := range k.want {
		if k.most > 0 {
			k.want[i] = int(float64(h)*weekly(v.WantKg, i)/k.most + 0.5)
		}
	}
	k.bands = k.sources()
	k.bought = newWeave(k.x, k.rows, k.row)
	return k
}

// sources makes two bands of each source: what it gives from the ground, and
// from store. Neighbours of a kind alternate.
func (k *stack) sources() []*band {
	var out []*band
	counts := [2]int{}
	for _, stored := range []bool{false, true} {
		for i := range k.view.Sources {
			s := &k.view.Sources[i]
			course, at, names := s.FreshKg, 0, [2]string{"ground", "ground2"}
			if stored {
				course, at, names = s.StoredKg, 1, [2]string{"store", "store2"}
			}
			if !gives(course) {
				continue
			}
			out = append(out, &band{source: s, stored: stored, class: names[counts[at]%2],
				weave: newWeave(k.x, k.rows, k.row), tried: newWeave(k.x, k.rows, k.row)})
			counts[at]++
		}
	}
	return out
}

func gives(course []float64) bool {
	for _, v := range course {
		if v > 0 {
			return true
		}
	}
	return false
}

// row is the lower edge of a thread; the highest is cut by the want.
func (k *stack) row(step, row int) int {
	return k.base - min(k.want[step], tenths(stackThread*float64(row)))
}

// lay gives every thread at every step to a source, or leaves it open.
func (k *stack) lay() {
	for i := range k.n {
		for j := 0; j < k.rows && k.row(i, j) > k.base-k.want[i]; j++ {
			middle := float64(2*k.base-k.row(i, j)-k.row(i, j+1)) / 2 / float64(k.want[i])
			if k.options.Plain {
				k.layPlain(i, j, middle)
			} else {
				k.layThread(i, j, middle)
			}
		}
	}
	k.spare()
}

// layThread lays a thread by the odds that its middle is reached, a share of the
// want. The part of the way through the sources is that of the threads drawn
// which end before this one.
func (k *stack) layThread(step, row int, middle float64) {
	v := &k.view.Ribbon
	ground, food := reach(&v.Ground, step, middle), reach(&v.Food, step, middle)
	t := thresholds[row%desk.Threads]
	switch {
	case holds(ground, row):
		k.give(step, row, false, t/ground)
	case holds(food, row):
		k.give(step, row, true, (t-ground)/(food-ground))
	case buys(v) && holds(reach(&v.Bought, step, middle), row):
		k.bought.fill(step, row)
	}
}

// layPlain lays the middle year, source upon source.
func (k *stack) layPlain(step, row int, middle float64) {
	v := &k.view.Ribbon
	ground, food := heightAt(&v.Ground, step, middleYear), heightAt(&v.Food, step, middleYear)
	switch {
	case middle < ground:
		k.give(step, row, false, middle/ground)
	case middle < food:
		k.give(step, row, true, (middle-ground)/(food-ground))
	case buys(v) && middle < heightAt(&v.Bought, step, middleYear):
		k.bought.fill(step, row)
	}
}

// give fills a cell for the source at a part of the way through the sources of
// the week, 0-1, in their order.
func (k *stack) give(step, row int, stored bool, part float64) {
	sum := 0.0
	for _, b := range k.bands {
		if b.stored == stored {
			sum += b.course(step)
		}
	}
	left := part * sum
	var last *band
	for _, b := range k.bands {
		if b.stored != stored || b.course(step) <= 0 {
			continue
		}
		last = b
		if left < b.course(step) {
			break
		}
		left -= b.course(step)
	}
	if last == nil {
		return
	}
	if k.onlyTried(last, step, left) {
		last.tried.fill(step, row)
		return
	}
	last.weave.fill(step, row)
}

func (b *band) course(step int) float64 {
	if b.stored {
		return weekly(b.source.StoredKg, step)
	}
	return weekly(b.source.FreshKg, step)
}

// worthShowing is the share of the greatest want by which a source must give
// more for the change to be stitched.
const worthShowing = 0.06

// onlyTried tells whether a part of what a source gives, counted in kg from its
// beginning, comes only of the change being tried.
func (k *stack) onlyTried(b *band, step int, kg float64) bool {
	if k.view.Before == nil {
		return false
	}
	before := 0.0
	for i := range k.view.Before.Sources {
		s := &k.view.Before.Sources[i]
		if s.Planting == b.source.Planting && s.Batch == b.source.Batch && s.Store == b.source.Store {
			before += (&band{source: s, stored: b.stored}).course(step)
		}
	}
	return b.course(step)-before > worthShowing*k.most && kg >= before
}

// spare lays what is to spare above the want.
func (k *stack) spare() {
	sum, weeks := 0.0, 0
	for _, kg := range k.view.WantKg {
		if kg > 0 {
			sum, weeks = sum+kg, weeks+1
		}
	}
	rows := int(k.options.HeightPX * stackOver / stackThread)
	k.over = newWeave(k.x, rows, func(step, row int) int {
		return k.base - k.want[step] - tenths(stackThread*float64(row))
	})
	if weeks == 0 {
		return
	}
	mean := k.options.HeightPX * sum / float64(weeks) / k.most
	for i := range min(k.n, len(k.view.Ribbon.Over[0])) {
		for j := range rows {
			if holds(exceeds(&k.view.Ribbon, i, (float64(j)+0.5)*stackThread/mean), j) {
				k.over.fill(i, j)
			}
		}
	}
}

// poor is the poor year's edge.
func (k *stack) poor(step int) int {
	return int(float64(k.want[step]) * meanOfWeek(k.n, step, func(i int) float64 {
		return heightAt(&k.view.Ribbon.Food, i, poorYear)
	}))
}

// gapAt tells whether a day lies in one of the gaps.
func gapAt(gaps []desk.GapView, day cal.Date) bool {
	for _, g := range gaps {
		if day >= g.First && day <= g.Last {
			return true
		}
	}
	return false
}
