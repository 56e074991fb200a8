package draw

// LightCurveOptions say how a bed's light through the year is drawn.
type LightCurveOptions struct {
	WidthPX, HeightPX float64
	Label             string // what it shows, in text
	Month             int    // 1-12, marked
	Months            [12]string
	Percent           func(share float64) string
}

// curveTop and curveFoot are the room over the full light and under nothing [px].
const (
	curveTop  = 16.0
	curveFoot = 17.0
)

// LightCurve draws twelve months' light as an area from nothing to the open
// sky's, with the month marked and its most and least told.
func LightCurve(light [12]float64, o LightCurveOptions) string {
	var c sheet
	c.frame("light-curve", "img", o.Label, o.WidthPX, o.HeightPX, false)
	foot := o.HeightPX - curveFoot
	x := func(month int) float64 { return (float64(month) + 0.5) * o.WidthPX / 12 }
	y := func(share float64) float64 { return foot - share*(foot-curveTop) }
	var fill, top pen
	fill.move(0, tenths(foot))
	fill.line(0, tenths(y((light[0]+light[11])/2)))
	top.move(0, tenths(y((light[0]+light[11])/2)))
	for m, share := range light {
		fill.line(tenths(x(m)), tenths(y(share)))
		top.line(tenths(x(m)), tenths(y(share)))
	}
	top.line(tenths(o.WidthPX), tenths(y((light[0]+light[11])/2)))
	fill.line(tenths(o.WidthPX), tenths(y((light[0]+light[11])/2)))
	fill.line(tenths(o.WidthPX), tenths(foot))
	fill.close()
	c.path("curve-area", fill.String())
	c.level("hair", 0, o.WidthPX, y(1))
	c.path("line", top.String())
	c.level("base", 0, o.WidthPX, foot)
	c.upright("pen today", x(o.Month-1), y(1)-3, foot)
	for m, name := range o.Months {
		class := "mid f12"
		if m == o.Month-1 {
			class = "mid f12 t-pen"
		}
		c.text(class, x(m), o.HeightPX-4, name)
	}
	most, least := 0, 0
	for m := range light {
		if light[m] > light[most] {
			most = m
		}
		if light[m] < light[least] {
			least = m
		}
	}
	name := func(m int) {
		text := o.Percent(light[m])
		half := widthOf(text, labelSize) / 2
		at := y(light[m]) - 5
		c.text("mid t-ink halo", max(half, min(o.WidthPX-half, x(m))), max(curveTop-4, at), text)
	}
	name(most)
	if light[most]-light[least] >= 0.05 {
		text := o.Percent(light[least])
		half := widthOf(text, labelSize) / 2
		c.text("mid t-ink halo", max(half, min(o.WidthPX-half, x(least))), min(foot-4, y(light[least])+15), text)
	}
	return c.done()
}
