package web

import (
	"slices"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// mapForm is the form that says what the columns of a table are.
type mapForm struct {
	Token  string
	File   int
	Name   string // of the file
	Values map[string]string
	Fields []fieldBody
}

// mapColumn is a column that a map may name: its field, and parts of headings by
// which it is guessed.
type mapColumn struct {
	field   string
	guesses []string
}

// mapTable is the table of column maps.
const mapTable = "column_maps"

// mapColumnsAsked are the columns in the order they are asked for. Guesses are
// tried in this order, so that a dew point is not taken for a temperature.
var mapColumnsAsked = []mapColumn{
	{"date", []string{"date", "day", "time"}}, {"dew", []string{"dew"}}, {"tmin", []string{"min", "low"}}, {"tmax", []string{"max", "high"}},
	{"rain", []string{"rain", "precip", "prcp"}}, {"sun", []string{"sun"}}, {"radiation", []string{"radiat", "solar"}},
	{"humidity", []string{"humid", "rh"}}, {"wind", []string{"wind"}},
}

// mapUnits are the fields of units with their lists, each with the columns it is
// for and signs in their headings by which it is guessed.
var mapUnits = []struct {
	field  string
	values []string
	of     []string
	signs  map[string]string
}{
	{"date_order", station.DateOrders, nil, nil},
	{"temp_unit", station.TempUnits, []string{"tmin", "tmax"}, map[string]string{"(f)": "F", "°f": "F", "_f": "F", "fahr": "F"}},
	{"rain_unit", station.RainUnits, []string{"rain"}, map[string]string{"(in)": "in", "inch": "in", "(cm)": "cm"}},
	{"sun_unit", station.SunUnits, []string{"sun"}, map[string]string{"(min)": "min"}},
	{"radiation_unit", station.RadiationUnits, []string{"radiation"}, map[string]string{"j/cm": "J/cm2", "kwh": "kWh/m2", "w/m": "W/m2"}},
	{"wind_unit", station.WindUnits, []string{"wind"}, map[string]string{"mph": "mph", "km/h": "km/h", "kmh": "km/h", "(kn)": "kn", "knot": "kn"}},
}

// newMapForm is the form of a file with what its headings let guess.
func newMapForm(token string, file int, found *desk.WeatherFound) mapForm {
	f := mapForm{Token: token, File: file, Name: found.File, Values: map[string]string{"name": found.File}}
	used := map[string]bool{}
	for _, c := range mapColumnsAsked {
		for _, h := range found.Headings {
			low := strings.ToLower(h)
			if !used[h] && slices.ContainsFunc(c.guesses, func(g string) bool { return strings.Contains(low, g) }) {
				f.Values[c.field], used[h] = h, true
				break
			}
		}
	}
	for _, u := range mapUnits {
		f.Values[u.field] = u.values[0]
		for _, of := range u.of {
			for sign, unit := range u.signs {
				if strings.Contains(strings.ToLower(f.Values[of]), sign) {
					f.Values[u.field] = unit
				}
			}
		}
	}
	return f
}

// postedMap is the form as it was sent.
func (v *visit) postedMap(token string, file int) mapForm {
	f := mapForm{Token: token, File: file, Values: map[string]string{}}
	for _, name := range mapFields() {
		f.Values[name] = v.field(name)
	}
	return f
}

// mapFields are all fields of the form.
func mapFields() []string {
	out := []string{"name", "wind_height_m", "missing"}
	for _, c := range mapColumnsAsked {
		out = append(out, c.field)
	}
	for _, u := range mapUnits {
		out = append(out, u.field)
	}
	return out
}

// completed is the form with its fields for the headings of a table.
func (v *visit) completed(f mapForm, headings []string) mapForm {
	var columns []option
	for _, h := range headings {
		columns = append(columns, option{h, h})
	}
	none := append([]option{{"", v.say("web.weather_map_none", nil)}}, columns...)
	f.Fields = []fieldBody{v.mapField(&f, "name", "", nil)}
	for _, c := range mapColumnsAsked {
		field := v.mapField(&f, c.field, "choice", none)
		if c.field == "date" {
			field.Options, field.Must = columns, true
		}
		f.Fields = append(f.Fields, field)
		if c.field == "date" {
			f.Fields = append(f.Fields, v.unitField(&f, 0))
		}
	}
	for i := 1; i < len(mapUnits); i++ {
		f.Fields = append(f.Fields, v.unitField(&f, i))
	}
	f.Fields = append(f.Fields, v.mapField(&f, "wind_height_m", "number", nil), v.mapField(&f, "missing", "", nil))
	return f
}

// mapField is one field; its label is that of the column of the table of maps.
func (v *visit) mapField(f *mapForm, name, kind string, options []option) fieldBody {
	return fieldBody{Name: name, Label: capital(v.say("desk.column_"+mapTable+"."+name, nil)), Kind: kind, Value: f.Values[name], Options: options,
		Must: kind == "choice" || name == "name"}
}

// unitField is the field of a unit.
func (v *visit) unitField(f *mapForm, at int) fieldBody {
	u := mapUnits[at]
	var options []option
	for _, value := range u.values {
		options = append(options, option{value, v.words.Text(desk.ValueName(mapTable, u.field, value))})
	}
	return v.mapField(f, u.field, "choice", options)
}

// cells are the cells of the map's row.
func (f *mapForm) cells(headings []string) (map[string]string, fault.List) {
	cells := map[string]string{"headings": station.JoinHeadings(headings)}
	for _, name := range mapFields() {
		cells[name] = strings.TrimSpace(f.Values[name])
	}
	var faults fault.List
	if cells["date"] == "" {
		faults = append(faults, fault.New(fault.Invalid, "web.weather_map_date", nil))
	}
	if cells["tmin"] == "" && cells["tmax"] == "" && cells["rain"] == "" {
		faults = append(faults, fault.New(fault.Invalid, "web.weather_map_nothing", nil))
	}
	seen := map[string]string{}
	for _, c := range mapColumnsAsked {
		h := cells[c.field]
		if h != "" && seen[h] != "" {
			faults = append(faults, fault.New(fault.Invalid, "web.weather_map_twice", words.Args{"column": h}))
		}
		seen[h] = c.field
	}
	return cells, faults
}
