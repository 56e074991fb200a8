package station

import (
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// The fields of a line of ISD-Lite.
const (
	isdYear = iota
	isdMonth
	isdDay
	isdHour
	isdTemp
	isdDew
	isdPressure
	isdDirection
	isdWind
	isdSky
	isdRain1
	isdRain6
	isdFields
)

const (
	isdMissing = -9999
	isdTrace   = -1
	isdWindM   = 10 // the usual height of the cups of such stations [m] (WMO-No. 8; memory)
)

// isdReading is a file of ISD-Lite while it is read.
type isdReading struct {
	found  *Found
	lines  *lines
	windM  float64
	hours  []Reading // temperatures, dew points and wind at a moment
	rain1  []Reading // rain of the hour before, and
	rain6  []Reading // of the six hours before
	before int64     // the moment last seen
}

// readISDLite reads hours in UTC: year, month, day, hour, air temperature, dew
// point, pressure, wind direction and speed, sky, rain of the hour and of the six
// hours before, parted by blanks; tenths but for direction and sky, -9999 missing,
// -1 in rain a trace. They are summed to days by the site's clock.
//
// Format: ISD-Lite format document (National Centers for Environmental
// Information), by the notes on formats kept with the samples.
func readISDLite(r io.Reader, name string, o Options, found *Found) error {
	i := &isdReading{found: found, lines: newLines(r, name), windM: o.WindHeightM, before: math.MinInt64}
	if i.windM == 0 {
		i.windM = isdWindM
	}
	for i.lines.next() {
		if cells := strings.Fields(i.lines.text()); len(cells) > 0 {
			found.Rows++
			i.line(cells)
		}
	}
	if err := i.lines.err(); err != nil {
		return err
	}
	found.Station.ID = isdStation(name)
	i.sum(o.Clock, name)
	return nil
}

func (i *isdReading) refuse(column, key string, args words.Args) {
	i.found.Refused = append(i.found.Refused, fault.New(fault.Invalid, key, args).In(i.lines.at(column)))
}

// line reads one line.
func (i *isdReading) line(cells []string) {
	if len(cells) != isdFields {
		i.refuse("", "station.isd_line", words.Args{"n": len(cells), "want": isdFields})
		return
	}
	var v [isdFields]int
	for k, cell := range cells {
		n, err := strconv.Atoi(cell)
		if err != nil {
			i.refuse(isdNames[k], "station.not_whole", words.Args{"given": cell})
			return
		}
		v[k] = n
	}
	date, err := cal.Parse(ymd(v[isdYear], v[isdMonth], v[isdDay]))
	if err != nil || v[isdHour] < 0 || v[isdHour] > 23 || v[isdYear] < earliestYear || v[isdYear] > latestYear {
		i.refuse("", "station.isd_time", words.Args{"given": strings.Join(cells[:4], " ")})
		return
	}
	at := int64(date)*daySeconds + int64(v[isdHour])*3600
	switch {
	case at == i.before:
		i.refuse("", "station.hour_again", words.Args{"given": strings.Join(cells[:4], " ")})
		return
	case at < i.before:
		i.refuse("", "station.hour_out_of_order", words.Args{"given": strings.Join(cells[:4], " ")})
		return
	}
	i.before = at
	i.values(at, &v)
	i.found.Kept++
}

// isdNames are the fields as the format calls them, for a place.
var isdNames = [isdFields]string{"year", "month", "day", "hour", "air temperature", "dew point", "pressure", "wind direction",
	"wind speed", "sky", "rain 1 h", "rain 6 h"}

func ymd(year, month, day int) string {
	two := func(n int) string {
		if n >= 0 && n < 10 {
			return "0" + strconv.Itoa(n)
		}
		return strconv.Itoa(n)
	}
	return strconv.Itoa(year) + "-" + two(month) + "-" + two(day)
}

// values takes what was measured at a moment.
func (i *isdReading) values(at int64, v *[isdFields]int) {
	h := nothing(at, 0, i.lines.row)
	h.TempC = i.tenths(v, isdTemp, climate.LeastC, climate.MostC)
	h.DewC = i.tenths(v, isdDew, climate.LeastC, climate.MostC)
	if wind := i.tenths(v, isdWind, 0, wind.high); !math.IsNaN(wind) {
		h.WindMS = climate.WindAt2M(wind, i.windM)
	}
	if h.DewC > h.TempC+0.5 {
		i.refuse(isdNames[isdDew], "station.dew_above_air", words.Args{"dew": h.DewC, "temp": h.TempC})
		h.DewC = math.NaN()
	}
	i.hours = append(i.hours, h)
	one, six := nothing(at, 3600, i.lines.row), nothing(at, 6*3600, i.lines.row)
	if one.RainMM = i.tenths(v, isdRain1, 0, 400); !math.IsNaN(one.RainMM) {
		i.rain1 = append(i.rain1, one)
	}
	if six.RainMM = i.tenths(v, isdRain6, 0, 1200); !math.IsNaN(six.RainMM) {
		i.rain6 = append(i.rain6, six)
	}
}

// tenths reads a field in tenths; NaN where it is missing or cannot be.
func (i *isdReading) tenths(v *[isdFields]int, field int, low, high float64) float64 {
	n := v[field]
	if n == isdMissing {
		return math.NaN()
	}
	if n == isdTrace && (field == isdRain1 || field == isdRain6) {
		return 0
	}
	x := float64(n) / 10
	if x < low || x > high {
		i.refuse(isdNames[field], "station.value_impossible", words.Args{"given": x, "low": low, "high": high})
		return math.NaN()
	}
	return x
}

// sum makes days of the hours. A reading stands for the time half-way to its
// neighbours, by the step the record is mostly kept in. Rain comes from the hours;
// where they do not tell it for a day, from the six-hour sums.
func (i *isdReading) sum(clock Clock, name string) {
	step := stepOf(i.hours)
	days, six, hourly := newDaySums(clock), newDaySums(clock), newHourSums(clock)
	filter := &spikeFilter{pass: func(r *Reading) { days.add(r); hourly.add(r) }, report: &i.found.Report, name: name, column: isdNames[isdTemp]}
	for _, h := range i.hours {
		h.Seconds, h.At = step, h.At+step/2
		filter.add(h)
	}
	filter.flush()
	for k := range i.rain1 {
		days.add(&i.rain1[k])
		hourly.add(&i.rain1[k])
	}
	for k := range i.rain6 {
		six.add(&i.rain6[k])
	}
	i.found.Days, i.found.Hours = days.record(&i.found.Report, name, isdNames[isdTemp]), hourly.hours()
	for k := range i.found.Days.Days {
		o := &i.found.Days.Days[k]
		if day := six.days[o.Date]; day != nil && !o.RainMM.Known && day.rain.enough(six.length(o.Date)) {
			o.RainMM = climate.Is(rounded(day.rain.sum))
		}
	}
}

// stepOf is the commonest step between readings, at most three hours [s].
func stepOf(hours []Reading) int64 {
	if len(hours) < 2 {
		return 3600
	}
	steps := make([]int64, 0, len(hours)-1)
	for k := 1; k < len(hours); k++ {
		steps = append(steps, hours[k].At-hours[k-1].At)
	}
	slices.Sort(steps)
	return min(steps[len(steps)/2], 3*3600)
}

// isdStation is the station in the name of a file of one station and year, as
// 725090-14739-2000; "" for any other name.
func isdStation(name string) string {
	base := name[strings.LastIndexAny(name, `/\`)+1:]
	parts := strings.Split(strings.SplitN(base, ".", 2)[0], "-")
	if len(parts) != 3 || len(parts[0]) != 6 || len(parts[1]) != 5 || len(parts[2]) != 4 {
		return ""
	}
	return parts[0] + "-" + parts[1]
}
