package exchange

import (
	"math"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/observed"
	"garner/internal/station"
	"garner/internal/words"
)

// checkReadings looks at what was read off gauges and thermometers, typed of
// forecasts, and told of addresses and instruments.
func (c *checker) checkReadings() {
	for i := range c.h.WeatherReadings {
		c.checkReading(i, &c.h.WeatherReadings[i])
	}
	for i := range c.h.Foretold {
		f := &c.h.Foretold[i]
		c.checkExtremes("forecasts", i, f.TMinC, f.TMaxC)
		if f.Told.IsSet() && f.Date.IsSet() && f.Date < f.Told {
			c.wrong("forecasts", i, "date", fault.New(fault.Conflict, "exchange.forecast_past", words.Args{"date": f.Date.String(), "told": f.Told.String()}))
		}
	}
	for i := range c.h.Addresses {
		a := &c.h.Addresses[i]
		if a.Layout == observed.MapJSON {
			if _, err := station.ReadMap(a.Map); err != nil {
				c.wrong("addresses", i, "map", asFault(err))
			}
		}
	}
	for i := range c.h.Sensors {
		c.checkSensor(i, &c.h.Sensors[i])
	}
}

// mostHalfDayC is how far two readings of one site may lie apart within a day:
// further than any station's daily range but a handful (55 C; memory).
const mostHalfDayC = 55

func (c *checker) checkReading(i int, r *observed.Reading) {
	table := "weather_readings"
	if !r.RainMM.Known && !r.TMinC.Known && !r.TMaxC.Known && !r.HumidityPct.Known && !r.RadiationMJ.Known && !r.WindMS.Known && !c.faulty(table, i, "rain_mm", "tmin_c", "tmax_c", "rh_pct", "rad_mj_m2", "wind_ms") {
		c.wrong(table, i, "rain_mm", fault.New(fault.Invalid, "exchange.reading_empty", nil))
	}
	c.checkExtremes(table, i, r.TMinC, r.TMaxC)
	switch {
	case r.Since.IsSet() && r.Date.IsSet() && r.Since > r.Date:
		c.wrong(table, i, "since", fault.New(fault.Conflict, "exchange.reading_since", words.Args{"since": r.Since.String(), "date": r.Date.String()}))
	case r.Bed != "" && r.RainMM.Known:
		c.wrong(table, i, "rain_mm", fault.New(fault.Invalid, "exchange.reading_rain_covered", nil))
	}
	if r.Date.IsSet() && c.h.Today.IsSet() && r.Date > c.h.Today {
		c.wrong(table, i, "date", fault.New(fault.Invalid, "exchange.after_today", words.Args{"given": r.Date.String(), "today": c.h.Today.String()}))
	}
}

// checkExtremes finds a minimum above the maximum, and a range no day has.
func (c *checker) checkExtremes(table string, i int, low, high climate.Maybe) {
	if !low.Known || !high.Known || c.faulty(table, i, "tmin_c", "tmax_c") {
		return
	}
	switch {
	case low.Value > high.Value:
		c.wrong(table, i, "tmin_c", fault.New(fault.Conflict, "station.minimum_above_maximum", words.Args{"tmin": low.Value, "tmax": high.Value}))
	case math.Abs(high.Value-low.Value) > mostHalfDayC:
		c.wrong(table, i, "tmax_c", fault.New(fault.Invalid, "exchange.reading_range", words.Args{"tmin": low.Value, "tmax": high.Value}))
	}
}

func (c *checker) checkSensor(i int, s *observed.Sensor) {
	units := observed.UnitsOf(s.Quantity)
	if units == nil || s.Unit == "" {
		return // told already
	}
	for _, u := range units {
		if u == s.Unit {
			if observed.InSoil(s.Quantity) && s.Bed == "" {
				c.wrong("sensors", i, "bed", fault.New(fault.Invalid, "exchange.sensor_bed", nil))
			}
			return
		}
	}
	c.wrong("sensors", i, "unit", fault.New(fault.Invalid, "exchange.sensor_unit", words.Args{"given": s.Unit, "quantity": s.Quantity, "units": units}))
}
