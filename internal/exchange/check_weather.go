package exchange

import (
	"garner/internal/fault"
	"garner/internal/holding"
)

// checkWeather holds the normals of every site to its place: sunshine beyond the
// length of the day, radiation beyond what reaches the air.
func (c *checker) checkWeather() {
	for i, s := range c.h.Sites {
		source, known := c.ids["weather"][s.Weather]
		if !known || c.faulty("sites", i, "latitude_deg", "longitude_deg", "elevation_m") {
			continue
		}
		w := &c.h.Weather[source]
		if w.Normals == nil {
			continue
		}
		for _, e := range w.Normals.CheckAt(s.Location) {
			c.found.add(e.In(monthPlace(w, e)))
		}
	}
}

// monthPlace is the cell of a month's normal, with January in row 2.
func monthPlace(w *holding.WeatherSource, e *fault.Error) fault.Place {
	at := fault.Place{File: weatherSheet.write(w)[3], Column: e.At.Column}
	if month, ok := e.Phrase.Args["month"].(int); ok {
		at.Row = month + 1
	}
	return at
}
