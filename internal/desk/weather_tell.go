package desk

import (
	"math"
	"slices"
	"strconv"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/observed"
	"garner/internal/place"
	"garner/internal/words"
)

// TellReading keeps what was read off a gauge or a thermometer, as one entry. One
// that is hardly possible at the site is asked about once, at "sure".
func (o *Office) TellReading(by Author, cells map[string]string, sure bool) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, now, err := o.telling()
		if err != nil {
			return journal.Entry{}, err
		}
		if on := dateIn(cells["date"]); on.IsSet() && on > now {
			return journal.Entry{}, toCome(now)
		}
		if err := w.add("weather_readings", cells); err != nil {
			return journal.Entry{}, err
		}
		if odd := oddReading(w.holding, cellsOf(exchange.Columns("weather_readings"), w.changes[0].After)); odd != nil && !sure {
			return journal.Entry{}, fault.List{odd}
		}
		return w.entry(w.names.said(w.changes[0]))
	})
}

func toCome(now cal.Date) fault.List {
	return fault.List{fault.New(fault.Invalid, "desk.lost_to_come", words.Args{"today": now}).In(fault.Place{Column: "date"})}
}

// telling readies an entry of new rows.
func (o *Office) telling() (*lossWork, cal.Date, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, cal.None, err
	}
	now, err := today(h)
	if err != nil {
		return nil, cal.None, err
	}
	names, err := o.naming()
	return &lossWork{office: o, holding: h, names: names, taken: map[string]map[string]bool{}}, now, err
}

// TellForecast keeps the days of a forecast as one entry. Days that were told
// today already are replaced.
func (o *Office) TellForecast(by Author, site string, days []map[string]string) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, now, err := o.telling()
		if err != nil {
			return journal.Entry{}, err
		}
		for _, cells := range days {
			cells["site"], cells["told"] = site, now.String()
			if err := w.addForecast(cells); err != nil {
				return journal.Entry{}, err
			}
		}
		return w.entry(words.P("desk.said_forecast", words.Args{"n": len(days), "site": w.names.name("sites", site)}))
	})
}

// addForecast adds a day, or changes the one that was told on the same day.
func (w *lossWork) addForecast(cells map[string]string) error {
	for _, f := range w.holding.Foretold {
		if f.Site != cells["site"] || f.Date.String() != cells["date"] || f.Told.String() != cells["told"] {
			continue
		}
		rows := w.names.rows["forecasts"]
		for _, r := range rows {
			if r.ID == f.ID {
				columns, err := columnsOf("forecasts")
				if err != nil {
					return err
				}
				c, err := w.office.saving("forecasts", columns, f.ID, cells, r.Version)
				if err != nil {
					return err
				}
				if c != nil {
					w.changes = append(w.changes, *c)
				}
				return nil
			}
		}
	}
	return w.add("forecasts", cells)
}

// What is hardly possible. The day's extremes of a temperate station lie within
// about 20 C of the usual ones (its records; memory); a gauge of a garden holds 35
// to 150 mm.
const (
	farFromUsualC = 22
	mostGaugeMM   = 120
	mostJumpC     = 25 // between two readings of the same kind within two days
)

// oddReading doubts a reading that is far from what the site knows; nil when it
// is not. Readings under covers are as warm as they like.
func oddReading(h *holding.Holding, cells map[string]string) *fault.Error {
	doubt := func(key string, args words.Args) *fault.Error {
		return fault.New(fault.Invalid, key, args).In(fault.Place{Column: "sure"})
	}
	if mm, ok := toldNumber(cells["rain_mm"]); ok && mm > mostGaugeMM {
		return doubt("desk.odd_rain", words.Args{"mm": mm})
	}
	at := slices.IndexFunc(h.Sites, func(s place.Site) bool { return s.ID == cells["site"] })
	if at < 0 || cells["bed"] != "" {
		return nil
	}
	site := h.Sites[at]
	date := dateIn(cells["date"])
	normals, err := normalsAt(h, site)
	for _, column := range []string{"tmin_c", "tmax_c"} {
		c, ok := toldNumber(cells[column])
		if !ok || !date.IsSet() {
			continue
		}
		if err == nil {
			usual := usualOf(normals.Usual().On(date), column)
			if math.Abs(c-usual) > farFromUsualC {
				if asF := (c - 32) / 1.8; math.Abs(asF-usual) < farFromUsualC/2 {
					return doubt("desk.odd_fahrenheit", words.Args{"c": c, "f": asF})
				}
				return doubt("desk.odd_usual", words.Args{"c": c, "usual": math.Round(usual)})
			}
		}
		if before, on, found := lastRead(h, site.ID, column, date); found && math.Abs(c-before) > mostJumpC {
			return doubt("desk.odd_jump", words.Args{"c": c, "before": before, "on": on})
		}
	}
	return nil
}

func usualOf(o climate.Observation, column string) float64 {
	if column == "tmin_c" {
		return o.TMinC.Value
	}
	return o.TMaxC.Value
}

// lastRead is the reading of a column in the two days before a date.
func lastRead(h *holding.Holding, site, column string, date cal.Date) (c float64, on cal.Date, found bool) {
	for i := range h.WeatherReadings {
		r := &h.WeatherReadings[i]
		m := r.TMinC
		if column == "tmax_c" {
			m = r.TMaxC
		}
		if r.Site == site && r.Bed == "" && r.By == observed.ByHand && m.Known && r.Date < date && r.Date >= date-2 && (!found || r.Date > on) {
			c, on, found = m.Value, r.Date, true
		}
	}
	return c, on, found
}

// toldNumber is a number as the tables write it, and whether there is one.
func toldNumber(cell string) (float64, bool) {
	v, err := strconv.ParseFloat(cell, 64)
	return v, err == nil
}
