package draw

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
)

// line draws the want, thick in the gaps.
func (k *stack) line(c *sheet) {
	r := ribbon{view: &k.view.Ribbon, scale: k.scale, n: k.n, x: k.x, want: k.want, base: k.base}
	r.shortAt = func(step int) bool {
		return gapAt(k.view.Gaps, k.scale.From+cal.Date(7*weekOf(step)))
	}
	usual, short := r.wantLines()
	c.path("line", usual)
	c.path("want short", short)
	if n := k.n - 1; n >= 0 && k.want[n] > 0 {
		c.text("t-name", k.scale.WidthPX+8, float64(k.base-k.want[n])/10+5, k.options.Want)
	}
}

// names sets each source's name upon its widest stretch, on a plate of paper, or
// in paper's colour upon a firm solid.
func (k *stack) names(c *sheet) {
	var set []box
	for _, b := range k.bands {
		words := b.source.Letter
		if k.options.Source != nil {
			words = k.options.Source(*b.source, b.stored)
		}
		stretch := longest(k.x, func(i int) bool { return b.fills(i) >= 0.5*float64(k.want[i]) && k.want[i] > 240 })
		if !stretch.fits(words) {
			words = b.source.Letter
		}
		if !stretch.fits(words) {
			stretch = longest(k.x, func(i int) bool { return b.fills(i) > 0.15*float64(k.want[i]) && k.want[i] > 240 })
		}
		if stretch.fits(words) {
			k.name(c, b, stretch, words, &set)
		}
	}
	bought := longest(k.x, func(i int) bool { return k.want[i] > 240 && float64(height(k.bought, i)) > 0.4*float64(k.want[i]) })
	if bought.fits(k.options.Bought) {
		at := (bought.from + bought.to) / 2
		y := (float64(k.base) - k.filled(at) - float64(height(k.bought, at))/2) / 10
		c.text("mid m t-ink halo wide f14", bought.middle(k.x), y+5, k.options.Bought)
	}
	open := longest(k.x, func(i int) bool {
		return k.want[i] > 240 && k.filled(i)+float64(height(k.bought, i)) < 0.15*float64(k.want[i])
	})
	if open.fits(k.options.Short) {
		y := float64(k.base-k.want[(open.from+open.to)/2]/2) / 10
		c.text("mid m t-ink halo f14", open.middle(k.x), y+5, k.options.Short)
	}
}

// box is where words already stand [px].
type box struct{ x, y, half float64 }

func (b box) meets(o box) bool {
	return math.Abs(b.x-o.x) < b.half+o.half+2 && math.Abs(b.y-o.y) < 24
}

// name sets a band's name at the first of a few heights where it meets no other;
// a name that finds none is left out, for the lanes name every planting.
func (k *stack) name(c *sheet, b *band, r run, words string, set *[]box) {
	want := float64(k.want[(r.from+r.to)/2]) / 10
	at := box{x: r.middle(k.x), half: widthOf(words, 14)/2 + 6}
	for _, share := range []float64{0.45, 0.7, 0.2, 0.87} {
		at.y = float64(k.base)/10 - want*share
		if slices.ContainsFunc(*set, at.meets) {
			continue
		}
		*set = append(*set, at)
		class := "mid m f14 t-on"
		if b.stored || k.tries(b, r) || !k.firm(b, r) {
			c.rect("plate", at.x-at.half, at.y-11, 2*at.half, 22)
			class = "mid m f14 t-ink"
		}
		c.text(class, at.x, at.y+5, words)
		return
	}
}

// firm tells whether a band fills nearly the whole want over a stretch, so that
// words may stand on it without a plate.
func (k *stack) firm(b *band, r run) bool {
	for i := r.from; i < r.to; i++ {
		if b.fills(i) < 0.95*float64(k.want[i]) {
			return false
		}
	}
	return true
}

// tries tells whether a band is mostly stitched over a stretch.
func (k *stack) tries(b *band, r run) bool {
	n := 0
	for i := r.from; i < r.to; i++ {
		if height(b.tried, i) > height(b.weave, i) {
			n++
		}
	}
	return 2*n > r.to-r.from
}

func (r run) middle(x []int) float64 { return float64(x[r.from]+x[r.to]) / 20 }

func (r run) fits(words string) bool {
	return words != "" && float64(r.width)/10 >= widthOf(words, 14)+10
}

// fills is the height a band fills at a step [tenths of px].
func (b *band) fills(step int) float64 { return float64(height(b.weave, step) + height(b.tried, step)) }

// filled is the height all sources fill at a step [tenths of px].
func (k *stack) filled(step int) (sum float64) {
	for _, b := range k.bands {
		sum += b.fills(step)
	}
	return sum
}

func height(w *weave, column int) (sum int) {
	for row := range w.rows {
		if w.filled(column, row) {
			sum += w.y(column, row) - w.y(column, row+1)
		}
	}
	return sum
}

// figures sets three figures of the scale at the left: none, half and whole of a
// round figure not over the greatest want.
func (k *stack) figures(c *sheet) {
	if k.options.Figure == nil || k.most <= 0 {
		return
	}
	top := round(k.most)
	for _, kg := range []float64{0, top / 2, top} {
		y := float64(k.base)/10 - kg/k.most*k.options.HeightPX
		c.text("end", -8, y+4, k.options.Figure(kg))
	}
}

// round returns the greatest of 1, 2, 3, 4, 5 or 8 times a power of ten that is
// not over a value (> 0): each is easily halved.
func round(v float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(v)))
	best := unit
	for _, n := range []float64{2, 3, 4, 5, 8} {
		if n*unit <= v*(1+1e-9) {
			best = n * unit
		}
	}
	return best
}

// gaps underlines the gaps; with a change tried, the weeks it mends.
func (k *stack) gaps(c *sheet) {
	y := float64(k.base)/10 + 6
	var set []box
	say := func(first, last cal.Date, words string) {
		from, to := k.scale.X(first), k.scale.X(last+1)
		if to <= from {
			return
		}
		c.level("pen", from, to, y)
		half := widthOf(words, 14)/2 + 4
		at := box{x: max(half, min(k.scale.WidthPX-half, (from+to)/2)), y: y, half: half}
		if words == "" || slices.ContainsFunc(set, at.meets) {
			return
		}
		set = append(set, at)
		c.text("t-pen mid halo f14", at.x, y+17, words)
	}
	if b := k.view.Before; b != nil {
		for _, m := range mended(b.Gaps, k.view.Gaps) {
			words := ""
			if k.options.Mended != nil {
				words = k.options.Mended(m.Weeks)
			}
			say(m.First, m.Last, words)
		}
		return
	}
	for _, g := range k.view.Gaps {
		words := ""
		if k.options.Gap != nil {
			words = k.options.Gap(g)
		}
		say(g.First, g.Last, words)
	}
}

// mended returns the runs of weeks that were in a gap and no longer are.
func mended(before, now []desk.GapView) []desk.GapView {
	var out []desk.GapView
	for _, g := range before {
		open := false
		for day := g.First; day <= g.Last; day += 7 {
			switch {
			case gapAt(now, day):
				open = false
			case open:
				out[len(out)-1].Last = min(day+6, g.Last)
				out[len(out)-1].Weeks++
			default:
				out = append(out, desk.GapView{First: day, Last: min(day+6, g.Last), Weeks: 1})
				open = true
			}
		}
	}
	return out
}
