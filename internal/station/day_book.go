package station

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// dayBook gathers days from files that tell one value at a time.
type dayBook struct {
	days   map[cal.Date]*climate.Observation
	report *Report
}

func newDayBook(report *Report) *dayBook {
	return &dayBook{days: map[cal.Date]*climate.Observation{}, report: report}
}

// refuse tells that a value is left out.
func (b *dayBook) refuse(at fault.Place, key string, args words.Args) {
	b.report.Refused = append(b.report.Refused, fault.New(fault.Invalid, key, args).In(at))
}

// put writes a value of a day; one that cannot be, or that was there before, is
// refused.
func (b *dayBook) put(date cal.Date, c *dailyColumn, v float64, at fault.Place) {
	if year := date.Year(); year < earliestYear || year > latestYear {
		b.refuse(at, "station.year_impossible", words.Args{"given": date.String(), "low": earliestYear, "high": latestYear})
		return
	}
	if !(v >= c.low && v <= c.high) {
		b.refuse(at, "station.value_impossible", words.Args{"given": v, "low": c.low, "high": c.high})
		return
	}
	day := b.days[date]
	if day == nil {
		day = &climate.Observation{Date: date, Row: at.Row}
		b.days[date] = day
	}
	if held := c.field(day); held.Known {
		b.refuse(at, "station.value_twice", words.Args{"date": date, "row": day.Row})
		return
	} else {
		*held = climate.Is(v)
	}
}

// record is the days in their order. A day whose minimum is above its maximum
// loses both.
func (b *dayBook) record(id, name string, tMinColumn string) *climate.Record {
	r := &climate.Record{ID: id, Days: make([]climate.Observation, 0, len(b.days))}
	for _, day := range b.days {
		r.Days = append(r.Days, *day)
	}
	slices.SortFunc(r.Days, func(x, y climate.Observation) int { return cmp.Compare(x.Date, y.Date) })
	for i := range r.Days {
		o := &r.Days[i]
		if o.TMinC.Known && o.TMaxC.Known && o.TMinC.Value > o.TMaxC.Value {
			b.refuse(fault.Place{File: name, Row: o.Row, Column: tMinColumn}, "station.minimum_above_maximum",
				words.Args{"tmin": o.TMinC.Value, "tmax": o.TMaxC.Value})
			o.TMinC, o.TMaxC = climate.Maybe{}, climate.Maybe{}
		}
	}
	return r
}

// columnNamed is the column of a daily record with a name.
func columnNamed(name string) *dailyColumn {
	for i := range dailyColumns {
		if dailyColumns[i].name == name {
			return &dailyColumns[i]
		}
	}
	return nil
}
