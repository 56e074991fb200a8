package desk

import (
	"slices"
	"time"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/observed"
	"garner/internal/words"
)

// lookBackDays is how far back whole days are still made of what instruments
// sent: as long as an instrument may keep its figures.
const lookBackDays = 14

// wholeHours is how many hours of a day must have been heard for its extremes
// and means: with fewer the night or the noon may be missing.
const wholeHours = 20

// sensorDay is a row of what the instruments of a place told of a day.
type sensorDay struct {
	table     string
	site, bed string
	cells     map[string]string
}

// CloseDays makes readings of the days that are over of what instruments sent: one
// entry for each day. A day that was told is not told again, so that what a person
// then changes or takes back stays as they left it.
func (o *Office) CloseDays(by Author) error {
	h, err := o.Holding()
	if err != nil {
		return err
	}
	now, err := today(h)
	if err != nil || len(h.Sensors) == 0 {
		return err
	}
	for d := now - lookBackDays; d < now; d++ {
		own := by
		own.Entry = "instruments-" + d.String()
		own.Key = own.Entry
		if made, err := o.made(own); made != nil || err != nil {
			if err != nil {
				return err
			}
			continue
		}
		days, err := o.sensorDays(h, d)
		if err != nil {
			return err
		}
		if len(days) == 0 {
			continue
		}
		if _, err := o.write(own, func() (journal.Entry, error) { return o.daysEntry(d, days) }); err != nil {
			return err
		}
	}
	return nil
}

func (o *Office) daysEntry(d cal.Date, days []sensorDay) (journal.Entry, error) {
	w, _, err := o.telling()
	if err != nil {
		return journal.Entry{}, err
	}
	for _, day := range days {
		if err := w.add(day.table, day.cells); err != nil {
			return journal.Entry{}, err
		}
	}
	return w.entry(words.P("desk.said_instruments", words.Args{"date": d}))
}

// sensorDays are what the instruments told of a day, by place, and then what the
// probes in the soil told of that morning, where the holding has a table for it.
func (o *Office) sensorDays(h *holding.Holding, d cal.Date) ([]sensorDay, error) {
	var out []sensorDay
	for i := range h.Sensors {
		s := &h.Sensors[i]
		if observed.InSoil(s.Quantity) {
			continue
		}
		cells, err := o.dayCells(h, s, d)
		if err != nil {
			return nil, err
		}
		if len(cells) == 0 {
			continue
		}
		at := slices.IndexFunc(out, func(k sensorDay) bool { return k.table == "weather_readings" && k.site == s.Site && k.bed == s.Bed })
		if at < 0 {
			at = len(out)
			out = append(out, sensorDay{"weather_readings", s.Site, s.Bed, map[string]string{"site": s.Site, "bed": s.Bed, "date": d.String(), "by": observed.Instrument}})
		}
		for name, cell := range cells {
			if _, told := out[at].cells[name]; !told { // of two instruments the first in the list counts
				out[at].cells[name] = cell
			}
		}
	}
	probes, err := o.probeDays(h, d)
	return append(out, probes...), err
}

// dayCells are what one instrument tells of a day, as cells of a reading.
func (o *Office) dayCells(h *holding.Holding, s *observed.Sensor, d cal.Date) (map[string]string, error) {
	sum, err := o.daySum(h, s.ID, d)
	if err != nil || sum.hours == 0 {
		return nil, err
	}
	return cellsOfSum(s, &sum), nil
}

// cellsOfSum are a day's figures of one instrument.
func cellsOfSum(s *observed.Sensor, sum *daySum) map[string]string {
	whole, mean := sum.hours >= wholeHours, sum.total/float64(max(1, sum.n))
	switch {
	case s.Quantity == observed.Temperature && whole:
		return map[string]string{"tmin_c": hundredths(sum.least), "tmax_c": hundredths(sum.most)}
	case (s.Quantity == observed.Rain || s.Quantity == observed.RainTotal) && s.Bed == "":
		return map[string]string{"rain_mm": hundredths(sum.rise)}
	case s.Quantity == observed.Humidity && whole:
		return map[string]string{"rh_pct": hundredths(max(1, mean))}
	case s.Quantity == observed.Radiation && whole:
		return map[string]string{"rad_mj_m2": hundredths(min(50, sum.means/float64(sum.hours)*0.0864))}
	case s.Quantity == observed.Wind && whole:
		return map[string]string{"wind_ms": hundredths(min(60, mean))}
	}
	return nil
}

// daySum is what was heard of an instrument within a day.
type daySum struct {
	hours, n           int
	total, means, rise float64 // means: of the hours' means, which are not weighted by how often it sent
	least, most        float64
}

func (o *Office) daySum(h *holding.Holding, sensor string, d cal.Date) (daySum, error) {
	return o.hoursSum(h, sensor, d, 0, 24)
}

// hoursSum is what was heard from one hour of a day to before another.
func (o *Office) hoursSum(h *holding.Holding, sensor string, d cal.Date, first, end int) (s daySum, err error) {
	k, can := o.keeper.(WeatherKeeper)
	if !can {
		return s, nil
	}
	zone := zoneOf(h)
	y, m, day := d.YMD()
	from, to := time.Date(y, time.Month(m), day, first, 0, 0, 0, zone), time.Date(y, time.Month(m), day, end, 0, 0, 0, zone)
	hours, err := k.MeasuredHours(sensor, from.Unix()/3600)
	for _, f := range hours {
		if f.Hour*3600 < from.Unix() || f.Hour*3600 >= to.Unix() {
			continue
		}
		if s.hours == 0 || f.Least < s.least {
			s.least = f.Least
		}
		if s.hours == 0 || f.Most > s.most {
			s.most = f.Most
		}
		s.hours++
		s.n += f.N
		s.total += f.Total
		s.means += f.Total / float64(f.N)
		s.rise += f.Rise
	}
	return s, err
}

// hundredths writes a figure as an instrument deserves.
func hundredths(v float64) string { return numberCell(float64(int64(v*100+sign(v)*0.5)) / 100) }

func sign(v float64) float64 {
	if v < 0 {
		return -1
	}
	return 1
}
