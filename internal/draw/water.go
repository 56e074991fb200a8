package draw

// WaterBarOptions say how litres are drawn.
type WaterBarOptions struct {
	WidthPX, HeightPX float64
	MostL             float64 // litres of the whole width
	Label             string  // what it shows, in text
}

// WaterBar draws litres by length: level lines as far as the middle week asks, open to
// the driest of ten, and an upright line at what is to be given now.
func WaterBar(nowL, weekL, dryL float64, o WaterBarOptions) string {
	var c sheet
	c.frame("litre-bar", "img", o.Label, o.WidthPX, o.HeightPX, true)
	x := func(litres float64) float64 {
		if o.MostL <= 0 {
			return 0
		}
		return min(1, max(0, litres/o.MostL)) * (o.WidthPX - barInset)
	}
	if dryL > weekL {
		c.rect("water-dry", x(weekL), barInset, x(dryL)-x(weekL), o.HeightPX-2*barInset)
	}
	if weekL > 0 {
		c.rect("water", 0, barInset, x(weekL), o.HeightPX-2*barInset)
	}
	c.upright("base", barInset/2, 0, o.HeightPX)
	if nowL > 0 {
		c.upright("water-now", x(nowL), 0, o.HeightPX)
	}
	return c.done()
}

const barInset = 3 // room round a bar [px]

// WaterLevelOptions say how full ground is drawn.
type WaterLevelOptions struct {
	WidthPX, HeightPX float64
	Label             string
}

// WaterLevel draws how full ground is that holds so much within reach of the roots: a
// vessel filled with level lines, and the line below which the crop is in want.
func WaterLevel(heldMM, easyMM, missingMM float64, o WaterLevelOptions) string {
	var c sheet
	c.frame("water-level", "img", o.Label, o.WidthPX, o.HeightPX, false)
	y := func(missing float64) float64 {
		share := 0.0
		if heldMM > 0 {
			share = min(1, max(0, missing/heldMM))
		}
		return barInset + share*(o.HeightPX-2*barInset)
	}
	bottom, left, wide := o.HeightPX-barInset, float64(barInset), o.WidthPX-2*barInset
	c.rect("water-vessel", left, barInset, wide, bottom-barInset)
	if top := y(missingMM); top < bottom {
		c.rect("water", left, top, wide, bottom-top)
	}
	c.level("water-want", 0, o.WidthPX, y(easyMM))
	return c.done()
}
