package draw

import (
	"math"
	"slices"
	"strconv"
)

// Nights are the minima of nights to be drawn: ten values for each, from low to high.
type Nights struct {
	Each  [][10]float64 // nights one by one
	Weeks [][10]float64 // the coldest of each week after them
	Names []string      // of the nights, short; empty: no name
	Week  []string      // likewise of the weeks
	Kills []KillLevel   // temperatures that matter, drawn as level lines
	Label string        // what it shows, in text
	After string        // names the part that is by the week
	Unit  string        // of the scale
}

// KillLevel is a temperature that hurts something.
type KillLevel struct {
	C    float64
	Name string
}

// Sizes of a drawing of nights [px].
const (
	nightPX     = 34.0
	nightWeekPX = 20.0
	nightLeft   = 44.0
	nightHeight = 150.0
	nightTop    = 22.0
	nightFoot   = 26.0
	nightGap    = 18.0
	killName    = 14.0 // a line of a name
)

// Night draws ten fine lines, each through the same share of the futures night by night,
// the middle two firm, over the temperatures that hurt: where lines dip under such a
// level, counting them gives the odds.
func Night(n Nights) string {
	width := nightLeft + nightPX*float64(len(n.Each))
	if len(n.Weeks) > 0 {
		width += nightGap + nightWeekPX*float64(len(n.Weeks))
	}
	low, high := n.bounds()
	y := func(c float64) float64 {
		return nightTop + (high-c)/(high-low)*(nightHeight-nightTop)
	}
	var c sheet
	c.frame("nights", "img", n.Label, width, nightHeight+nightFoot, false)
	for _, at := range scaleOf(low, high) {
		class := "hair"
		if at == 0 {
			class = "base"
		}
		c.level(class, nightLeft, width, y(at))
		c.text("end f13", nightLeft-6, y(at)+4.5, signed(at))
	}
	c.text("f13", 0, 12, n.Unit)
	c.spread(n.Each, nightLeft, nightPX, y)
	c.nightNames(n.Names, nightLeft, nightPX)
	if len(n.Weeks) > 0 {
		left := nightLeft + nightPX*float64(len(n.Each)) + nightGap
		c.upright("hair", left-nightGap/2, nightTop-8, nightHeight)
		c.text("f13", left, 12, n.After)
		c.spread(n.Weeks, left, nightWeekPX, y)
		c.nightNames(n.Week, left, nightWeekPX)
	}
	c.kills(n.Kills, width, y)
	return c.done()
}

// bounds are the lowest and highest of the scale, in whole fives, zero within them.
func (n *Nights) bounds() (low, high float64) {
	for _, list := range [][][10]float64{n.Each, n.Weeks} {
		for _, tens := range list {
			low, high = min(low, tens[0]), max(high, tens[9])
		}
	}
	for _, k := range n.Kills {
		low, high = min(low, k.C), max(high, k.C)
	}
	return 5 * math.Floor(low/5), max(5, 5*math.Ceil(high/5))
}

// scaleOf are the figures of a scale: its ends, and zero.
func scaleOf(low, high float64) []float64 {
	return slices.Compact([]float64{low, 0, high})
}

// signed writes a whole temperature with a true minus.
func signed(c float64) string {
	if c < 0 {
		return "−" + strconv.Itoa(int(-c))
	}
	return strconv.Itoa(int(c))
}

// spread draws the ten lines of a run of nights.
func (c *sheet) spread(nights [][10]float64, left, step float64, y func(float64) float64) {
	for k := range 10 {
		class := "thin"
		if k == 4 || k == 5 {
			class = "line"
		}
		var p pen
		for i := range nights {
			x, at := tenths(left+step*(float64(i)+.5)), tenths(y(nights[i][k]))
			if i == 0 {
				p.move(x, at)
			}
			p.line(x, at)
		}
		if len(nights) > 0 {
			c.path(class, p.String())
		}
	}
}

func (c *sheet) nightNames(names []string, left, step float64) {
	for i, name := range names {
		c.text("mid f13", left+step*(float64(i)+.5), nightHeight+18, name)
	}
}

// kills draws the levels that hurt, each with its name over its end; a name that would
// stand on another is set over it.
func (c *sheet) kills(levels []KillLevel, width float64, y func(float64) float64) {
	var taken []float64
	for _, k := range levels {
		at := y(k.C)
		c.level("kill", nightLeft, width, at)
		row := at - 4
		for wordsNear(taken, row) {
			row -= killName
		}
		taken = append(taken, row)
		c.text("t-ink b f13 halo end", width-2, row, k.Name)
	}
}

// wordsNear tells whether a line of words is taken.
func wordsNear(taken []float64, row float64) bool {
	return slices.ContainsFunc(taken, func(t float64) bool { return math.Abs(t-row) < killName })
}
