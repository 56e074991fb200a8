package exchange

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// leastOver is the ground above a bed's own from which it is over-full [m2]: room
// for rounded areas.
const leastOver = 0.01

// inOut is a planting of the plan in force going in or out of its bed.
type inOut struct {
	on  cal.Date
	m2  float64 // less than nothing when it goes out
	row int
}

// checkRoom warns of beds that hold more than their ground on a day, by the days of
// the plan alone: what has no day by which it is cleared is left out, and so is
// what stands under or between another. The table's futures tell the rest.
func (c *checker) checkRoom() {
	byBed := map[string][]inOut{}
	for i := range c.h.Plantings {
		p := &c.h.Plantings[i]
		if p.Plan != c.h.Plan || p.Relation == plan.Under || p.Relation == plan.Between || !p.Date.IsSet() || !p.ClearBy.IsSet() || p.ClearBy <= p.Date {
			continue
		}
		byBed[p.Bed] = append(byBed[p.Bed], inOut{p.Date, p.AreaM2, i}, inOut{p.ClearBy, -p.AreaM2, i})
	}
	for i, b := range c.h.Beds {
		if !c.faulty("beds", i, "length_m", "width_m", "outline") {
			c.checkBedRoom(b.Name, b.AreaM2(), byBed[b.ID])
		}
	}
}

// checkBedRoom warns of the planting that first makes a bed over-full, and again
// when it is so anew.
func (c *checker) checkBedRoom(bed string, area float64, days []inOut) {
	sort.SliceStable(days, func(i, k int) bool {
		if days[i].on != days[k].on {
			return days[i].on < days[k].on
		}
		return days[i].m2 < 0 && days[k].m2 > 0 // out before in
	})
	held, over := 0.0, false
	for _, d := range days {
		held += d.m2
		was := over
		over = held > area+leastOver
		if over && !was && d.on >= c.h.Today {
			c.warnings.add(fault.New(fault.Conflict, "exchange.bed_over_full", words.Args{"bed": bed, "planting": c.h.Plantings[d.row].ID,
				"on": d.on.String(), "held": held, "area": area}).In(c.place("plantings", d.row, "area_m2")))
		}
	}
}
