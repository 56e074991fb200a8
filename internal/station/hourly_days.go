package station

import (
	"io"
	"math"
	"slices"
	"strconv"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
)

// readHourlyFile reads an hourly record and sums it to days. Hours with a zone are
// put to days by the site's clock; hours without one keep the day they are written
// under.
func readHourlyFile(r io.Reader, name string, o Options, found *Found) error {
	t, err := table.Read(r, name, MostBytes)
	if err != nil {
		return err
	}
	hours, stamps, report, err := hoursOf(t)
	if err != nil {
		return err
	}
	found.Report = report
	found.Warnings = without(found.Warnings, "station.spike") // told again, as doubtful
	var clock Clock                                           // none: hours without a zone are the site's own
	if zoned(stamps) {
		clock = o.Clock
	}
	days, hourly := newDaySums(clock), newHourSums(clock)
	filter := &spikeFilter{pass: func(r *Reading) { days.add(r); hourly.add(r) }, report: &found.Report, name: name, column: columnTemp}
	radiation, k := t.Column(columnRadiation), 0
	for row, s := range stamps {
		if s.at == noHour {
			continue
		}
		h := &hours[k]
		k++
		reading := readingOf(h, s, clock)
		if o.WindHeightM > 0 && o.WindHeightM != 2 {
			reading.WindMS = climate.WindAt2M(h.WindMS, o.WindHeightM)
		}
		reading.RadiationWM2 = hourRadiation(t, row, radiation, found)
		filter.add(reading)
	}
	filter.flush()
	found.Days, found.Hours = days.record(&found.Report, name, columnTemp), hourly.hours()
	return nil
}

// ReadHourlyBy is ReadHourly for a site: hours with a zone are put to the hours of its
// clock, where an hour that the clock repeats is both together. What makes the record as
// a whole unfit is in the report's Wrong, and hours that jump in its Doubtful.
func ReadHourlyBy(r io.Reader, name string, clock Clock) ([]climate.Hour, Report, error) {
	t, err := table.Read(r, name, MostBytes)
	if err != nil {
		return nil, Report{}, err
	}
	hours, stamps, report, err := hoursOf(t)
	if err != nil {
		return nil, report, err
	}
	report.moveWrong()
	for _, w := range report.Warnings {
		if w.Phrase.Key == "station.spike" || w.Phrase.Key == "station.jump" {
			report.Doubtful = append(report.Doubtful, w)
		}
	}
	report.Warnings = without(report.Warnings, "station.spike", "station.jump")
	if !zoned(stamps) {
		return hours, report, nil
	}
	sums, k := newHourSums(clock), 0
	for _, s := range stamps {
		if s.at != noHour {
			reading := readingOf(&hours[k], s, clock)
			sums.add(&reading)
			k++
		}
	}
	return sums.all(), report, nil
}

// zoned tells whether any time has a zone.
func zoned(stamps []stamp) bool {
	return slices.ContainsFunc(stamps, func(s stamp) bool { return s.at != noHour && s.zone != "" })
}

// readingOf is an hour as a reading; one without a zone is by the clock.
func readingOf(h *climate.Hour, s stamp, clock Clock) Reading {
	end := (int64(s.at) + 1) * 3600
	ahead := aheadOf(s.zone)
	if s.zone == "" && clock != nil {
		ahead = clock(end - clock(end))
	}
	r := nothing(end-ahead, 3600, h.Row)
	r.TempC, r.HumidityPct, r.RainMM, r.WindMS = h.TempC, h.HumidityPct, h.RainMM, h.WindMS
	return r
}

// hourRadiation is the mean radiation of an hour [W/m2], of which the table has
// the sum [MJ/m2].
func hourRadiation(t *table.Table, row, at int, found *Found) float64 {
	v, f := column{columnRadiation, 0, 6, false}.value(t, row, at)
	if f != nil {
		found.Refused = append(found.Refused, f)
	}
	if !v.Known {
		return math.NaN()
	}
	return v.Value * 1e6 / 3600
}

// aheadOf is how far a zone as written is ahead of UTC [s]; none is not.
func aheadOf(zone string) int64 {
	digits := slices.DeleteFunc([]byte(zone), func(b byte) bool { return b < '0' || b > '9' })
	if len(digits) < 2 {
		return 0
	}
	hours, _ := strconv.Atoi(string(digits[:2])) // digits, and a zone as it was checked
	minutes := 0
	if len(digits) >= 4 {
		minutes, _ = strconv.Atoi(string(digits[2:4]))
	}
	ahead := int64(hours*3600 + minutes*60)
	if zone[0] == '-' {
		return -ahead
	}
	return ahead
}

// without leaves out faults of some keys.
func without(faults fault.List, keys ...string) fault.List {
	return slices.DeleteFunc(faults, func(f *fault.Error) bool { return slices.Contains(keys, f.Phrase.Key) })
}
