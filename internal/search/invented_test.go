package search

import (
	"fmt"
	"math"

	"garner/internal/num"
	"garner/internal/programme"
)

// size is how large an invented problem is.
type size struct{ grounds, units, demands, weeks, futures int }

// invented makes a problem of the shape of a household's year: fruits that are
// picked over, heads that stand some weeks, leaves and roots that stand long, and
// what is lifted and stored. All figures are invented.
func invented(seed uint64, z size) *programme.Problem {
	r := num.NewStream(num.Key("invented"), seed)
	p := &programme.Problem{Name: fmt.Sprint("invented ", seed), Weeks: z.weeks}
	for k := range z.futures {
		p.Futures = append(p.Futures, k)
	}
	for g := range z.grounds {
		p.Grounds = append(p.Grounds, programme.Ground{ID: fmt.Sprint("g", g), UnitM2: 1, Units: z.units, Last: z.weeks - 1})
	}
	hours := programme.Resource{ID: "hours", Unit: "h", PerWeek: make([]float64, z.weeks)}
	for u := range hours.PerWeek {
		hours.PerWeek[u] = float64(z.grounds*z.units) * 0.06
	}
	p.Resources = append(p.Resources, hours)
	for d := range z.demands {
		p.Demands = append(p.Demands, inventedDemand(r, p, d))
		for c := range 1 + int(r.Float64()*2) {
			inventedUse(r, p, d, c)
		}
	}
	return p
}

func inventedDemand(r *num.Stream, p *programme.Problem, d int) programme.Demand {
	out := programme.Demand{ID: fmt.Sprint("d", d), OverCost: 0.05}
	kg := rounded(0.2 + 1.3*r.Float64())
	from, long := int(r.Float64()*52), 20+int(r.Float64()*40)
	for i, cost := range []float64{5, 2} {
		if i == 0 && r.Float64() < 0.7 {
			continue
		}
		l := programme.Level{Cost: cost, PerWeek: make([]float64, p.Weeks)}
		for u := range l.PerWeek {
			if (u+52-from)%52 < long {
				l.PerWeek[u] = kg
			}
		}
		out.Levels = append(out.Levels, l)
	}
	return out
}

func inventedUse(r *num.Stream, p *programme.Problem, d, c int) {
	kind, start, grow := int(r.Float64()*4), 6+int(r.Float64()*16), 8+int(r.Float64()*14)
	yield, span := 1+3*r.Float64(), 8+int(r.Float64()*16)
	for g := range p.Grounds {
		good := 0.5 + 0.7*r.Float64()
		for year := 0; year < p.Weeks; year += 52 {
			for week := start; week < start+span; week++ {
				inventedSowing(r, p, d, c, g, kind, year+week, grow, yield*good*(1-0.3*math.Abs(float64(week-start)/float64(span)-0.4)))
			}
		}
	}
}

func inventedSowing(r *num.Stream, p *programme.Problem, d, c, g, kind, week, grow int, yield float64) {
	if week >= p.Weeks {
		return
	}
	w := programme.Sowing{ID: fmt.Sprintf("d%d.%d/g%d/w%d", d, c, g, week), Ground: g, First: week, Demand: d, Cost: 0.15, Most: p.Grounds[g].Units}
	w.Uses = []programme.Use{{Resource: 0, Week: week, Amount: 0.25}}
	for range p.Futures {
		ready := week + int(float64(grow)*(0.9+0.2*r.Float64()))
		kg := yield * (0.6 + 0.8*r.Float64())
		var lots []programme.Lot
		last := ready + 1
		add := func(first, end int, kg float64) {
			if first < p.Weeks {
				lots = append(lots, programme.Lot{First: first, Last: min(end, p.Weeks), Kg: rounded(kg)})
			}
		}
		switch kind {
		case 0:
			for i := range 10 {
				add(ready+i, ready+i+1, kg/10)
			}
			last = ready + 10
		case 1:
			add(ready, ready+2, kg)
			last = ready + 2
		case 2:
			add(ready, ready+14, kg)
			last = ready + 12
		default:
			add(ready, ready+26, kg)
		}
		w.Lots = append(w.Lots, lots)
		w.Last = min(p.Weeks-1, max(w.Last, last))
	}
	p.Sowings = append(p.Sowings, w)
}

func rounded(x float64) float64 { return math.Round(x*1e4) / 1e4 }
