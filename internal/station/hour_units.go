package station

import (
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// unitsOf warns of temperatures as given that look like Fahrenheit, of humidity that
// looks like shares of 1, of rain that looks like inches and of wind that looks like
// kilometres an hour.
func unitsOf(t *table.Table) (warnings fault.List) {
	temp, humid := t.Column(columnTemp), t.Column(columnHumidity)
	var n, hot int
	var sum, wettest float64
	for _, row := range t.Rows {
		if v, ok := t.Number(row[temp]); ok && v > -100 && v < 140 {
			n++
			sum += v
			if v > hottestC {
				hot++
			}
		}
		if humid >= 0 {
			v, _ := t.Number(row[humid])
			wettest = max(wettest, v)
		}
	}
	if n < 24*enoughDays {
		return nil
	}
	if mean := sum / float64(n); float64(hot) >= hotShare*float64(n) || mean >= warmestMeanC {
		warnings = append(warnings, fault.New(fault.Invalid, "station.hours_look_fahrenheit",
			words.Args{"hours": hot, "mean": mean}).In(fault.Place{File: t.Name, Column: columnTemp}))
	}
	if wettest > 0 && wettest <= 1 {
		warnings = append(warnings, fault.New(fault.Invalid, "station.humidity_looks_share",
			words.Args{"most": wettest}).In(fault.Place{File: t.Name, Column: columnHumidity}))
	}
	return append(warnings, rainAndWindOf(t)...)
}

// rainAndWindOf warns of rain and wind in another unit, by the limits for days: the mean
// of the days with any rain, and the mean wind.
func rainAndWindOf(t *table.Table) (warnings fault.List) {
	at, rain, wind := t.Column(columnTime), t.Column(columnRain), t.Column(columnWind)
	wet := map[string]float64{} // by day as written
	var blown weighted
	for _, row := range t.Rows {
		if rain >= 0 {
			if v, ok := t.Number(row[rain]); ok && v > 0 {
				day, _, _ := cut(row[at])
				wet[day] += v
			}
		}
		if wind >= 0 {
			if v, ok := t.Number(row[wind]); ok && v >= 0 {
				blown.add(v, 1)
			}
		}
	}
	sum := 0.0
	for _, v := range wet {
		sum += v
	}
	if n := float64(len(wet)); n >= enoughWetDays && sum/n < leastWetDayMM {
		warnings = append(warnings, fault.New(fault.Invalid, "station.looks_inches", words.Args{"mean": sum / n}).
			In(fault.Place{File: t.Name, Column: columnRain}))
	}
	if mean := blown.sum / blown.seconds; blown.seconds >= 24*enoughDays && mean > mostMeanWindMS {
		warnings = append(warnings, fault.New(fault.Invalid, "station.looks_kmh", words.Args{"mean": mean}).
			In(fault.Place{File: t.Name, Column: columnWind}))
	}
	return warnings
}
