package draw

import (
	"garner/internal/cal"
)

// AxisTexts are the words of an axis. Functions that are nil say nothing.
type AxisTexts struct {
	Label    string                     // what the axis shows, in text
	Months   [12]string                 // as short as the desk's months are narrow
	Year     func(year int) string      // set after the month in which a year begins
	Today    string                     // at the line for today
	Daylight func(hours float64) string // at the first longest day
	Hours    func(hours float64) string // at the longest and shortest days after it
}

// Heights of an axis [px].
const (
	axisHeight  = 54.0
	monthsBand  = 22.0
	hillHeight  = 24.0
	axisPhone   = 66.0
	plainHeight = 40.0
)

// Daylight between which the hill of light rises [h]; judged by eye to keep the
// hill flat at low latitudes and on the page at high ones. Under tenHours leaves
// stand still: common practice among winter growers, no source.
const (
	darkest  = 6.5
	lightest = 17.6
	tenHours = 10
)

// semiBold is how much wider a name is when it stands out, and tightest how far
// the stylesheet may press a scale together on a narrow desk; words are not pressed.
const (
	semiBold = 1.12
	tightest = 0.93
)

// Axis draws the months along the top of a page, and over them the hill of
// daylight, with a dark band where days are under ten hours. Without daylight it
// is the months alone.
func Axis(s Scale, today cal.Date, daylight []float64, t AxisTexts) string {
	h := axisHeight
	if len(daylight) == 0 {
		h = plainHeight
	}
	var c sheet
	c.frame("ribbon axis-svg", "img", t.Label, s.WidthPX, h, true)
	foot := h - monthsBand
	if len(daylight) > 0 {
		c.hill(s, daylight, foot, hillHeight)
		c.level("hair", 0, s.WidthPX, foot+.5)
		c.peaks(s, daylight, foot, c.firstYear(s, today, foot, t), t)
	}
	c.path("hair", monthLines(s, foot, h))
	c.monthNames(s, h-7, t)
	if s.has(today) {
		x, y := s.X(today), foot-hillHeight+6
		if len(daylight) == 0 {
			y = 14
		}
		c.upright("pen today", x, y, h)
		class := "t-pen mid halo"
		if x < widthOf(t.Today, labelSize)/2 {
			class, x = "t-pen halo", x+3
		}
		c.text(class, x, y-3, t.Today)
	}
	return c.done()
}

// AxisPhone draws the axis for a ribbon that is swept under the page: the months
// in full at their beginning, the days on which weeks begin, and the light.
// The scale's width is the phone's.
func AxisPhone(s Scale, today cal.Date, daylight []float64, t AxisTexts) string {
	var c sheet
	c.frame("axis-phone", "img", t.Label, s.WidthPX, axisPhone, false)
	foot := axisPhone - monthsBand
	c.hill(s, daylight, foot, monthsBand)
	c.level("hair", 0, s.WidthPX, foot+.5)
	c.peaks(s, daylight, foot, 0, t)
	for _, m := range s.months() {
		c.upright("hair", m.from, 2, axisPhone)
		if m.to-m.from > widthOf(t.Months[m.month-1], 16)+10 {
			c.text("t-ink b f16", m.from+5, 14, monthName(m, t, m.first == s.From))
		}
	}
	for d := s.From; d < s.From+cal.Date(s.Days); d += 7 {
		_, _, day := d.YMD()
		c.upright("tick", s.X(d), foot, foot+4)
		class := "mid f14"
		if d == s.From {
			class = "f14"
		}
		c.text(class, s.X(d), axisPhone-5, whole(day))
	}
	if s.has(today) {
		x := s.X(today)
		c.upright("pen today", x, 20, axisPhone)
		c.text("t-pen halo f15", x+6, 36, t.Today)
	}
	return c.done()
}

func monthName(m month, t AxisTexts, first bool) string {
	name := t.Months[m.month-1]
	if (m.month == 1 || first) && t.Year != nil {
		return name + " " + t.Year(m.year)
	}
	return name
}

