package desk

import (
	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/observed"
)

// probeTable is where readings of the soil's moisture are kept, one a day, of the
// morning and before that day's water.
const probeTable = "moisture_readings"

// The morning of a probe: after the night, in which water in the soil has come to
// rest, and before anybody waters.
const (
	morningFrom = 3
	morningTo   = 7
)

// probeWays are what the table calls the quantities of probes.
var probeWays = map[string]string{observed.SoilMoisture: "probe", observed.SoilTension: "tensiometer"}

// probeDays are the means of a morning that the probes in beds sent, as rows.
// Nothing where the holding has no table for them.
func (o *Office) probeDays(h *holding.Holding, d cal.Date) ([]sensorDay, error) {
	if exchange.Columns(probeTable) == nil {
		return nil, nil
	}
	var out []sensorDay
	for i := range h.Sensors {
		s := &h.Sensors[i]
		if !observed.InSoil(s.Quantity) {
			continue
		}
		sum, err := o.hoursSum(h, s.ID, d, morningFrom, morningTo)
		if err != nil {
			return nil, err
		}
		if sum.hours > 0 {
			out = append(out, sensorDay{probeTable, s.Site, s.Bed, map[string]string{"date": d.String(), "bed": s.Bed,
				"way": probeWays[s.Quantity], "value": hundredths(sum.means / float64(sum.hours))}})
		}
	}
	return out, nil
}
