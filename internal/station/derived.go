package station

import (
	"garner/internal/climate"
	"garner/internal/table"
)

// takeExtremes fills a day's mean humidity from the most and the least of the
// day, where nothing else tells it.
func takeExtremes(o *climate.Observation, t *table.Table, row int, report *Report) {
	most, f := mostDamp.value(t, row, t.Column(columnHumidityMost))
	if f != nil {
		report.Refused = append(report.Refused, f)
	}
	least, f := leastDamp.value(t, row, t.Column(columnHumidityLeast))
	if f != nil {
		report.Refused = append(report.Refused, f)
	}
	if o.HumidityPct.Known || o.DewC.Known || !most.Known || !least.Known || !o.TMinC.Known || !o.TMaxC.Known {
		return
	}
	o.HumidityPct = climate.Is(climate.HumidityFromExtremes(most.Value, least.Value, o.TMinC.Value, o.TMaxC.Value))
}

// lowerWind brings wind that was measured at another height down to 2 m; 0: it was
// measured there.
func lowerWind(o *climate.Observation, heightM float64) {
	if heightM > 0 && heightM != 2 {
		o.WindMS.Value = climate.WindAt2M(o.WindMS.Value, heightM)
	}
}
