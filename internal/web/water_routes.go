package web

import (
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// waterRoutes names the pages of what the beds want to drink.
func (s *Server) waterRoutes(mux *router) {
	mux.Handle("GET /water", s.atHome(waterPage))
	mux.Handle("POST /water/given", s.atHome(waterGivenPosted))
	mux.Handle("POST /water/can", s.atHome(waterCanPosted))
	s.awayRoutes(mux)
}

// allBeds stands for every bed to which water is due.
const allBeds = "all"

// waterTyped is a form of the page that could not be taken.
type waterTyped struct {
	form                  string // id of a bed, allBeds, or can
	amount, unit, on, can string
	from, to              string
	faults                fault.List
}

// waterGivenPosted records what was poured on a bed, or on all to which it was due.
func waterGivenPosted(v *visit) error {
	typed := waterTyped{form: v.field("bed"), amount: strings.TrimSpace(v.field("amount")), unit: v.field("unit"), on: strings.TrimSpace(v.field("date"))}
	view, err := v.office.WateringView(desk.WateringOptions{})
	if err != nil {
		return err
	}
	given, faults := typed.given(view)
	if len(faults) > 0 {
		typed.faults = faults
		return v.showWater(typed)
	}
	kept, err := v.office.Water(v.author(), given)
	if faults := listOf(err); faults != nil {
		typed.faults = faults
		return v.showWater(typed)
	}
	if err != nil {
		return err
	}
	v.kept(kept, "/water")
	return nil
}

// given reads what was typed. A blank amount is as much as the bed took.
func (w *waterTyped) given(view *desk.WateringView) (g desk.WaterGiven, faults fault.List) {
	g.On = cal.None
	if w.on != "" {
		day, err := cal.Parse(w.on)
		if err != nil {
			faults = append(faults, fault.New(fault.Invalid, "web.tend_day_unreadable", words.Args{"given": w.on}).In(fault.Place{Column: "date"}))
		}
		g.On = day
	}
	if w.form == allBeds {
		for _, b := range view.Beds {
			if b.NowL > 0 {
				g.Beds = append(g.Beds, desk.BedGiven{Bed: b.Bed, Litres: b.NowL})
			}
		}
		return g, faults
	}
	bed := desk.BedGiven{Bed: w.form, Filled: w.amount == ""}
	if !bed.Filled {
		amount, err := strconv.ParseFloat(strings.Replace(w.amount, ",", ".", 1), 64)
		if err != nil || !(amount >= 0 && amount <= mostNumber) {
			return g, append(faults, fault.New(fault.Invalid, "web.water_amount_unreadable", words.Args{"given": w.amount}).In(fault.Place{Column: "litres"}))
		}
		if bed.Litres = amount; w.unit == "cans" {
			bed.Litres *= view.CanL
		}
	}
	g.Beds = []desk.BedGiven{bed}
	return g, faults
}

// waterCanPosted tells how much the household's watering can holds.
func waterCanPosted(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	row, err := v.office.Row("holding", h.ID)
	if err != nil {
		return err
	}
	typed := waterTyped{form: "can", can: strings.TrimSpace(v.sent("can", "can_l")["can_l"])}
	kept, err := v.office.Save(v.author(), "holding", h.ID, map[string]string{"can_l": typed.can}, row.Version)
	if faults := listOf(err); faults != nil {
		typed.faults = faults
		return v.showWater(typed)
	}
	if err != nil {
		return err
	}
	v.kept(kept, "/water")
	return nil
}
