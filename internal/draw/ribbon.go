package draw

import (
	"garner/internal/cal"
	"garner/internal/desk"
)

// RibbonOptions say how a ribbon is drawn.
type RibbonOptions struct {
	HeightPX float64          // of the greatest want
	Label    string           // what it shows, in text
	Today    cal.Date         // cal.None: no line for today
	Words    RibbonWords      // set upon the ribbon where there is room
	Small    bool             // one line of a table: no room for a line under a gap
	Plain    bool             // a plain block with a poor-year edge in place of threads
	Before   *desk.RibbonView // with a change tried: how it stood
	Months   bool             // hairlines where months begin
}

// RibbonWords name the kinds of food upon a ribbon; empty: not named.
type RibbonWords struct{ Ground, Store, Bought, Short, Spare string }

// The kinds of food of a thread at a step.
type kind uint8

const (
	none kind = iota
	ground
	store
	bought
	draft // filled only by what is being tried
	lost  // filled before, and not by what is being tried
	kinds
)

var classes = [kinds]string{ground: "ground", store: "store", bought: "bought", draft: "draft", lost: "lost"}

// overRows is how many threads of what is to spare find room above the want.
const overRows = 6

// ribbon is a ribbon being drawn. Heights are in tenths of a pixel, and y runs
// downwards.
type ribbon struct {
	view    *desk.RibbonView
	options RibbonOptions
	scale   Scale
	n       int   // steps
	x       []int // where they begin
	want    []int // height of the want, by step
	spare   int   // height of the mean want: what is to spare is a share of it
	base    int   // y of the ground
	height  int   // of the drawing
	kinds   [desk.Threads][]kind
	shortAt func(step int) bool // where the want's line is thick
}

// Ribbon draws one vegetable's want over time and what fills it. Ten threads lie
// one upon another under the want; thread j is solid where the share of futures
// in which food out of the ground reaches it is at least thresholds[j], else
// hatched where ground and store together do, gridded where these and what is bought do,
// else open. What is to spare lies
// dotted above the want by the same rule.
func Ribbon(v *desk.RibbonView, s Scale, o RibbonOptions) string {
	r := newRibbon(v, s, o)
	var c sheet
	c.frame("ribbon", "img", o.Label, s.WidthPX, float64(r.height)/10, true)
	if o.Months {
		c.path("month", monthLines(s, 0, float64(r.height)/10))
	}
	c.path("open", r.open())
	c.path("over", r.over())
	for _, k := range []kind{lost, bought, store, ground, draft} {
		c.path(classes[k], r.weave(k))
	}
	if o.Plain {
		c.edge(r.edge())
	}
	usual, short := r.wantLines()
	c.path("want", usual)
	c.path("want short", short)
	if g := v.Gap; g != nil && !o.Small {
		c.level("pen", s.X(g.First), s.X(g.Last+1), float64(r.base)/10+3.5)
	}
	r.words(&c)
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), -4, float64(r.height)/10+4)
	}
	return c.done()
}

func newRibbon(v *desk.RibbonView, s Scale, o RibbonOptions) *ribbon {
	h := tenths(o.HeightPX)
	r := &ribbon{view: v, options: o, scale: s, n: len(v.Food[0])}
	r.base = h + h*overRows/10
	r.height = r.base + 80
	if o.Small {
		r.height = r.base + 10
	}
	r.x = s.steps(r.n)
	r.want = make([]int, r.n)
	most, sum, weeks := 0.0, 0.0, 0
	for _, kg := range v.WantKg {
		most = max(most, kg)
		if kg > 0 {
			sum, weeks = sum+kg, weeks+1
		}
	}
	if weeks > 0 {
		r.spare = int(float64(h) * sum / float64(weeks) / most)
		for i := range r.want {
			r.want[i] = int(float64(h)*weekly(v.WantKg, i)/most + 0.5)
		}
	}
	r.sort()
	r.shortAt = r.short
	return r
}

// weekly returns a course's value in a step's week; 0 beyond its end.
func weekly(course []float64, step int) float64 {
	if k := weekOf(step); k < len(course) {
		return course[k]
	}
	return 0
}

func weekOf(step int) int { return int(float64(step) * desk.Step / 7) }

