package draw

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
)

// WeatherOptions say how days of weather are drawn.
type WeatherOptions struct {
	Label   string // what it shows, in text
	Today   cal.Date
	TodayIs string
	Months  [12]string

	Warmth, Rain  string                 // titles of the panels with their units
	Usual, Freeze string                 // name the lines of what is usual, and of 0 C
	Figure        func(v float64) string // a whole figure
}

// Measures of a drawing of weather [px].
const (
	weatherDay    = 34.0 // a day's column
	weatherBar    = 16.0
	weatherTop    = 40.0 // the title, and room for figures
	weatherWarmth = 150.0
	weatherGap    = 60.0
	weatherRain   = 64.0
	weatherFoot   = 40.0
	weatherSide   = 44.0 // right of the days, for the name of 0 C
	leastRangeC   = 12.0 // the least height of the scale
	leastRainMM   = 10.0
)

// weatherSheet is such a drawing under way.
type weatherSheet struct {
	sheet
	o          WeatherOptions
	days       []desk.WeatherDay
	low, high  float64 // of the scale [C]
	most       float64 // of the scale [mm]
	warm, rain float64 // the feet of the panels
}

// Weather draws days: from the lowest to the highest of the day as an upright bar,
// firm where it was recorded and open where it is forecast, between two fine
// lines of what is usual; under it the rain, level lines where it fell and open
// where it is forecast. A day of which nothing is known is left out.
func Weather(days []desk.WeatherDay, usual bool, o WeatherOptions) string {
	if len(days) == 0 {
		return ""
	}
	c := &weatherSheet{o: o, days: days, warm: weatherTop + weatherWarmth, most: leastRainMM}
	c.rain = c.warm + weatherGap + weatherRain
	c.fit(usual)
	width := weatherDay * float64(len(days))
	c.frame("weather-days", "img", o.Label, width+weatherSide, c.rain+weatherFoot, false)
	c.text("t-ink b f14", 0, 14, o.Warmth)
	c.text("t-ink b f14", 0, c.warm+weatherGap-24, o.Rain)
	if c.low < 0 {
		c.level("hair", 0, width, c.y(0))
		c.text("", width+5, c.y(0)+5, o.Freeze)
	}
	if usual {
		c.usual()
	}
	for i := range days {
		c.day(i)
	}
	c.level("base", 0, width, c.rain)
	c.dates()
	return c.done()
}

// fit fits the scales round all there is to see.
func (c *weatherSheet) fit(usual bool) {
	c.low, c.high = math.Inf(1), math.Inf(-1)
	see := func(v float64) { c.low, c.high = min(c.low, v), max(c.high, v) }
	for i := range c.days {
		d := &c.days[i]
		if d.TMinC != nil {
			see(*d.TMinC)
		}
		if d.TMaxC != nil {
			see(*d.TMaxC)
		}
		if usual {
			see(d.UsualMinC)
			see(d.UsualMaxC)
		}
		if d.RainMM != nil {
			c.most = max(c.most, *d.RainMM)
		}
	}
	if c.low > c.high {
		c.low, c.high = 0, leastRangeC
	}
	if spare := leastRangeC - (c.high - c.low); spare > 0 {
		c.low, c.high = c.low-spare/2, c.high+spare/2
	}
}

func (c *weatherSheet) y(t float64) float64 {
	return c.warm - (t-c.low)/(c.high-c.low)*weatherWarmth
}

func (c *weatherSheet) mid(i int) float64 { return weatherDay * (float64(i) + 0.5) }

// usual draws the two lines of what is usual, and names the upper one.
func (c *weatherSheet) usual() {
	var low, high pen
	for i := range c.days {
		x := tenths(c.mid(i))
		if i == 0 {
			low.move(x, tenths(c.y(c.days[i].UsualMinC)))
			high.move(x, tenths(c.y(c.days[i].UsualMaxC)))
			continue
		}
		low.line(x, tenths(c.y(c.days[i].UsualMinC)))
		high.line(x, tenths(c.y(c.days[i].UsualMaxC)))
	}
	c.path("thin dotted", low.String())
	c.path("thin dotted", high.String())
}

// day draws one day's bar and rain.
func (c *weatherSheet) day(i int) {
	d := &c.days[i]
	class, wet := "ground", "water"
	if d.Ahead() {
		class, wet = "open edge", "open edge"
	}
	x := c.mid(i)
	switch {
	case d.TMinC != nil && d.TMaxC != nil:
		top, foot := c.y(*d.TMaxC), c.y(*d.TMinC)
		c.rect(class, x-weatherBar/2, top, weatherBar, max(2, foot-top))
		c.text("mid t-ink halo", x, top-4, c.o.Figure(*d.TMaxC))
		c.text("mid t-ink halo", x, foot+14, c.o.Figure(*d.TMinC))
	case d.TMinC != nil:
		c.one(x, *d.TMinC, 14)
	case d.TMaxC != nil:
		c.one(x, *d.TMaxC, -5)
	}
	if d.RainMM == nil {
		return
	}
	h := *d.RainMM / c.most * weatherRain
	if h > 0 {
		c.rect(wet, x-weatherBar/2, c.rain-h, weatherBar, h)
	}
	if *d.RainMM >= 0.5 {
		c.text("mid t-ink halo", x, c.rain-h-4, c.o.Figure(*d.RainMM))
	}
}

// one draws an extreme of which the other is not known.
func (c *weatherSheet) one(x, t, below float64) {
	c.level("line", x-weatherBar/2, x+weatherBar/2, c.y(t))
	c.text("mid t-ink halo", x, c.y(t)+below, c.o.Figure(t))
}

// dates names the days along the foot, the month under the first of each, and
// draws today's line.
func (c *weatherSheet) dates() {
	for i := range c.days {
		_, month, day := c.days[i].Date.YMD()
		class := "mid"
		if c.days[i].Date == c.o.Today {
			class = "mid t-pen"
		}
		c.text(class, c.mid(i), c.rain+16, whole(day))
		if i == 0 || day == 1 {
			c.text("t-ink", c.mid(i)-7, c.rain+33, c.o.Months[month-1])
		}
		if c.days[i].Date == c.o.Today || i > 0 && c.days[i].Date > c.o.Today && c.days[i-1].Date < c.o.Today {
			x := weatherDay * float64(i)
			c.upright("pen today", x, 22, c.rain)
			c.text("t-pen halo", x+4, 30, c.o.TodayIs)
		}
	}
}
