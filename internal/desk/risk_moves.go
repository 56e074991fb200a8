package desk

import (
	"garner/internal/cal"
	"garner/internal/risk"
	"garner/internal/words"
)

const (
	mostDaysLater = 70   // days by which a later sowing is looked at
	moveSteps     = 7    // by weeks
	helps         = 0.25 // by how much the odds must fall for a move to be told; judgement
)

// advise says what a later sowing, or a mesh, would do for the plantings that flights
// meet.
func (i *RiskItem) advise(today cal.Date) {
	for k := range i.Hosts {
		h := &i.Hosts[k]
		if met := h.firstMet(); met != nil {
			i.later(h, met, today)
			i.mesh(h, today)
		}
	}
}

// firstMet is the first flight that meets a planting in a good share of the futures.
func (h *RiskHost) firstMet() *RiskMeeting {
	for k := range h.Meets {
		if h.Meets[k].Odds >= leastMeeting {
			return &h.Meets[k]
		}
	}
	return nil
}

func (i *RiskItem) flight(m *RiskMeeting) *risk.Flight {
	for _, f := range i.flights() {
		if f.Number == m.Flight && f.Year == m.Year {
			return &f
		}
	}
	return nil
}

// later looks for the least number of weeks by which a sowing to come escapes the
// first flight that meets it.
func (i *RiskItem) later(h *RiskHost, met *RiskMeeting, today cal.Date) {
	f := i.flight(met)
	if h.From <= today || f == nil || len(h.Open) == 0 {
		return
	}
	for by := cal.Date(moveSteps); by <= mostDaysLater; by += moveSteps {
		moved := make([]risk.Stay, len(h.Open))
		for k, s := range h.Open {
			moved[k] = risk.Stay{From: max(s.From, h.From+by), Until: s.Until + by}
		}
		odds := f.Meets(moved)
		if met.Odds-odds < helps || odds > met.Odds/2 {
			continue
		}
		args := words.Args{"weeks": int(by / moveSteps), "date": h.From + by, "n": met.Flight, "odds": odds, "before": met.Odds}
		h.Try = h.From + by
		h.Does = append(h.Does, words.P("desk.risk_later", args))
		if i.otherwise(h, met) {
			h.Does = append(h.Does, words.P("desk.risk_later_rest", nil))
		}
		return
	}
	h.Does = append(h.Does, words.P("desk.risk_later_no", words.Args{"weeks": mostDaysLater / moveSteps}))
}

// otherwise tells whether another flight meets the planting as well.
func (i *RiskItem) otherwise(h *RiskHost, met *RiskMeeting) bool {
	for k := range h.Meets {
		if m := &h.Meets[k]; (m.Flight != met.Flight || m.Year != met.Year) && m.Odds >= leastMeeting {
			return true
		}
	}
	return false
}

// mesh says from when until when a mesh would have to lie, and where none helps.
func (i *RiskItem) mesh(h *RiskHost, today cal.Date) {
	if h.GapMM == 0 {
		return
	}
	if h.Wintered {
		h.Does = append(h.Does, words.P("desk.risk_mesh_wintered", nil))
		return
	}
	from, until := cal.None, cal.None
	for k := range h.Meets {
		if h.Meets[k].Odds < leastMeeting {
			continue
		}
		f := i.flight(&h.Meets[k])
		if f == nil {
			continue
		}
		begins, ends := f.Quantiles(0.1, 0.9)
		if !begins.IsSet() {
			begins, _ = f.Quantiles(0, 0.9)
		}
		if !ends.IsSet() {
			_, ends = f.Quantiles(0, 0.5)
		}
		if begins.IsSet() && (!from.IsSet() || begins < from) {
			from = begins
		}
		if ends.IsSet() && ends > until {
			until = ends
		}
	}
	if !from.IsSet() || !until.IsSet() {
		return
	}
	from, until = max(from, h.From, today), min(until, h.Until)
	key := "desk.risk_mesh"
	if len(h.Shut) > 0 {
		key = "desk.risk_mesh_longer"
	}
	h.Does = append(h.Does, words.P(key, words.Args{"mm": h.GapMM, "from": from, "until": until}))
}
