package risk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
)

// leastHours is how many hours of a day must be known for it to count.
const leastHours = 22

// Weather is an hourly record laid into the days of its own dates.
type Weather struct {
	Hours     []climate.Hour // in order
	Days      []Day          // in order; days without any hour are not there
	Estimated bool           // all hours were made from daily extremes
}

// Day is one day of the record.
type Day struct {
	Date         cal.Date
	Warm         bool    // temperature known for at least 22 hours
	Humid        bool    // temperature and humidity known for at least 22 hours
	TMinC, TMaxC float64 // of the known hours [C]
	MeanC        float64 // mean of the known hours [C]
	RainMM       float64 // sum of the known hours [mm]
	Made         bool    // its hours were made from its extremes
	Guessed      bool    // and so was their humidity, from the night's minimum
	from, to     int     // its hours are Hours[from:to]
}

// New lays hours into days. The hours must rise.
func New(hours []climate.Hour) *Weather {
	w := &Weather{Hours: hours}
	for i := 0; i < len(hours); {
		j := i
		for j < len(hours) && hours[j].Date == hours[i].Date {
			j++
		}
		w.Days = append(w.Days, dayOf(hours[i:j], i))
		i = j
	}
	return w
}

func dayOf(hours []climate.Hour, from int) Day {
	d := Day{Date: hours[0].Date, TMinC: math.Inf(1), TMaxC: math.Inf(-1), from: from, to: from + len(hours)}
	warm, humid, sum := 0, 0, 0.0
	for i := range hours {
		h := &hours[i]
		if h.RainMM > 0 {
			d.RainMM += h.RainMM
		}
		if math.IsNaN(h.TempC) {
			continue
		}
		warm++
		sum += h.TempC
		d.TMinC, d.TMaxC = min(d.TMinC, h.TempC), max(d.TMaxC, h.TempC)
		if !math.IsNaN(h.HumidityPct) {
			humid++
		}
	}
	if warm > 0 {
		d.MeanC = sum / float64(warm)
	}
	d.Warm, d.Humid = warm >= leastHours, humid >= leastHours
	return d
}

// of returns the hours of a day.
func (w *Weather) of(d *Day) []climate.Hour { return w.Hours[d.from:d.to] }

// follows tells whether an hour comes right after the one before it in the list;
// an hour that the clock repeats does.
func (w *Weather) follows(i int) bool { return i > 0 && w.Hours[i].At()-w.Hours[i-1].At() <= 1 }

// next tells whether day i is the day after day i-1.
func (w *Weather) next(i int) bool { return i > 0 && w.Days[i].Date == w.Days[i-1].Date+1 }

// HumidHours counts the hours of a day at or above a humidity [%].
func (w *Weather) HumidHours(d *Day, pct float64) float64 { return float64(humidHours(w.of(d), pct)) }
