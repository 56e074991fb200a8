package station

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// Map tells where the quantities of a forecast stand in JSON. Each entry is a
// quantity, an equals sign, a path and, where the figures are in another unit than
// ours, that unit; wind measured or forecast at another height than 2 m has that
// height after an @. Entries are parted by semicolons:
//
//	date=daily.day; tmin_c=daily.low F; tmax_c=daily.high F; wind_ms=daily.wind km/h @10
//
// A path is names parted by points. Where it comes to a list, it goes on in every
// item of the list. With time in place of date the lists are of hours: temp_c gives
// the extremes of a day, rain is added up, all else is averaged.
type Map struct {
	hours  bool
	when   []string // path of the dates or times
	places []fieldMapped
}

// fieldMapped is one quantity with its place.
type fieldMapped struct {
	name    string
	path    []string
	scale   scale
	heightM float64
}

// scale turns a figure into our unit.
type scale struct{ times, offset float64 }

// OwnMap is the layout that is read where no map is told: what garner itself
// answers with.
const OwnMap = "date=days.date; tmin_c=days.tmin_c; tmax_c=days.tmax_c; rain_mm=days.rain_mm; wind_ms=days.wind_ms; sun_h=days.sun_h; rad_mj_m2=days.rad_mj_m2; rh_pct=days.rh_pct"

// hourTemperature is the temperature of an hour.
const hourTemperature = "temp_c"

// mapUnits are the units of the quantities of a map, the first our own.
var mapUnits = map[string]map[string]scale{
	columnTMin:      temperatureUnits,
	columnTMax:      temperatureUnits,
	hourTemperature: temperatureUnits,
	columnRain:      {"": {1, 0}, "mm": {1, 0}, "cm": {10, 0}, "in": {25.4, 0}},
	columnWind:      {"": {1, 0}, "m/s": {1, 0}, "km/h": {1 / 3.6, 0}, "mph": {0.44704, 0}, "kn": {1852.0 / 3600, 0}},
	columnSun:       {"": {1, 0}, "h": {1, 0}, "min": {1.0 / 60, 0}, "s": {1.0 / 3600, 0}},
	columnRadiation: {"": {1, 0}, "MJ/m2": {1, 0}, "Wh/m2": {0.0036, 0}, "kWh/m2": {3.6, 0}, "J/cm2": {0.01, 0}},
	columnHumidity:  {"": {1, 0}, "%": {1, 0}, "share": {100, 0}},
}

var temperatureUnits = map[string]scale{"": {1, 0}, "C": {1, 0}, "F": {5.0 / 9, -160.0 / 9}, "K": {1, -273.15}}

// mapQuantities names them in the order of the daily record.
var mapQuantities = []string{columnTMin, columnTMax, hourTemperature, columnRain, columnSun, columnRadiation, columnHumidity, columnWind}

// ReadMap reads a map; empty is OwnMap. The error says which entry is wrong and
// what would be right.
func ReadMap(text string) (*Map, error) {
	if strings.TrimSpace(text) == "" {
		text = OwnMap
	}
	m := &Map{}
	for _, entry := range strings.Split(text, ";") {
		if entry = strings.TrimSpace(entry); entry == "" {
			continue
		}
		if err := m.take(entry); err != nil {
			return nil, err
		}
	}
	return m, m.whole()
}

func (m *Map) take(entry string) error {
	name, place, found := strings.Cut(entry, "=")
	name = strings.TrimSpace(name)
	parts := strings.Fields(place)
	if !found || len(parts) == 0 {
		return mapFault("station.map_entry", words.Args{"given": entry})
	}
	path := strings.Split(parts[0], ".")
	switch name {
	case columnDate, columnTime:
		m.when, m.hours = path, name == columnTime
		return nil
	}
	units, known := mapUnits[name]
	if !known {
		return mapFault("station.map_quantity", words.Args{"given": name, "names": append([]string{columnDate, columnTime}, mapQuantities...)})
	}
	q := fieldMapped{name: name, path: path}
	unit := ""
	for _, p := range parts[1:] {
		if height, is := strings.CutPrefix(p, "@"); is && name == columnWind {
			h, err := strconv.ParseFloat(height, 64)
			if err != nil || h < 0.5 || h > 100 {
				return mapFault("station.map_height", words.Args{"given": p})
			}
			q.heightM = h
			continue
		}
		unit += p
	}
	if q.scale, known = units[unit]; !known {
		return mapFault("station.map_unit", words.Args{"given": unit, "name": name, "units": unitNames(units)})
	}
	m.places = append(m.places, q)
	return nil
}

func unitNames(units map[string]scale) []string {
	var out []string
	for u := range units {
		if u != "" {
			out = append(out, u)
		}
	}
	slices.Sort(out)
	return out
}

// whole asks for what no forecast can be without.
func (m *Map) whole() error {
	has := func(name string) bool {
		return slices.ContainsFunc(m.places, func(q fieldMapped) bool { return q.name == name })
	}
	switch {
	case len(m.when) == 0:
		return mapFault("station.map_needs", words.Args{"name": columnDate})
	case m.hours && !has(hourTemperature):
		return mapFault("station.map_needs", words.Args{"name": hourTemperature})
	case !m.hours && (!has(columnTMin) || !has(columnTMax)):
		return mapFault("station.map_needs", words.Args{"name": columnTMin + ", " + columnTMax})
	}
	return nil
}

func mapFault(key string, args words.Args) error { return fault.New(fault.Invalid, key, args) }
