package draw

// WaterMonth is a month of water [L]: what was given, or what is to come in the middle
// of the futures and in the driest of ten.
type WaterMonth struct {
	Name      string // short
	GivenL    float64
	MeanL     float64
	DryL      float64
	Year      string // set under the month in which a year begins
	HasToCome bool
	MeanText  string // the figure over the bar
}

// WaterMonthsOptions say how months of water are drawn.
type WaterMonthsOptions struct {
	WidthPX, HeightPX float64
	Label             string // what it shows, in text
}

// Heights over and under the bars of months [px].
const (
	barsTop  = 26.0
	barsFoot = 36.0
)

// WaterMonths draws litres by month by length, level lines for water: solid outline what
// was given, filled what is to come, with a mark where a dry year would have it.
func WaterMonths(months []WaterMonth, o WaterMonthsOptions) string {
	var c sheet
	c.frame("water-months", "img", o.Label, o.WidthPX, o.HeightPX, false)
	most := 1.0
	for _, m := range months {
		most = max(most, m.GivenL, m.DryL, m.MeanL)
	}
	foot := o.HeightPX - barsFoot
	y := func(l float64) float64 { return foot - l/most*(foot-barsTop) }
	step := o.WidthPX / float64(max(1, len(months)))
	wide := step * 0.62
	tall := 0
	for i, m := range months {
		x := float64(i)*step + (step-wide)/2
		if m.HasToCome {
			c.waterBar("water", x, y(m.MeanL), wide, foot)
			if m.DryL > 0 {
				c.level("line", x-2, x+wide+2, y(m.DryL))
			}
		}
		if m.GivenL > 0 {
			c.waterBar("ground", x, y(m.GivenL), wide*0.4, foot)
		}
		c.text("mid f14", x+wide/2, foot+16, m.Name)
		c.text("mid f12", x+wide/2, foot+31, m.Year)
		if m.DryL > months[tall].DryL {
			tall = i
		}
	}
	c.level("base", 0, o.WidthPX, foot)
	if len(months) > 0 && months[tall].MeanText != "" {
		m := months[tall]
		x := min(o.WidthPX-widthOf(m.MeanText, labelSize)/2, max(widthOf(m.MeanText, labelSize)/2, float64(tall)*step+step/2))
		c.text("mid t-ink halo", x, max(barsTop-10, y(m.DryL)-7), m.MeanText)
	}
	return c.done()
}

// waterBar is a block from a height down to the foot; nothing where it has none.
func (s *sheet) waterBar(class string, x, top, wide, foot float64) {
	if foot-top >= 0.5 {
		s.rect(class+" water-column", x, top, wide, foot-top)
	}
}
