package exchange

import (
	"slices"
	"time"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

// checkHolding looks at the one row of holding.csv.
func (c *checker) checkHolding() {
	if c.h.Zone == "" {
		return
	}
	// "Local" is the zone of the machine, not of the holding.
	if _, err := time.LoadLocation(c.h.Zone); err != nil || c.h.Zone == "Local" {
		c.wrong("holding", 0, "zone", fault.New(fault.NotFound, "exchange.zone_unknown", words.Args{"given": c.h.Zone}))
	}
}

// checkSites warns of sites without weather, for which nothing can be computed.
func (c *checker) checkSites() {
	for i, s := range c.h.Sites {
		if s.Weather == "" {
			c.warnings.add(fault.New(fault.Invalid, "exchange.no_weather", words.Args{"site": s.Name}).In(c.place("sites", i, "weather")))
		}
	}
}

// checkCovers finds spells that end before they begin and spells of one bed that
// overlap.
func (c *checker) checkCovers() {
	byBed := map[string][]int{}
	for i, s := range c.h.Covers {
		if s.On.IsSet() && s.Off.IsSet() && s.Off <= s.On {
			c.wrong("covers", i, "off", fault.New(fault.Invalid, "exchange.off_before_on", words.Args{"on": s.On.String(), "off": s.Off.String()}))
			continue
		}
		if s.On.IsSet() && !c.found.known(c.place("covers", i, "off")) {
			byBed[s.Bed] = append(byBed[s.Bed], i)
		}
	}
	for _, spells := range byBed {
		c.checkOverlap(spells)
	}
}

// checkOverlap compares each spell with the longest-lasting one before it.
func (c *checker) checkOverlap(spells []int) {
	covers := c.h.Covers
	slices.SortStableFunc(spells, func(a, b int) int { return int(covers[a].On) - int(covers[b].On) })
	last := -1
	for _, i := range spells {
		if last >= 0 && covers[i].On < end(covers[last]) {
			key, args := "exchange.covers_overlap", words.Args{
				"bed": c.bedName(covers[i].Bed), "on": covers[i].On.String(), "other": covers[last].ID, "off": covers[last].Off.String()}
			if !covers[last].Off.IsSet() {
				key = "exchange.covers_overlap_open"
			}
			c.wrong("covers", i, "on", fault.New(fault.Conflict, key, args))
		}
		if last < 0 || end(covers[i]) > end(covers[last]) {
			last = i
		}
	}
}

// end is the first day a spell no longer covers.
func end(s place.CoverSpell) cal.Date {
	if s.Off.IsSet() {
		return s.Off
	}
	return cal.Of(9999, 12, 31)
}
