package draw

import "garner/internal/cal"

// RiskSumsOptions say how sums of warmth are drawn.
type RiskSumsOptions struct {
	Scale  Scale
	Today  cal.Date
	Label  string // what it shows, in text
	Axis   AxisTexts
	Events []SumLevel
	High   float64 // height [px]
}

// sumLabel is how far apart levels are whose names stand one over the other, and
// sumInset where names begin [px].
const (
	sumLabel = 14.0
	sumInset = 4.0
)

// SumLevel is a sum at which something happens.
type SumLevel struct {
	SumCd float64
	Words string
}

// RiskSums draws the sum of warmth of ten futures, each a fine line, with the sums at
// which something happens as levels.
func RiskSums(sums [][]float64, from cal.Date, o RiskSumsOptions) string {
	const top, foot = 24.0, 8.0
	most := 1.0
	for _, e := range o.Events {
		most = max(most, e.SumCd*1.12)
	}
	height := top + o.High + foot
	y := func(v float64) float64 { return top + o.High*(1-min(1, v/most)) }
	var c sheet
	c.frame("risk-sums", "img", o.Label, o.Scale.WidthPX, height, false)
	c.path("hair", monthLines(o.Scale, 0, height))
	c.monthNames(o.Scale, 14, o.Axis)
	for _, sum := range sums {
		var p pen
		drawn := false
		for i, v := range sum {
			d := from + cal.Date(i)
			if !o.Scale.has(d) {
				continue
			}
			x, at := tenths(o.Scale.X(d+1)), tenths(y(v))
			switch {
			case v > most || i > 0 && v < sum[i-1]:
				drawn = false
			case !drawn:
				p.move(x, at)
				drawn = true
			default:
				p.line(x, at)
			}
		}
		c.path("fine", p.String())
	}
	c.level("base", 0, o.Scale.WidthPX, top+o.High)
	at, x := -sumLabel, sumInset
	for _, e := range o.Events {
		c.level("level", 0, o.Scale.WidthPX, y(e.SumCd))
		if at-y(e.SumCd) < sumLabel && at > 0 {
			x += widthOf(e.Words, labelSize) + 60 // beside the name of the level just under it
		} else {
			x = sumInset
		}
		at = y(e.SumCd)
		c.text("t-ink halo f12", min(x, o.Scale.WidthPX-widthOf(e.Words, 12)), at-3, e.Words)
	}
	if o.Scale.has(o.Today) {
		c.upright("pen today", o.Scale.X(o.Today), 18, height)
	}
	return c.done()
}
