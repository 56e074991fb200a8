package exchange

import (
	"errors"

	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/water"
	"garner/internal/words"
)

// checkWater looks at the sources of water, at the beds that hang on them, and at what
// was read of the soil's moisture.
func (c *checker) checkWater() {
	site := map[string]string{}
	for i := range c.h.Sources {
		w := &c.h.Sources[i]
		site[w.ID] = w.Site
		switch {
		case w.Kind == place.Butt && w.HoldsL == 0 && !c.faulty("water_sources", i, "holds_l"):
			c.wrong("water_sources", i, "holds_l", fault.New(fault.Invalid, "exchange.butt_holds", nil))
		case w.Kind != place.Butt && w.Kind != "" && w.RoofM2 > 0:
			c.wrong("water_sources", i, "roof_m2", fault.New(fault.Invalid, "exchange.roof_of_no_butt", nil))
		case w.RoofM2 == 0 && w.Covering != "" && !c.faulty("water_sources", i, "roof_m2"):
			c.wrong("water_sources", i, "roof_m2", fault.New(fault.Invalid, "exchange.covering_of_no_roof", nil))
		}
	}
	for i := range c.h.Beds {
		b := &c.h.Beds[i]
		if at, known := site[b.Water]; known && at != b.Site {
			c.wrong("beds", i, "water", fault.New(fault.Conflict, "exchange.water_elsewhere", words.Args{"bed": b.Name}))
		}
	}
	for i := range c.h.Readings {
		c.checkMoisture(i, &c.h.Readings[i])
	}
}

// checkMoisture looks whether a reading can be, in the soil of its bed.
func (c *checker) checkMoisture(i int, r *record.Reading) {
	finger := r.Way == record.Finger
	switch {
	case r.Date.IsSet() && c.h.Today.IsSet() && r.Date > c.h.Today:
		c.wrong("moisture_readings", i, "date", fault.New(fault.Invalid, "exchange.after_today", words.Args{"given": r.Date.String(), "today": c.h.Today.String()}))
	case finger && r.Value != 0:
		c.wrong("moisture_readings", i, "value", fault.New(fault.Invalid, "exchange.finger_value", nil))
	case finger && r.Felt == "" && !c.faulty("moisture_readings", i, "felt"):
		c.wrong("moisture_readings", i, "felt", fault.New(fault.Invalid, "exchange.finger_felt", nil))
	case !finger && r.Way != "" && r.Felt != "":
		c.wrong("moisture_readings", i, "felt", fault.New(fault.Invalid, "exchange.felt_spare", nil))
	case !finger && r.Way != "" && r.Value == 0 && !c.faulty("moisture_readings", i, "value"):
		c.wrong("moisture_readings", i, "value", fault.New(fault.Invalid, "exchange.reading_value", nil))
	case !finger && r.Value > 0 && !c.faulty("moisture_readings", i, "value"):
		c.plausible(i, r)
	}
}

func (c *checker) plausible(i int, r *record.Reading) {
	for k := range c.h.Beds {
		if c.h.Beds[k].ID != r.Bed {
			continue
		}
		texture := water.TextureOf(c.h.Beds[k].Texture, c.h.Beds[k].OwnSoil())
		told := water.Reading{Way: string(r.Way), Value: r.Value, Sure: r.Sure}
		var e *fault.Error
		if _, err := told.In(texture); errors.As(err, &e) {
			c.wrong("moisture_readings", i, "value", e)
		}
	}
}
