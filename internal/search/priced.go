package search

import "garner/internal/programme"

// priced is a problem in which every week pays a price for each demand under each
// future, and every use of a resource costs one. Ground stays as it is.
type priced struct {
	markets []market
	lots    []lotClass
	rows    []float64 // what there is of each resource in a week, and the limits
	sowings []offer
	tracks  []track
	weeks   int
}

// market is one demand under one future. Prices of its weeks follow each other from
// first on.
type market struct {
	first    int32
	levels   []programme.Level
	share    float64 // weight of the future
	overCost float64 // of what goes over, weighted [1/kg]
	wanted   []float64
}

// lotClass is food of a market that is good in the same weeks.
type lotClass struct {
	market      int32
	first, last int32
	outlasts    bool    // what is left of it at the end is not over
	kg          float64 // comes without sowing
}

// offer is a sowing: what a unit of it costs, brings and uses.
type offer struct {
	cost   float64
	brings []amount // of classes of lots [kg]
	uses   []amount // of rows
}

type amount struct {
	of int32
	n  float64
}

// price makes a problem's markets.
func price(p *programme.Problem) *priced {
	m := &priced{weeks: p.Weeks, sowings: make([]offer, len(p.Sowings)), tracks: tracksOf(p)}
	index := map[lotClass]int32{}
	of := func(market int32, l *programme.Lot) int32 {
		c := lotClass{market: market, first: int32(l.First), last: int32(min(l.Last, p.Weeks-1)), outlasts: l.Last >= p.Weeks}
		at, known := index[c]
		if !known {
			at = int32(len(m.lots))
			index[c] = at
			m.lots = append(m.lots, c)
		}
		return at
	}
	share := 1 / float64(len(p.Futures))
	for d := range p.Demands {
		for k := range p.Futures {
			at := int32(len(m.markets))
			m.markets = append(m.markets, marketOf(&p.Demands[d], share, at*int32(p.Weeks), p.Weeks))
			if k < len(p.Demands[d].Fixed) {
				for i := range p.Demands[d].Fixed[k] {
					l := &p.Demands[d].Fixed[k][i]
					m.lots[of(at, l)].kg += l.Kg
				}
			}
		}
	}
	for j := range p.Sowings {
		s := &p.Sowings[j]
		m.sowings[j].cost = s.Cost
		for k := range s.Lots {
			for i := range s.Lots[k] {
				l := &s.Lots[k][i]
				m.sowings[j].brings = append(m.sowings[j].brings, amount{of(int32(s.Demand*len(p.Futures)+k), l), l.Kg})
			}
		}
	}
	m.limit(p)
	return m
}

func marketOf(d *programme.Demand, share float64, first int32, weeks int) market {
	out := market{first: first, levels: d.Levels, share: share, overCost: share * d.OverCost, wanted: make([]float64, weeks)}
	for i := range d.Levels {
		for u, kg := range d.Levels[i].PerWeek {
			out.wanted[u] += kg
		}
	}
	return out
}

// limit writes the rows of the resources that are used, and the limits.
func (m *priced) limit(p *programme.Problem) {
	rows := map[programme.Use]int32{}
	for j := range p.Sowings {
		for _, u := range p.Sowings[j].Uses {
			n := u.Amount
			u.Amount = 0
			at, known := rows[u]
			if !known {
				at = int32(len(m.rows))
				rows[u] = at
				m.rows = append(m.rows, p.Resources[u.Resource].PerWeek[u.Week])
			}
			m.sowings[j].uses = append(m.sowings[j].uses, amount{at, n})
		}
	}
	for l := range p.Limits {
		at := int32(len(m.rows))
		m.rows = append(m.rows, p.Limits[l].Most)
		for _, t := range p.Limits[l].Terms {
			m.sowings[t.Sowing].uses = append(m.sowings[t.Sowing].uses, amount{at, t.Weight})
		}
	}
}
