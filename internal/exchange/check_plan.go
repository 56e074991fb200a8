package exchange

import (
	"strconv"

	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// checkPlans finds drafts that stand over themselves.
func (c *checker) checkPlans() {
	base := map[string]string{}
	for _, p := range c.h.Plans {
		base[p.ID] = p.Base
	}
	for i, p := range c.h.Plans {
		at := p.Base
		for steps := 0; at != "" && at != p.ID && steps <= len(base); steps++ {
			at = base[at]
		}
		switch {
		case p.Base != "" && p.Base == p.ID:
			c.wrong("plans", i, "base", fault.New(fault.Conflict, "exchange.base_itself", words.Args{"plan": p.ID}))
		case at != "" && at == p.ID:
			c.wrong("plans", i, "base", fault.New(fault.Conflict, "exchange.base_ring", words.Args{"plan": p.ID, "base": p.Base}))
		}
	}
}

// checkPlantings looks at each planting of plantings.csv.
func (c *checker) checkPlantings() {
	for i := range c.h.Plantings {
		p := &c.h.Plantings[i]
		c.warnAfter(i, p)
		for _, w := range append(c.plantingFaults(p, c.stands), c.besideFaults(p, c.planting, leastFirst)...) {
			if !c.faulty("plantings", i, causes[w.column]...) {
				c.wrong("plantings", i, w.column, w.fault)
			}
		}
	}
}

// stands tells whether a planting of any plan has the id.
func (c *checker) stands(id string) bool {
	return c.has("plantings", id) || c.added(id)
}

// added tells whether a draft adds a planting with the id.
func (c *checker) added(id string) bool {
	for _, change := range c.h.Changes {
		if change.Action == "add" && change.Planting == id {
			return true
		}
	}
	return false
}

// inColumn is a fault of a planting, wherever the planting is written.
type inColumn struct {
	column string
	fault  *fault.Error
}

// plantingFaults finds what contradicts itself in a planting. stands tells
// whether there is a planting of an id to stand by.
func (c *checker) plantingFaults(p *plan.Planting, stands func(string) bool) []inColumn {
	var out []inColumn
	wrong := func(column string, kind fault.Kind, key string, args words.Args) {
		out = append(out, inColumn{column, fault.New(kind, key, args)})
	}
	if i, ok := c.ids["beds"][p.Bed]; ok && !c.faulty("beds", i, "length_m", "width_m", "outline") {
		bed := c.h.Beds[i]
		// A hundredth of a square metre is room for rounded sides.
		if p.AreaM2 > bed.AreaM2()+0.01 {
			wrong("area_m2", fault.Invalid, "exchange.area_too_large", words.Args{"given": p.AreaM2, "bed": bed.Name, "area": bed.AreaM2()})
		}
	}
	if p.Date.IsSet() && p.ClearBy.IsSet() && p.ClearBy <= p.Date {
		wrong("clear_by", fault.Invalid, "exchange.clear_before_date", words.Args{"clear_by": p.ClearBy.String(), "date": p.Date.String()})
	}
	switch {
	case p.To == "":
	case p.To == p.ID:
		wrong("to", fault.Conflict, "exchange.to_itself", words.Args{"planting": p.ID})
	case !stands(p.To):
		out = append(out, inColumn{"to", unknownID(p.To, "plantings.csv", c.idsOf("plantings"))})
	}
	if i, ok := c.ids["varieties"][p.Variety]; ok && !c.faulty("varieties", i, "crop", "use") {
		v := c.h.Varieties[i]
		if v.Crop != p.Crop || v.Use != "" && p.Use != "" && v.Use != p.Use {
			wrong("variety", fault.Conflict, "exchange.variety_of_other_crop", words.Args{"variety": v.Name, "crop": v.Crop, "planted": p.Crop})
		}
	}
	return out
}

// sameOrder finds steps of one draft with the same number, which would leave
// their order to chance.
func (c *checker) sameOrder() {
	type step struct {
		plan  string
		order int
	}
	first := map[step]int{}
	for i, change := range c.h.Changes {
		at := step{change.Plan, change.Order}
		j, twice := first[at]
		if !twice {
			first[at] = i
			continue
		}
		row := c.place("changes", j, "").Row
		c.wrong("changes", i, "order", fault.New(fault.Conflict, "exchange.same_order", words.Args{"order": change.Order, "row": strconv.Itoa(row)}))
	}
}
