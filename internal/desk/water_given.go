package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/words"
)

// WaterGiven is what was poured on some beds on one day.
type WaterGiven struct {
	On   cal.Date // not set: today
	Beds []BedGiven
}

// BedGiven is what one bed was given.
type BedGiven struct {
	Bed    string
	Litres float64
	Filled bool // as much as it took: no amount is told
}

// mostGivenL is the most that a bed is given in a day [L per m2]: beyond it a slip of
// the hand is likelier than a flood. judgement.
const mostGivenL = 200

// Water records what was poured. It is one entry.
func (o *Office) Water(by Author, g WaterGiven) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, err
		}
		now, err := today(h)
		if err != nil {
			return journal.Entry{}, err
		}
		if !g.On.IsSet() || g.On == 0 {
			g.On = now
		}
		if faults := givenFaults(h, g, now); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		names, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		w := lossWork{office: o, holding: h, names: names, taken: map[string]map[string]bool{}}
		for _, b := range g.Beds {
			cells := map[string]string{"date": g.On.String(), "what": string(record.Watered), "bed": b.Bed}
			if !b.Filled {
				cells["value"], cells["unit"] = numberCell(b.Litres), "L"
			}
			if err := w.add("records", cells); err != nil {
				return journal.Entry{}, err
			}
		}
		return w.entry(givenSaid(names, g))
	})
}

// givenFaults finds what cannot be of a watering.
func givenFaults(h *holding.Holding, g WaterGiven, now cal.Date) (faults fault.List) {
	wrong := func(field, key string, args words.Args) {
		faults = append(faults, fault.New(fault.Invalid, key, args).In(fault.Place{Column: field}))
	}
	if g.On > now {
		wrong("date", "desk.lost_to_come", words.Args{"today": now})
	}
	if len(g.Beds) == 0 {
		wrong("litres", "desk.water_nothing_given", nil)
	}
	for _, b := range g.Beds {
		at := slices.IndexFunc(h.Beds, func(bed place.Bed) bool { return bed.ID == b.Bed })
		switch {
		case at < 0:
			wrong("litres", "desk.water_no_bed", words.Args{"given": b.Bed})
		case !b.Filled && !(b.Litres > 0):
			wrong("litres", "desk.water_no_litres", nil)
		case b.Litres > mostGivenL*h.Beds[at].AreaM2():
			wrong("litres", "desk.water_flood", words.Args{"l": b.Litres, "bed": h.Beds[at].Name})
		}
	}
	return faults
}

// givenSaid tells what was poured.
func givenSaid(n naming, g WaterGiven) words.Phrase {
	sum, told := 0.0, true
	for _, b := range g.Beds {
		sum, told = sum+b.Litres, told && !b.Filled
	}
	args := words.Args{"n": len(g.Beds), "l": sum, "bed": n.name("beds", g.Beds[0].Bed)}
	switch {
	case len(g.Beds) > 1 && told:
		return words.P("desk.edit_watered_beds", args)
	case len(g.Beds) > 1:
		return words.P("desk.edit_watered_beds_full", args)
	case told:
		return words.P("desk.edit_watered", args)
	}
	return words.P("desk.edit_watered_full", args)
}
