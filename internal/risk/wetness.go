package risk

import (
	"math"

	"garner/internal/climate"
)

// Wetness is a way of telling wet leaves from the air. The list is closed and
// documented.
type Wetness string

// The ways. Rain counts in none of them: it is nearly always humid then.
const (
	// ByHumidity takes leaves for wet from 90 % on, right in 87-92 of 100 hours
	// (Sentelhas et al. 2008).
	ByHumidity Wetness = "humidity"
	// ByDewPoint takes them for wet from 2 C above the dew point until 3.8 C
	// (Gillespie et al. 1993, from memory).
	ByDewPoint Wetness = "dew-point"
	// ByTree asks dew point, wind and humidity in turn (Gleason et al. 1994).
	ByTree Wetness = "tree"
)

// Wetnesses are all of them, the usual one first.
func Wetnesses() []Wetness { return []Wetness{ByHumidity, ByDewPoint, ByTree} }

const (
	humidPct   = 90  // wet from here
	wetBelowC  = 2.0 // dew-point depression at which leaves become wet
	dryAboveC  = 3.8 // and dry
	treeDryC   = 3.7 // depression from which the tree says dry
	treeWindMS = 2.5 // wind below which it asks its first equation
	treeRHPct  = 87.8
	treeFirst  = 14.4674
	treeSecond = 37.0
)

// wetHours tells for each hour whether leaves are wet. An hour without humidity, or
// for the tree without wind, is dry.
func wetHours(hours []climate.Hour, by Wetness) []bool {
	out := make([]bool, len(hours))
	wet := false
	for i := range hours {
		h := &hours[i]
		switch by {
		case ByDewPoint:
			apart := h.TempC - h.DewC()
			wet = apart <= wetBelowC || wet && apart <= dryAboveC
			out[i] = wet
		case ByTree:
			out[i] = treeWet(h.TempC, h.HumidityPct, h.WindMS, h.TempC-h.DewC())
		default:
			out[i] = h.HumidityPct >= humidPct
		}
	}
	return out
}

// treeWet tells whether leaves are wet by temperature [C], humidity [%], wind [m/s]
// and the distance to the dew point [C]. Below freezing they count as dry.
//
// Source: Gleason et al. 1994, Plant Disease 78:1011-1016; Kim et al. 2002.
func treeWet(c, pct, windMS, apartC float64) bool {
	if !(c >= 0) || math.IsNaN(windMS) || !(apartC < treeDryC) {
		return false
	}
	if windMS < treeWindMS {
		return 1.6064*math.Sqrt(c)+0.0036*c*c+0.1531*pct-0.4599*windMS*apartC-0.0035*c*pct > treeFirst
	}
	return pct >= treeRHPct &&
		0.7921*math.Sqrt(c)+0.0046*pct-2.3889*windMS-0.0390*c*windMS+1.0613*windMS*apartC > treeSecond
}
