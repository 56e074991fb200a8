package draw

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
)

// YearOptions say how the year of one way of starting is drawn.
type YearOptions struct {
	HeightPX float64 // of a chance of ten years in ten
	Label    string  // what it shows, in text
	Today    cal.Date
	Wanted   float64                    // chance at which a line is drawn, 0-1
	Day      func(date cal.Date) string // a day that ends a window
	AllYear  string                     // in place of days where no day ends it
	Ready    bool                       // when it is ready is drawn under it
}

// The room round the chances of a year [px].
const (
	yearTop    = 20 // days that end the windows
	yearFall   = 12 // from the line down to what is ready
	yearThread = 1.4
	yearFoot   = 18 // days on which it is ready
	yearPlain  = 6  // in place of all of it where nothing ready is drawn
)

// Year draws one way of starting over a year: above the line the chance of a
// usable crop by the day of sowing or planting, darker inside the windows, and
// under it when what was begun inside a window comes ready, woven of ten threads,
// each a year of ten from the quick to the slow. Slanting lines lead from a
// window to its harvest.
func Year(v *desk.StartView, s Scale, o YearOptions) string {
	y := &year{view: v, scale: s, options: o, base: yearTop + o.HeightPX}
	height := y.base + yearPlain
	o.Ready = o.Ready && slices.ContainsFunc(v.Spells, func(w desk.SpellView) bool { return !w.AllYear() })
	y.options = o
	if o.Ready {
		height = y.base + yearFall + yearThread*desk.Threads + yearFoot
	}
	var c sheet
	c.frame("year", "img", o.Label, s.WidthPX, height, false)
	c.path("month", monthLines(s, yearTop-4, height))
	c.path("chance", y.area(0, len(v.Chance)-1))
	for i := range v.Spells {
		from, to := int(v.Spells[i].First-s.From), int(v.Spells[i].Last-s.From)
		c.path("chance in", y.area(from, min(to, len(v.Chance)-1)))
	}
	if o.Wanted > 0 {
		end := s.at(float64(len(v.Chance)))
		c.level("hair dashed", 0, end, y.base-o.Wanted*o.HeightPX+.5)
	}
	c.path("line", y.line())
	c.level("base", 0, s.WidthPX, y.base+.5)
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), yearTop-4, height)
	}
	y.names(&c, height)
	return c.done()
}

// year is a year being drawn.
type year struct {
	view    *desk.StartView
	scale   Scale
	options YearOptions
	base    float64
}

func (y *year) height(day int) int {
	return tenths(y.base - max(0, min(1, y.view.Chance[day]))*y.options.HeightPX)
}

// area is the chance from a day to another as an area over the line; empty where
// there is none.
func (y *year) area(from, to int) string {
	if from < 0 || to < from || to >= len(y.view.Chance) {
		return ""
	}
	var p pen
	p.move(tenths(y.scale.at(float64(from))), tenths(y.base))
	for day := from; day <= to; day++ {
		p.line(tenths(y.scale.at(float64(day))), y.height(day))
	}
	p.line(p.x, tenths(y.base))
	p.close()
	return p.String()
}

// line is the upper edge of the chance, left out where there is next to none.
func (y *year) line() string {
	var p pen
	on := false
	for day, chance := range y.view.Chance {
		x := tenths(y.scale.at(float64(day)))
		if chance < 0.005 {
			on = false
			continue
		}
		if !on && day > 0 {
			p.move(x, tenths(y.base))
		} else if !on {
			p.move(x, y.height(day))
		}
		p.line(x, y.height(day))
		on = true
	}
	return p.String()
}

// names sets the days at the ends of the windows and draws what is ready.
func (y *year) names(c *sheet, height float64) {
	above, below := row{y: yearTop - 7, scale: y.scale}, row{y: height - 5, scale: y.scale}
	top := y.base + yearFall
	for i := range y.view.Spells {
		w := &y.view.Spells[i]
		if w.AllYear() {
			above.set(c, y.scale.at(float64(len(y.view.Chance))/2), y.options.AllYear)
			continue
		}
		above.pair(c, w.First, w.Last, y.options.Day)
		if !y.options.Ready {
			continue
		}
		for _, q := range [2][2]cal.Date{{w.First, w.ReadyFrom}, {w.Last, w.ReadyTo}} {
			x, to := y.scale.X(q[0]), y.scale.X(q[1])
			c.path("thin", "M"+px(x)+" "+px(y.base)+"L"+px(to)+" "+px(top))
		}
		c.path("ground", y.threads(w, top))
		below.pair(c, w.ReadyFrom, w.ReadyTo, y.options.Day)
	}
}

// threads are ten years of what is ready, each from the day the first sowing is
// to the day the last one is, in the order in which ribbons fray.
func (y *year) threads(w *desk.SpellView, top float64) string {
	var p pen
	for j := range desk.Threads {
		quick := int(thresholds[j] * desk.Threads)
		from, to := y.scale.X(w.Early[quick]), y.scale.X(max(w.Early[quick]+1, w.Late[desk.Threads-1-quick]))
		low := top + yearThread*float64(desk.Threads-j)
		p.move(tenths(from), tenths(low))
		p.line(tenths(from), tenths(low-yearThread))
		p.line(tenths(to), tenths(low-yearThread))
		p.line(tenths(to), tenths(low))
		p.close()
	}
	return p.String()
}

// wordGap keeps words of a row apart [px].
const wordGap = 9

// row is a row of words that do not run into each other.
type row struct {
	y, end float64
	scale  Scale
}

// pair sets two days, as one where there is no room between them.
func (r *row) pair(c *sheet, first, last cal.Date, say func(cal.Date) string) {
	if say == nil {
		return
	}
	from, to := r.scale.X(first), r.scale.X(last)
	if last-first > 1 && to-from > semiBold*(widthOf(say(first), labelSize)+widthOf(say(last), labelSize))/2+wordGap {
		r.set(c, from, say(first))
		r.set(c, to, say(last))
		return
	}
	words := say(first)
	if other := say(last); last > first && other != words {
		words += " – " + other
	}
	r.set(c, (from+to)/2, words)
}

// set puts words in the middle over a place, moved where they would leave the
// drawing or run into those before; what has no room is left out.
func (r *row) set(c *sheet, x float64, words string) {
	half := semiBold*widthOf(words, labelSize)/2 + 1
	x = max(x, half, r.end+half+wordGap)
	if x+half > r.scale.WidthPX {
		x = r.scale.WidthPX - half
	}
	if words == "" || r.end > 0 && x-half < r.end+wordGap {
		return
	}
	c.text("mid t-ink halo", x, r.y, words)
	r.end = x + half
}
