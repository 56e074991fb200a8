package watering

import (
	"maps"
	"slices"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
)

// yearDays is the year ahead [d].
const yearDays = 365

// Demand is what beds will ask to be watered, day by day under every future [L]: in
// lumps, as watering comes, for what is planned and kept watered. A bed that asks for
// nothing has no entry.
type Demand struct {
	First   cal.Date // today
	Days    int
	Futures int
	Beds    map[string][][]float64 // by future and day
}

// Year works out the water of the year from today on. What is not planned yet asks for
// nothing, so that the months after the plan's end come out low.
func Year(s outlook.Setting, m *outlook.Memory) (*Demand, error) {
	g, err := toldOf(s, m)
	if err != nil {
		return nil, err
	}
	d := &Demand{First: s.Today, Days: yearDays, Futures: min(usualFutures, s.Years), Beds: map[string][][]float64{}}
	for i := range s.Holding.Beds {
		d.Beds[s.Holding.Beds[i].ID] = noneAsked(d.Futures)
	}
	err = outlook.Tracts(s, m, usualFutures, s.Today-pastDays, s.Today+yearDays, func() func(*outlook.Tract) error {
		var c course
		return func(t *outlook.Tract) error {
			if err := c.lay(t); err != nil {
				return err
			}
			if today := c.at(s.Today); stands(&c, today) {
				d.tract(t, &c, &g, today)
			}
			return nil
		}
	})
	maps.DeleteFunc(d.Beds, func(_ string, futures [][]float64) bool { return !asks(futures) })
	return d, err
}

func noneAsked(futures int) [][]float64 {
	out := make([][]float64, futures)
	for f := range out {
		out[f] = make([]float64, yearDays)
	}
	return out
}

// asks tells whether anything is asked under some future.
func asks(futures [][]float64) bool {
	for _, days := range futures {
		if slices.ContainsFunc(days, func(l float64) bool { return l > 0 }) {
			return true
		}
	}
	return false
}

func (d *Demand) tract(t *outlook.Tract, c *course, g *given, today int) {
	into := d.Beds[t.Bed.ID]
	b, _ := c.past(t, g, today)
	for i := today; i < len(c.given); i++ {
		mm := c.due(&b, i)
		c.day(&b, i, mm)
		if mm > 0 {
			into[t.Future][i-today] += mm * c.areaM2[i]
		}
	}
}

// Of is what some beds ask together under a future, by day [L].
func (d *Demand) Of(beds []string, future int) []float64 {
	out := make([]float64, d.Days)
	for _, id := range beds {
		if own := d.Beds[id]; own != nil {
			for i, l := range own[future] {
				out[i] += l
			}
		}
	}
	return out
}

// Month is the water of a month [L]: of that which today is in, what is still to come.
type Month struct {
	First cal.Date // of the month
	MeanL float64  // the mean of the futures
	DryL  float64  // in the driest of ten
}

// Months sums what some beds ask by month, and in all. Means are told and not middles:
// watering comes in lumps, and means of beds add up to that of all, those of months to
// that of the year. What the driest of ten ask does not: each has its own.
func (d *Demand) Months(beds []string) (months []Month, meanL, dryL float64) {
	var sums [][]float64 // by month and future
	all := make([]float64, d.Futures)
	for f := range d.Futures {
		for i, l := range d.Of(beds, f) {
			at := monthsBetween(d.First, d.First+cal.Date(i))
			for at >= len(sums) {
				sums = append(sums, make([]float64, d.Futures))
			}
			sums[at][f] += l
			all[f] += l
		}
	}
	y, m, _ := d.First.YMD()
	for at, byFuture := range sums {
		first := cal.Of(y+(m-1+at)/12, (m-1+at)%12+1, 1)
		months = append(months, monthOf(first, byFuture))
	}
	year := monthOf(d.First, all)
	return months, year.MeanL, year.DryL
}

// monthOf tells what the futures ask of a time. What one future in twenty asks may be
// above what the driest of ten do; a dry time is never told to ask less than the mean.
func monthOf(first cal.Date, byFuture []float64) Month {
	m := mean(byFuture)
	return Month{first, m, max(m, quantile(byFuture, dry))}
}

// monthsBetween counts the turns of the month from one date to another.
func monthsBetween(from, to cal.Date) int {
	y1, m1, _ := from.YMD()
	y2, m2, _ := to.YMD()
	return 12*(y2-y1) + m2 - m1
}

// GivenByMonth sums the waterings of the records by bed and first day of the month [L],
// those of plantings under their beds; with feed in them or without.
func GivenByMonth(records []record.Record, plantings []plan.Planting) map[string]map[cal.Date]float64 {
	bed := map[string]string{}
	for i := range plantings {
		bed[plantings[i].ID] = plantings[i].Bed
	}
	out := map[string]map[cal.Date]float64{}
	for i := range records {
		r := &records[i]
		if r.What != record.Watered && !fedWithWater(r) || r.Value <= 0 {
			continue
		}
		id := r.Bed
		if r.Planting != "" {
			id = bed[r.Planting]
		}
		if out[id] == nil {
			out[id] = map[cal.Date]float64{}
		}
		year, month, _ := r.Date.YMD()
		out[id][cal.Of(year, month, 1)] += r.Value
	}
	return out
}
