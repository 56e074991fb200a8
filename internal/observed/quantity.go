package observed

import "slices"

// The quantities that instruments send.
const (
	Temperature  = "temperature"
	Humidity     = "humidity"
	Rain         = "rain"       // since the last that was sent
	RainTotal    = "rain total" // ever rising
	Radiation    = "radiation"
	Wind         = "wind"
	SoilMoisture = "soil moisture"
	SoilTension  = "soil tension"
)

// unit turns a figure into our own unit.
type unit struct {
	name          string
	times, offset float64
}

// bound is what a quantity can be, in our own unit.
type bound struct{ least, most float64 }

// quantity is what an instrument measures: its units, and what it can be.
type quantity struct {
	units []unit
	bound
}

// quantities are in C, %, mm, W/m2, m/s, per cent by volume and kPa. The bounds
// are those of the holding's tables, or wider than any instrument of a garden
// tells (judgement).
var quantities = map[string]quantity{
	Temperature:  {[]unit{{"C", 1, 0}, {"F", 5.0 / 9, -160.0 / 9}, {"K", 1, -273.15}}, bound{-60, 70}},
	Humidity:     {[]unit{{"%", 1, 0}, {"share", 100, 0}}, bound{1, 100}},
	Rain:         {[]unit{{"mm", 1, 0}, {"in", 25.4, 0}}, bound{0, 200}},
	RainTotal:    {[]unit{{"mm", 1, 0}, {"in", 25.4, 0}}, bound{0, 1e6}},
	Radiation:    {[]unit{{"W/m2", 1, 0}}, bound{0, 1600}},
	Wind:         {[]unit{{"m/s", 1, 0}, {"km/h", 1 / 3.6, 0}, {"mph", 0.44704, 0}, {"kn", 1852.0 / 3600, 0}}, bound{0, 90}},
	SoilMoisture: {[]unit{{"%", 1, 0}, {"share", 100, 0}}, bound{0, 100}},
	SoilTension:  {[]unit{{"kPa", 1, 0}, {"cbar", 1, 0}, {"hPa", 0.1, 0}}, bound{0, 1000}},
}

// UnitsOf are the units a quantity may be sent in; nil when there is no such
// quantity.
func UnitsOf(name string) []string {
	var out []string
	for _, u := range quantities[name].units {
		out = append(out, u.name)
	}
	return out
}

// AllUnits are the units of all quantities, each once.
func AllUnits() []string {
	var out []string
	for _, name := range []string{Temperature, Humidity, Rain, Radiation, Wind, SoilMoisture, SoilTension} {
		for _, u := range UnitsOf(name) {
			if !slices.Contains(out, u) {
				out = append(out, u)
			}
		}
	}
	return out
}

// InSoil tells a quantity that is measured in a bed.
func InSoil(name string) bool { return name == SoilMoisture || name == SoilTension }

// Figure is what an instrument sent in our own unit, and whether it can be.
func (s *Sensor) Figure(sent float64) (v float64, ok bool) {
	q := quantities[s.Quantity]
	for _, u := range q.units {
		if u.name == s.Unit || s.Unit == "" {
			v = sent*u.times + u.offset
			return v, v >= q.least && v <= q.most
		}
	}
	return 0, false
}