// fittedName is a month's name as long as there is room for it, empty where there
// is none, and whether it tells the year.
func fittedName(m month, t AxisTexts, first bool) (name string, year bool) {
	name = monthName(m, t, first)
	year = name != t.Months[m.month-1]
	room := m.to - m.from
	if semiBold*widthOf(name, labelSize) > room*tightest {
		name, year = t.Months[m.month-1], false
		if m.month == 1 && t.Year != nil && m.whole {
			name, year = t.Year(m.year), true // a year's number says January as well
		}
	}
	if widthOf(name, labelSize) > room+2 {
		return "", false
	}
	return name, year
}

// firstYear sets the year over the first month that is named, where the name has
// no room for it, and returns where it ends.
func (c *sheet) firstYear(s Scale, today cal.Date, foot float64, t AxisTexts) float64 {
	for _, m := range s.months() {
		name, told := fittedName(m, t, true)
		if name == "" {
			continue
		}
		if told || t.Year == nil {
			return 0
		}
		x, year := m.from+yearInset, t.Year(m.year)
		if s.has(today) && s.X(today) < x+widthOf(year, labelSize) {
			x = max(x, s.X(today)+yearInset) // clear of the line for today
		}
		c.text("t-ink b halo f12", x, foot-6, year)
		return x + semiBold*widthOf(year, labelSize) + yearInset
	}
	return 0
}

// yearInset is the room before and after a year over its month [px].
const yearInset = 4.0

// monthNames sets each month's name in its middle, where it has room.
func (c *sheet) monthNames(s Scale, y float64, t AxisTexts) {
	first := true
	for _, m := range s.months() {
		name, _ := fittedName(m, t, first)
		if name == "" {
			continue
		}
		class := "mid t-ink"
		if first || m.month == 1 {
			class += " b"
		}
		first = false
		half := semiBold*widthOf(name, labelSize)/2 + 1
		c.text(class, max(half, min(s.WidthPX-half, (m.from+m.to)/2)), y, name)
	}
}

// hill draws daylight as an area over its foot, from weeks' hours.
func (c *sheet) hill(s Scale, daylight []float64, foot, height float64) {
	if len(daylight) == 0 {
		return
	}
	y := func(hours float64) int {
		return tenths(foot - max(0, min(1.2, (hours-darkest)/(lightest-darkest)))*height)
	}
	var day, line, dark pen
	day.move(0, tenths(foot))
	for i := 0; i <= len(daylight); i++ {
		x, top := tenths(s.at(float64(7*i))), y(hoursAt(daylight, i))
		day.line(x, top)
		if i == 0 {
			line.move(x, top)
		}
		line.line(x, top)
	}
	day.line(tenths(s.WidthPX), tenths(foot))
	day.close()
	inDark := false
	for i := 0; i <= len(daylight); i++ {
		is := i < len(daylight) && daylight[i] < tenHours
		x := tenths(s.at(float64(7 * i)))
		switch {
		case is && !inDark:
			dark.move(x, tenths(foot))
			dark.line(x, y(hoursAt(daylight, i)))
		case inDark:
			dark.line(x, y(hoursAt(daylight, i)))
		}
		if inDark && !is {
			dark.line(x, tenths(foot))
			dark.close()
		}
		inDark = is
	}
	c.path("day", day.String())
	c.path("dark", dark.String())
	c.path("thin", line.String())
}

// hoursAt is the daylight at the beginning of a week: between the two weeks'.
func hoursAt(daylight []float64, i int) float64 {
	switch {
	case i == 0:
		return daylight[0]
	case i >= len(daylight):
		return daylight[len(daylight)-1]
	}
	return (daylight[i-1] + daylight[i]) / 2
}

// peaks sets the hours at the longest and shortest days that lie well inside,
// right of where something else stands.
func (c *sheet) peaks(s Scale, daylight []float64, foot, from float64, t AxisTexts) {
	first := true
	for i := 3; i+3 < len(daylight); i++ {
		longest, shortest := daylight[i] > daylight[i-1] && daylight[i] >= daylight[i+1], daylight[i] < daylight[i-1] && daylight[i] <= daylight[i+1]
		if !longest && !shortest {
			continue
		}
		say := t.Hours
		if longest && first && t.Daylight != nil {
			say, first = t.Daylight, false
		}
		if say == nil {
			continue
		}
		text := say(daylight[i])
		c.text("mid f12", max(from+widthOf(text, labelSize)/2, s.at(float64(7*i)+3.5)), foot-5, text)
	}
}
