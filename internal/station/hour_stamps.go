package station

import (
	"math"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// noHour stands for a row that is left out.
const noHour = math.MinInt32

// stamp is the time of a row.
type stamp struct {
	at   int32  // hours since 1970-01-01 00:00 of the record's own clock; noHour
	zone string // as written; "" for none
}

// stampsOf reads the time of every row; noHour where the row is refused: no such
// time, one that was there before, one out of order, one between the hours. The
// same hour by another zone is another hour.
func stampsOf(t *table.Table, report *Report) []stamp {
	at := t.Column(columnTime)
	out := make([]stamp, len(t.Rows))
	seen := map[stamp]int{}
	refuse := func(row int, key string, args words.Args) {
		report.Refused = append(report.Refused, fault.New(fault.Invalid, key, args).In(t.At(row, columnTime)))
		out[row].at = noHour
	}
	for row := range t.Rows {
		cell := t.Rows[row][at]
		s, key := stampOf(cell)
		out[row] = s
		switch {
		case key != "":
			refuse(row, key, words.Args{"given": cell})
		case seen[s] > 0 && clockChange(s, -1):
			refuse(row, "station.hour_twice_clock", words.Args{"given": cell, "row": seen[s]})
		case seen[s] > 0:
			refuse(row, "station.hour_twice", words.Args{"given": cell, "row": seen[s]})
		default:
			seen[s] = t.Numbers[row]
		}
	}
	for _, row := range hoursOutOfOrder(out) {
		refuse(row, "station.hour_out_of_order", words.Args{"given": t.Rows[row][at]})
	}
	report.Warnings = append(report.Warnings, mixedZones(t, out)...)
	return out
}

// stampOf reads 2027-07-01T14:00, with a space for the T, with seconds and with
// a zone if there are any; key says what is wrong with it.
func stampOf(cell string) (s stamp, key string) {
	s.at = noHour
	day, clock, ok := cut(cell)
	if !ok {
		return s, "station.no_such_time"
	}
	clock, s.zone = cutZone(clock)
	date, err := cal.Parse(day)
	if err != nil || date.Year() < earliestYear || date.Year() > latestYear || !isZone(s.zone) {
		return s, "station.no_such_time"
	}
	parts := strings.Split(clock, ":")
	hour, ok := twoDigits(parts[0])
	if !ok || hour > 23 || len(parts) > 3 || len(parts) < 2 {
		return s, "station.no_such_time"
	}
	for _, p := range parts[1:] {
		n, ok := twoDigits(strings.TrimSuffix(p, ".000"))
		if !ok || n > 59 {
			return s, "station.no_such_time"
		}
		if n != 0 {
			return s, "station.not_on_the_hour"
		}
	}
	s.at = int32(date)*24 + int32(hour)
	return s, ""
}

// cut parts day from clock at a T or a space.
func cut(cell string) (day, clock string, ok bool) {
	if day, clock, ok = strings.Cut(cell, "T"); ok {
		return day, clock, true
	}
	return strings.Cut(cell, " ")
}

// cutZone parts the zone from the end of a clock time.
func cutZone(clock string) (rest, zone string) {
	if i := strings.IndexAny(clock, "Zz+-"); i >= 0 {
		return strings.TrimSpace(clock[:i]), strings.ToUpper(clock[i:])
	}
	return clock, ""
}

// isZone tells whether a zone is none, Z, or hours before or behind as +01:00.
func isZone(zone string) bool {
	if zone == "" || zone == "Z" {
		return true
	}
	digits := strings.Replace(zone[1:], ":", "", 1)
	if len(digits) == 2 {
		digits += "00"
	}
	if len(digits) != 4 {
		return false
	}
	hour, ok := twoDigits(digits[:2])
	minute, okToo := twoDigits(digits[2:])
	return ok && okToo && hour <= 14 && minute < 60 && zone[0] != 'Z'
}

func twoDigits(s string) (int, bool) {
	if len(s) != 2 || s[0] < '0' || s[0] > '9' || s[1] < '0' || s[1] > '9' {
		return 0, false
	}
	return int(s[0]-'0')*10 + int(s[1]-'0'), true
}

// hoursOutOfOrder returns the rows to leave out so that the rest rises; an hour
// that stands twice under two zones stays, the second as half an hour on.
func hoursOutOfOrder(stamps []stamp) []int {
	order := make([]cal.Date, len(stamps))
	for i, s := range stamps {
		if order[i] = cal.None; s.at == noHour {
			continue
		}
		order[i] = 2 * cal.Date(s.at)
		if i > 0 && stamps[i-1].at == s.at && stamps[i-1].zone != s.zone {
			order[i]++
		}
	}
	return outOfOrder(order)
}

// clockChange tells whether an hour may be one at which clocks change: the small
// hours of a Sunday in spring (1) or autumn (-1) of either hemisphere, in a
// record without zones.
func clockChange(s stamp, way int) bool {
	date := cal.Date(floorDiv(int(s.at), 24))
	hour := int(s.at) - 24*int(date)
	_, month, _ := date.YMD()
	sunday := date.Weekday() == 6
	spring := month == 3 || month == 9 || month == 10
	autumn := month == 10 || month == 11 || month == 4
	return s.zone == "" && sunday && hour <= 3 && (way > 0 && spring || way < 0 && autumn)
}

// mixedZones warns at the first row whose time has a zone where those before had
// none, or the other way round.
func mixedZones(t *table.Table, stamps []stamp) fault.List {
	first := -1
	for row, s := range stamps {
		if s.at == noHour {
			continue
		}
		if first < 0 {
			first = row
		}
		if (s.zone == "") != (stamps[first].zone == "") {
			return fault.List{fault.New(fault.Invalid, "station.zones_mixed", nil).In(t.At(row, columnTime))}
		}
	}
	return nil
}

// gapsOf warns of hours that are not there, at the row after them. Where the zone is
// written an hour that the clock skips is none of them.
func gapsOf(t *table.Table, hours []climate.Hour, stamps []stamp) (warnings fault.List) {
	kept := make([]stamp, 0, len(hours)) // those of the hours
	for _, s := range stamps {
		if s.at != noHour {
			kept = append(kept, s)
		}
	}
	for i := 1; i < len(hours); i++ {
		missing := int(kept[i].at-kept[i-1].at) - 1
		if a, b := kept[i-1].zone, kept[i].zone; a != b && a != "" && b != "" {
			missing += int(aheadOf(a)-aheadOf(b)) / 3600
		}
		if missing <= 0 {
			continue
		}
		key := "station.hours_missing"
		if missing == 1 && clockChange(stamp{at: kept[i-1].at + 1, zone: kept[0].zone}, 1) {
			key = "station.hour_missing_clock"
		}
		warnings = append(warnings, fault.New(fault.Invalid, key, words.Args{"n": missing}).
			In(fault.Place{File: t.Name, Row: hours[i].Row, Column: columnTime}))
	}
	return warnings
}
