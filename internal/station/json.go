package station

import (
	"bytes"
	"encoding/json"
	"math"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// mostAheadDays is how many days of a forecast are read; what lies beyond says
// nothing.
const mostAheadDays = 60

// ReadJSON reads a forecast out of JSON by a map. Times without a zone are taken
// as they stand, seconds since 1970 in the zone given (nil: UTC). Figures that
// cannot be are left out and told in the report; a day without both extremes is
// left out as a whole.
func ReadJSON(content []byte, name string, m *Map, zone *time.Location) (*climate.Record, Report, error) {
	var report Report
	place := fault.Place{File: name}
	d := json.NewDecoder(bytes.NewReader(content))
	d.UseNumber()
	var tree any
	if err := d.Decode(&tree); err != nil {
		return nil, report, fault.New(fault.Invalid, "station.json_broken", nil).In(place)
	}
	when := follow(tree, m.when)
	if len(when) == 0 {
		return nil, report, fault.New(fault.Invalid, "station.json_path", words.Args{"path": joinPath(m.when)}).In(place)
	}
	g := &gathering{days: map[cal.Date]*dayAhead{}, report: &report}
	lists := make([][]any, len(m.places))
	for i, q := range m.places {
		lists[i] = follow(tree, q.path)
		if len(lists[i]) != 0 && len(lists[i]) != len(when) {
			return nil, report, fault.New(fault.Invalid, "station.json_lengths",
				words.Args{"path": joinPath(q.path), "n": len(lists[i]), "dates": len(when)}).In(place)
		}
	}
	for i, w := range when {
		report.Rows++
		at := fault.Place{File: name, Row: i + 1}
		date, ok := dateOf(w, zone)
		if !ok {
			report.Refused = append(report.Refused, fault.New(fault.Invalid, "station.json_date", words.Args{"row": i + 1}).In(at))
			continue
		}
		for k, q := range m.places {
			if len(lists[k]) > 0 {
				g.take(date, q, lists[k][i], at)
			}
		}
	}
	record := g.record(name, m.hours)
	report.Kept = len(record.Days)
	if report.Kept == 0 {
		return nil, report, fault.New(fault.Invalid, "station.json_no_days", nil).In(place)
	}
	return record, report, nil
}

// follow walks a path and goes on in every item of a list.
func follow(tree any, path []string) []any {
	if list, is := tree.([]any); is {
		var out []any
		for _, item := range list {
			if len(path) == 0 {
				out = append(out, item)
				continue
			}
			found := follow(item, path)
			if len(found) == 0 {
				found = []any{nil} // keeps its place among the others
			}
			out = append(out, found...)
		}
		return out
	}
	if len(path) == 0 {
		return []any{tree}
	}
	object, is := tree.(map[string]any)
	if !is {
		return nil
	}
	next, known := object[path[0]]
	if !known {
		return nil
	}
	return follow(next, path[1:])
}

func joinPath(path []string) string {
	out := ""
	for i, p := range path {
		if i > 0 {
			out += "."
		}
		out += p
	}
	return out
}

// dateOf reads a date, the date of a time, or seconds since 1970.
func dateOf(v any, zone *time.Location) (cal.Date, bool) {
	switch v := v.(type) {
	case string:
		if len(v) < 10 {
			return cal.None, false
		}
		d, err := cal.Parse(v[:10])
		return d, err == nil
	case json.Number:
		s, err := v.Float64()
		if err != nil || math.Abs(s) > 1e11 {
			return cal.None, false
		}
		if zone == nil {
			zone = time.UTC
		}
		y, m, d := time.Unix(int64(s), 0).In(zone).Date()
		return cal.Of(y, int(m), d), true
	}
	return cal.None, false
}
