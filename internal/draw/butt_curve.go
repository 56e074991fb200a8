package draw

import "garner/internal/desk"

// ButtCurveOptions say how the sizes of a butt are drawn.
type ButtCurveOptions struct {
	WidthPX, HeightPX float64
	Label             string // what it shows, in text
	Litres            func(l float64) string
	Percent           func(share float64) string
	Middle, Dry       string // names of the two lines
	Own               string // the words at the own size; nothing: none is told
}

// Room round the curve of a butt [px].
const (
	buttLeft  = 44.0
	buttRight = 64.0
	buttTop   = 22.0
	buttFoot  = 34.0
)

// ButtCurve draws which share of the year's need each size serves: a firm line in the
// middle of the futures, a thin one in the driest of ten, the own size marked. Sizes
// stand at even steps, as they are sold.
func ButtCurve(v *desk.ButtView, o ButtCurveOptions) string {
	var c sheet
	c.frame("butt-curve", "img", o.Label, o.WidthPX, o.HeightPX, false)
	foot, right := o.HeightPX-buttFoot, o.WidthPX-buttRight
	y := func(share float64) float64 { return foot - share*(foot-buttTop) }
	step := (right - buttLeft) / float64(max(1, len(v.Sizes)-1))
	x := func(i float64) float64 { return buttLeft + i*step }
	for _, share := range []float64{0, 0.5, 1} {
		c.level("hair", buttLeft, right, y(share))
		c.text("end f12", buttLeft-6, y(share)+4, o.Percent(share))
	}
	var middle, dry, under pen
	under.move(tenths(x(0)), tenths(foot))
	for i := range v.Sizes {
		at := tenths(x(float64(i)))
		if i == 0 {
			middle.move(at, tenths(y(v.Sizes[i].Share)))
			dry.move(at, tenths(y(v.Sizes[i].ShareDry)))
		}
		middle.line(at, tenths(y(v.Sizes[i].Share)))
		dry.line(at, tenths(y(v.Sizes[i].ShareDry)))
		under.line(at, tenths(y(v.Sizes[i].ShareDry)))
		if i%buttEvery(step) == 0 {
			c.text("mid f12", x(float64(i)), foot+16, o.Litres(v.Sizes[i].HoldsL))
		}
	}
	under.line(tenths(x(float64(len(v.Sizes)-1))), tenths(foot))
	under.close()
	c.path("water water-bar", under.String())
	c.path("thin", dry.String())
	c.path("line", middle.String())
	c.level("base", buttLeft, right, foot)
	if n := len(v.Sizes) - 1; n >= 0 {
		top, low := y(v.Sizes[n].Share), y(v.Sizes[n].ShareDry)
		c.text("t-ink f14", right+6, top+4, o.Middle)
		c.text("f14", right+6, max(low, top+17)+4, o.Dry)
	}
	if v.Own != nil && o.Own != "" {
		at := x(placeOf(v, v.Own.HoldsL))
		c.upright("pen today", at, buttTop-6, foot)
		half := widthOf(o.Own, labelSize) / 2
		c.text("t-pen mid halo", max(half, min(o.WidthPX-half, at)), buttTop-9, o.Own)
	}
	return c.done()
}

// buttEvery tells of how many sizes one is named, so that names do not touch.
func buttEvery(step float64) int {
	every := 1
	for float64(every)*step < 46 {
		every++
	}
	return every
}

// placeOf is where a size stands among the sizes, between them by its litres.
func placeOf(v *desk.ButtView, holdsL float64) float64 {
	last := len(v.Sizes) - 1
	for i := range last {
		low, high := v.Sizes[i].HoldsL, v.Sizes[i+1].HoldsL
		if holdsL <= low {
			return float64(i)
		}
		if holdsL < high {
			return float64(i) + (holdsL-low)/(high-low)
		}
	}
	return float64(last)
}