// sort decides the kind of every thread at every step.
func (r *ribbon) sort() {
	for j := range r.kinds {
		r.kinds[j] = make([]kind, r.n)
		for i := range r.n {
			if r.want[i] == 0 {
				continue
			}
			k := kindAt(r.view, j, i, r.options.Plain)
			if b := r.options.Before; b != nil && i < len(b.Food[j]) {
				k = compared(k, kindAt(b, j, i, r.options.Plain))
			}
			r.kinds[j][i] = k
		}
	}
}

// kindAt tells what a thread is at a step. Of a plain block every thread goes by
// the middle year.
func kindAt(v *desk.RibbonView, thread, step int, plain bool) kind {
	reaches := func(p float32) bool {
		if plain {
			return p >= 0.5
		}
		return holds(float64(p), thread)
	}
	switch {
	case reaches(v.Ground[thread][step]):
		return ground
	case reaches(v.Food[thread][step]):
		return store
	case buys(v) && reaches(v.Bought[thread][step]):
		return bought
	}
	return none
}

// buys tells whether anything is bought.
func buys(v *desk.RibbonView) bool { return len(v.Bought[0]) > 0 }

func compared(now, before kind) kind {
	switch {
	case now != none && before == none:
		return draft
	case now == none && before != none:
		return lost
	}
	return now
}

// row is the lower edge of a thread at a step.
func (r *ribbon) row(step, thread int) int { return r.base - r.want[step]*thread/desk.Threads }

func (r *ribbon) weave(k kind) string {
	w := newWeave(r.x, desk.Threads, r.row)
	for j := range r.kinds {
		for i, at := range r.kinds[j] {
			if at == k {
				w.fill(i, j)
			}
		}
	}
	return w.outline()
}

// open is the whole want, upon which the threads are laid.
func (r *ribbon) open() string {
	w := newWeave(r.x, 1, func(step, row int) int { return r.base - r.want[step]*row })
	for i, h := range r.want {
		if h > 0 {
			w.fill(i, 0)
		}
	}
	return w.outline()
}

// over is what is to spare, in threads above the want.
func (r *ribbon) over() string {
	w := newWeave(r.x, overRows, func(step, row int) int { return r.base - r.want[step] - r.spare*row/desk.Threads })
	for i := range min(r.n, len(r.view.Over[0])) {
		for k := range overRows {
			if holds(exceeds(r.view, i, (float64(k)+0.5)/desk.Threads), k) {
				w.fill(i, k)
			}
		}
	}
	return w.outline()
}

// exceeds is the share of futures in which what is to spare at a step is at
// least a share of the want: a straight line between the poor, middle and good
// year, and as much again beyond the good one as it lies over the middle.
func exceeds(v *desk.RibbonView, step int, share float64) float64 {
	poor, middle, good := float64(v.Over[0][step]), float64(v.Over[1][step]), float64(v.Over[2][step])
	switch {
	case share <= poor:
		return 1 - 0.1*share/poor
	case share <= middle:
		return 0.9 - 0.4*(share-poor)/(middle-poor)
	case share <= good:
		return 0.5 - 0.4*(share-middle)/(good-middle)
	case share < 2*good-middle:
		return 0.1 - 0.1*(share-good)/(good-middle)
	}
	return 0
}

// wantLines is the want as a line of steps, in two weights: the second where it
// is short more often than not.
func (r *ribbon) wantLines() (usual, short string) {
	var lines [2]pen
	last := -1 // the line drawn at the step before
	for i, h := range r.want {
		if h == 0 {
			last = -1
			continue
		}
		which := 0
		if r.shortAt(i) {
			which = 1
		}
		p, y := &lines[which], r.base-h
		if last != which {
			p.move(r.x[i], y)
		}
		p.corner(r.x[i+1], y)
		last = which
	}
	return lines[0].String(), lines[1].String()
}

// lacking is the share of the want that must be there for a week not to be short.
const lacking = 0.9

// short tells whether a step's week is short more often than not: as the view
// says, or where it does not say, by its gap and its threads.
func (r *ribbon) short(step int) bool {
	week := weekOf(step)
	if c := r.view.Chance; week < len(c) {
		return c[week] >= 0.5
	}
	if g := r.view.Gap; g != nil {
		if day := r.scale.From + cal.Date(7*week); day >= g.First.Monday() && day <= g.Last {
			return true
		}
	}
	return meanOfWeek(r.n, step, func(i int) float64 { return reach(&r.view.Food, i, lacking) }) < 0.5
}
