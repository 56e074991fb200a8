package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
)

// lastForecast is the last day from today on that a forecast tells both extremes of;
// None: there is none.
func lastForecast(forecast *climate.Record, today cal.Date) cal.Date {
	last := cal.None
	if forecast != nil {
		for i := range forecast.Days {
			if o := &forecast.Days[i]; o.Date >= today && o.TMinC.Known && o.TMaxC.Known {
				last = o.Date
			}
		}
	}
	return last
}

// forecastAfter is the record of a source up to a day and its forecast from then on.
// Days before it that were forecast and never recorded are left out: the rules look
// back on what was seen.
func forecastAfter(source *holding.WeatherSource, today cal.Date) *climate.Record {
	out := &climate.Record{}
	if source.Record != nil {
		for i := range source.Record.Days {
			if o := &source.Record.Days[i]; o.Date < today {
				out.Days = append(out.Days, *o)
			}
		}
	}
	for i := range source.Forecast.Days {
		if o := &source.Forecast.Days[i]; o.Date >= today {
			out.Days = append(out.Days, *o)
		}
	}
	return out
}

// hoursBefore are the hours before a day.
func hoursBefore(hours []climate.Hour, today cal.Date) []climate.Hour {
	end := len(hours)
	for end > 0 && hours[end-1].Date >= today {
		end--
	}
	return hours[:end]
}
