package draw

// WorthOptions say how what a crop is worth is drawn.
type WorthOptions struct {
	WidthPX  float64
	HeightPX float64
	Label    string // what it shows, in text
	Figure   string // beside the bar
}

// Worth draws what a crop mends of the shortage as a solid bar from zero, its
// figure at the end; most is what the longest bar stands for.
func Worth(kg, most float64, o WorthOptions) string {
	room := widthOf(o.Figure, 15) + 16
	w := 0.0
	if most > 0 {
		w = max(1.5, min(1, max(0, kg)/most)*(o.WidthPX-room))
	}
	var c sheet
	c.frame("worth", "img", o.Label, o.WidthPX, o.HeightPX, false)
	c.rect("ground", 0, 3, w, o.HeightPX-6)
	c.upright("base", .5, 0, o.HeightPX)
	c.text("t-ink b f15", w+8, o.HeightPX/2+5, o.Figure)
	return c.done()
}
