package compare

import (
	"garner/internal/cal"
	"garner/internal/labour"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/space"
)

// Side is one of the two plans.
type Side struct {
	Table  *outlook.Table
	Ground *space.Ground  // of the same table
	Stores []larder.Store // of the holding

	// AskedMM is what the air asks of each bed in each month of a year [mm], by bed;
	// nil where that is not known.
	AskedMM map[string][12]float64
}

// Course is one plan by week, all vegetables together; means over the futures.
type Course struct {
	Want    []float64 // [kg]
	Eaten   []float64 // home-grown, fresh and stored [kg]
	Short   []float64 // [kg]
	Over    []float64 // [kg]
	Gaps    []int     // vegetables that are short more often than not
	Gluts   []int     // vegetables of which more goes over than is wanted, and enough to give away
	Ground  []float64 // ground held [m2]
	Garden  []float64 // tending and picking [h]
	Kitchen []float64 // [h]
	Water   []float64 // that the air asks of the ground held [l]; nil where that is not known
}

// VegetableCourse is one vegetable under one plan by week; means over the futures.
type VegetableCourse struct {
	Eaten, Short, Over []float64 // [kg]
	Gap, Glut          []bool
}

// course is one plan by week with its vegetables by name.
func course(s Side) (Course, map[string]VegetableCourse, map[string][]float64) {
	n := s.Table.Weeks
	c := Course{Want: make([]float64, n), Eaten: make([]float64, n), Short: make([]float64, n), Over: make([]float64, n),
		Gaps: make([]int, n), Gluts: make([]int, n), Ground: make([]float64, n), Garden: make([]float64, n), Kitchen: make([]float64, n)}
	c.hold(s)
	of, wants := map[string]VegetableCourse{}, map[string][]float64{}
	for i := range s.Table.Vegetables {
		weekly := s.Table.Weekly(i, false)
		v := vegetable(&weekly)
		c.add(&weekly, &v)
		of[weekly.Name], wants[weekly.Name] = v, weekly.Want
		for k, kg := range weekly.Fresh {
			c.Garden[k] += labour.Pick() * kg
		}
	}
	for k, m2 := range c.Ground {
		c.Garden[k] += labour.Tend() * m2 * daysAWeek / daysAYear
	}
	stored(s, &c)
	return c, of, wants
}

const (
	daysAWeek = 7
	daysAYear = 365.25
)

// vegetable is one vegetable's weeks.
func vegetable(w *outlook.Weekly) VegetableCourse {
	n := len(w.Want)
	v := VegetableCourse{Eaten: make([]float64, n), Short: w.Short, Over: w.Over, Gap: make([]bool, n), Glut: make([]bool, n)}
	for k := range n {
		v.Eaten[k] = w.Fresh[k] + w.Stored[k]
		v.Gap[k] = outlook.LikelyShort(w, k)
		v.Glut[k] = w.Over[k] >= outlook.WorthGiving && w.Over[k] > w.Want[k]
	}
	return v
}

func (c *Course) add(w *outlook.Weekly, v *VegetableCourse) {
	for k := range c.Want {
		c.Want[k] += w.Want[k]
		c.Eaten[k] += v.Eaten[k]
		c.Short[k] += w.Short[k]
		c.Over[k] += w.Over[k]
		if v.Gap[k] {
			c.Gaps[k]++
		}
		if v.Glut[k] {
			c.Gluts[k]++
		}
	}
}

// hold adds the ground that plantings hold in the middle of each week, and the water
// that the air asks of it.
func (c *Course) hold(s Side) {
	if s.AskedMM != nil {
		c.Water = make([]float64, len(c.Ground))
	}
	for i := range s.Ground.Beds {
		b := &s.Ground.Beds[i]
		asked := s.AskedMM[b.ID]
		for k := range c.Ground {
			day := s.Table.From + cal.Date(daysAWeek*k+daysAWeek/2)
			m2 := held(b, day)
			c.Ground[k] += m2
			if c.Water != nil {
				c.Water[k] += m2 * asked[day.Month()-1] * daysAWeek / monthDays
			}
		}
	}
}

// monthDays is the mean length of a month [d].
const monthDays = daysAYear / 12

// held is the ground of a bed that plantings hold on a day [m2], mean over the futures
// and at most all of it.
func held(b *space.Bed, day cal.Date) float64 {
	share := 0.0
	for j := range b.Holds {
		if h := &b.Holds[j]; !h.Guest && h.From <= day {
			share += h.Share * (1 - h.GoneBy(day))
		}
	}
	return b.AreaM2 * min(1, share)
}

// stored adds the work of what is put away: the rises of each store, mean over the
// futures.
func stored(s Side, c *Course) {
	methods := map[string]string{}
	for _, store := range s.Stores {
		methods[store.ID] = store.Method
	}
	for i := range s.Table.Stores {
		store := &s.Table.Stores[i]
		hours := labour.PutAway(methods[store.Store])
		for _, levels := range store.LevelKg {
			for d := 1; d < len(levels); d++ {
				if kg := float64(levels[d] - levels[d-1]); kg > 0 {
					kg /= float64(len(store.LevelKg))
					c.Garden[d/daysAWeek] += labour.Pick() * kg
					c.Kitchen[d/daysAWeek] += hours * kg
				}
			}
		}
	}
}
