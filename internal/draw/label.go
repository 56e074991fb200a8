package draw

import "garner/internal/desk"

// run is a stretch of steps, and how wide it is [tenths of px].
type run struct{ from, to, width int }

// longest returns the widest run of steps that fulfil a condition.
func longest(x []int, is func(step int) bool) run {
	var best run
	from := -1
	for i := range len(x) {
		on := i < len(x)-1 && is(i)
		if on && from < 0 {
			from = i
		}
		if !on && from >= 0 {
			if w := x[i] - x[from]; w > best.width {
				best = run{from, i, w}
			}
			from = -1
		}
	}
	return best
}

// labelSize is the size of words upon a ribbon [px].
const labelSize = 13

func (r run) holds(words string) bool {
	return words != "" && float64(r.width)/10 >= widthOf(words, labelSize)+6
}

// words sets the names of the kinds, each upon its widest run, where it has room.
func (r *ribbon) words(c *sheet) {
	w := r.options.Words
	for _, l := range []struct {
		words, class string
		run          run
		above        bool
	}{
		{w.Ground, "mid m t-on", r.mostly(ground, 7), false},
		{w.Store, "mid m t-ink halo wide", r.mostly(store, 7), false},
		{w.Bought, "mid m t-ink halo wide", r.mostly(bought, 6), false},
		{w.Short, "mid m t-ink halo", r.mostly(none, 8), false},
		{w.Spare, "mid m t-ink halo wide", r.sparing(), true},
	} {
		if !l.run.holds(l.words) {
			continue
		}
		x := float64(r.x[l.run.from]+r.x[l.run.to]) / 20
		h := r.want[(l.run.from+l.run.to)/2]
		y := float64(r.base-h/2)/10 + 4.5
		if l.above {
			y = float64(r.base-h)/10 - 2
		}
		c.text(l.class, x, y, l.words)
	}
}

// mostly is the widest run where a number of the ten threads are of a kind and
// the want is tall enough for words.
func (r *ribbon) mostly(k kind, threads int) run {
	return longest(r.x, func(i int) bool {
		n := 0
		for j := range r.kinds {
			if r.kinds[j][i] == k {
				n++
			}
		}
		return r.want[i] >= 160 && n >= threads
	})
}

// sparing is the widest run where a third of the want or more is to spare in the
// middle year.
func (r *ribbon) sparing() run {
	return longest(r.x, func(i int) bool {
		return i < len(r.view.Over[1]) && r.view.Over[1][i] > 0.3 && r.want[i] >= 100
	})
}

// ShareOut gives each word to the first ribbon that has room for it, so that the
// words are set once on a page. A nil view stands for a row too low for words.
func ShareOut(views []*desk.RibbonView, s Scale, w RibbonWords, heightPX float64) []RibbonWords {
	out := make([]RibbonWords, len(views))
	for i, v := range views {
		if v == nil {
			continue
		}
		r := newRibbon(v, s, RibbonOptions{HeightPX: heightPX})
		give := func(words, to *string, at run) {
			if at.holds(*words) {
				*to, *words = *words, ""
			}
		}
		give(&w.Ground, &out[i].Ground, r.mostly(ground, 7))
		give(&w.Store, &out[i].Store, r.mostly(store, 7))
		give(&w.Bought, &out[i].Bought, r.mostly(bought, 6))
		give(&w.Short, &out[i].Short, r.mostly(none, 8))
		give(&w.Spare, &out[i].Spare, r.sparing())
	}
	return out
}
