package exchange

import (
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

// leastAreaM2 is the least ground of a bed, as its shortest sides allow.
const leastAreaM2 = 0.0025

// checkBeds finds outlines that cannot be, and beds drawn outside their site.
func (c *checker) checkBeds() {
	for i := range c.h.Beds {
		b := &c.h.Beds[i]
		if b.Shape == place.ByOutline {
			c.checkOutline(i, b)
		}
		c.checkInside(i, b)
	}
	c.checkOverlaps()
}

func (c *checker) checkOutline(row int, b *place.Bed) {
	corners, ok := place.ParseOutline(b.Outline)
	again, twice := place.CornerTwice(corners)
	switch {
	case !ok:
		c.wrong("beds", row, "outline", fault.New(fault.Invalid, "exchange.outline_unreadable", words.Args{"given": b.Outline, "bed": b.Name}))
	case twice:
		c.wrong("beds", row, "outline", fault.New(fault.Invalid, "exchange.outline_twice", words.Args{"bed": b.Name, "corner": place.WriteOutline([]place.Point{again})}))
	case place.CrossesItself(corners):
		c.wrong("beds", row, "outline", fault.New(fault.Invalid, "exchange.outline_crosses", words.Args{"bed": b.Name}))
	case place.Area(corners) < leastAreaM2:
		c.wrong("beds", row, "outline", fault.New(fault.Invalid, "exchange.outline_no_area", words.Args{"bed": b.Name}))
	case beyondBox(corners, b):
		c.wrong("beds", row, "outline", fault.New(fault.Invalid, "exchange.outline_beyond", words.Args{"bed": b.Name, "length": b.LengthM, "width": b.WidthM}))
	}
}

// roundingM is room for sides rounded to the centimetre [m].
const roundingM = 0.011

// beyondBox tells whether corners lie outside a bed's length and width.
func beyondBox(corners []place.Point, b *place.Bed) bool {
	for _, p := range corners {
		if p.X < -roundingM || p.Y < -roundingM || p.X > b.LengthM+roundingM || p.Y > b.WidthM+roundingM {
			return true
		}
	}
	return false
}

// checkInside finds beds that are drawn outside their site's plan.
func (c *checker) checkInside(row int, b *place.Bed) {
	at, known := c.ids["sites"][b.Site]
	if !known || !b.At.IsSet() || c.faulty("beds", row, "x_m", "y_m", "length_m", "width_m", "turn_deg", "outline") {
		return
	}
	s := &c.h.Sites[at]
	if s.PlanWidthM == 0 || s.PlanDepthM == 0 {
		return
	}
	for _, p := range b.Corners() {
		if p.X < -roundingM || p.Y < -roundingM || p.X > s.PlanWidthM+roundingM || p.Y > s.PlanDepthM+roundingM {
			c.wrong("beds", row, "x_m", fault.New(fault.OutOfRange, "exchange.bed_outside", words.Args{
				"bed": b.Name, "site": s.Name, "width": s.PlanWidthM, "depth": s.PlanDepthM}))
			return
		}
	}
}

// checkFeatures finds crowns that begin above their top and warns of what
// stands inside a bed.
func (c *checker) checkFeatures() {
	beds := c.drawnBeds(func(*place.Bed) bool { return true })
	for i := range c.h.Features {
		f := &c.h.Features[i]
		if f.HeightM > 0 && f.BaseM >= f.HeightM {
			c.wrong("features", i, "base_m", fault.New(fault.Invalid, "exchange.base_above_top", words.Args{"feature": f.Name, "base": f.BaseM, "height": f.HeightM}))
		}
		c.checkStandingIn(i, f, beds)
	}
}
