package programme

import (
	"math"

	"garner/internal/fault"
	"garner/internal/words"
)

// Sound tells everything that is wrong with a problem, as a fault.List; nil when it
// holds together.
func (p *Problem) Sound() error {
	var faults fault.List
	wrong := func(key, what, id string) {
		faults = append(faults, fault.New(fault.Invalid, key, words.Args{"what": what, "id": id}))
	}
	if p.Weeks <= 0 || len(p.Futures) == 0 {
		return fault.List{fault.New(fault.Invalid, "programme.empty", words.Args{"weeks": p.Weeks, "futures": len(p.Futures)})}
	}
	for i := range p.Grounds {
		g := &p.Grounds[i]
		if !(g.UnitM2 > 0) || g.Units < 0 || !p.span(g.First, g.Last, p.Weeks-1) {
			wrong("programme.unsound", "ground", g.ID)
		}
	}
	for i := range p.Resources {
		if !p.course(p.Resources[i].PerWeek) {
			wrong("programme.unsound", "resource", p.Resources[i].ID)
		}
	}
	for i := range p.Demands {
		if !p.soundDemand(&p.Demands[i]) {
			wrong("programme.unsound", "demand", p.Demands[i].ID)
		}
	}
	for i := range p.Sowings {
		if !p.soundSowing(&p.Sowings[i]) {
			wrong("programme.unsound", "sowing", p.Sowings[i].ID)
		}
	}
	for i := range p.Limits {
		for _, t := range p.Limits[i].Terms {
			if t.Sowing < 0 || t.Sowing >= len(p.Sowings) || !(t.Weight > 0) || math.IsInf(t.Weight, 0) {
				wrong("programme.unsound", "limit", p.Limits[i].ID)
				break
			}
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// span tells whether weeks are in order and within 0 to last.
func (p *Problem) span(first, end, last int) bool { return 0 <= first && first <= end && end <= last }

func (p *Problem) course(weeks []float64) bool {
	for _, x := range weeks {
		if !amount(x) {
			return false
		}
	}
	return len(weeks) == p.Weeks
}

// amount tells whether a number is finite and not below zero.
func amount(x float64) bool { return x >= 0 && x <= math.MaxFloat64 }

func (p *Problem) soundDemand(d *Demand) bool {
	before := math.MaxFloat64
	for i := range d.Levels {
		if !p.course(d.Levels[i].PerWeek) || !amount(d.Levels[i].Cost) || d.Levels[i].Cost > before {
			return false
		}
		before = d.Levels[i].Cost
	}
	return amount(d.OverCost) && (len(d.Fixed) == 0 || p.soundLots(d.Fixed))
}

func (p *Problem) soundSowing(w *Sowing) bool {
	if w.Ground < 0 || w.Ground >= len(p.Grounds) || w.Demand < 0 || w.Demand >= len(p.Demands) {
		return false
	}
	g := &p.Grounds[w.Ground]
	if !p.span(w.First, w.Last, p.Weeks-1) || w.First < g.First || w.Last > g.Last || !amount(w.Cost) || w.Most < 0 {
		return false
	}
	for _, u := range w.Uses {
		if u.Resource < 0 || u.Resource >= len(p.Resources) || u.Week < 0 || u.Week >= p.Weeks || !amount(u.Amount) {
			return false
		}
	}
	return p.soundLots(w.Lots)
}

func (p *Problem) soundLots(lots [][]Lot) bool {
	for _, future := range lots {
		for _, l := range future {
			if !p.span(l.First, l.Last, p.Weeks) || l.First >= p.Weeks || !amount(l.Kg) {
				return false
			}
		}
	}
	return len(lots) == len(p.Futures)
}
