package draw

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
)

// FlightOptions say how flights are set over the sowings they hit.
type FlightOptions struct {
	Scale  Scale
	Today  cal.Date
	Label  string // what it shows, in text
	Axis   AxisTexts
	Flight func(f *desk.RiskFlight) string
	Host   func(h *desk.RiskHost) string
	Shut   string // on the part that is covered
}

// Heights of the parts of a chart of flights [px].
const (
	flightTop    = 22.0 // months
	flightLabel  = 18.0
	flightThread = 3.0
	flightGap    = 10.0
	hostLabel    = 20.0
	hostBar      = 12.0
	hostGap      = 10.0
)

// Flights draws the time of each flight as ten threads, each one future from its
// first day to its last, the earliest on top, and under them every sowing: solid
// where it lies open to the insects, an outline where a cover keeps them out.
func Flights(flights []desk.RiskFlight, hosts []desk.RiskHost, o FlightOptions) string {
	shown := slices.DeleteFunc(slices.Clone(flights), func(f desk.RiskFlight) bool { return !o.shows(&f) })
	height := flightTop + float64(len(shown))*(flightLabel+desk.RiskThreads*flightThread+flightGap) + float64(len(hosts))*(hostLabel+hostBar+hostGap) + 4
	var c sheet
	c.frame("flights", "img", o.Label, o.Scale.WidthPX, height, false)
	c.path("hair", monthLines(o.Scale, 0, height))
	c.monthNames(o.Scale, 14, o.Axis)
	y := flightTop
	for i := range shown {
		y = o.flight(&c, &shown[i], y)
	}
	for i := range hosts {
		y = o.host(&c, &hosts[i], y)
	}
	if o.Scale.has(o.Today) {
		c.upright("pen today", o.Scale.X(o.Today), flightTop, height)
	}
	return c.done()
}

// shows tells whether any of a flight lies on the scale.
func (o *FlightOptions) shows(f *desk.RiskFlight) bool {
	end := o.Scale.From + cal.Date(o.Scale.Days)
	return slices.ContainsFunc(f.Threads, func(t desk.RiskThread) bool { return t.From < end && t.Until > o.Scale.From })
}

// flight draws the threads of one flight from y down and returns where they end.
func (o *FlightOptions) flight(c *sheet, f *desk.RiskFlight, y float64) float64 {
	for i, t := range f.Threads {
		if x, to := o.Scale.X(t.From), o.Scale.X(t.Until); to > x {
			c.rect("thread", x, y+flightLabel+float64(i)*flightThread, to-x, flightThread-1)
		}
	}
	words := o.Flight(f)
	x := o.Scale.X(f.Threads[0].From)
	c.text("t-ink b halo", max(2, min(x, o.Scale.WidthPX-widthOf(words, labelSize)*semiBold-2)), y+13, words)
	return y + flightLabel + desk.RiskThreads*flightThread + flightGap
}

// host draws one sowing from y down and returns where it ends.
func (o *FlightOptions) host(c *sheet, h *desk.RiskHost, y float64) float64 {
	words := o.Host(h)
	x, to := o.Scale.X(h.From), o.Scale.X(h.Until)
	c.text("t-ink halo", max(2, min(x, o.Scale.WidthPX-widthOf(words, labelSize)-2)), y+14, words)
	top := y + hostLabel
	if to > x {
		c.rect("host", x, top+.5, to-x, hostBar-1)
	}
	for _, s := range h.Open {
		if a, b := o.Scale.X(s.From), o.Scale.X(s.Until); b > a {
			c.rect("ground", a, top, b-a, hostBar)
		}
	}
	for _, s := range h.Shut {
		until := h.Until
		if s.Off.IsSet() {
			until = min(until, s.Off)
		}
		a, b := o.Scale.X(max(s.On, h.From)), o.Scale.X(until)
		if b-a > widthOf(o.Shut, 12)+6 {
			c.text("mid f12 t-ink", (a+b)/2, top+hostBar-2, o.Shut)
		}
	}
	return top + hostBar + hostGap
}
