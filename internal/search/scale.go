package search

// scales are prices that matter by amounts that matter: of a demand its dearest level
// and what a week wants, of a row what its users bring for a unit of it and what there
// is.
func (b *Bound) scales() []float64 {
	out := make([]float64, len(b.best))
	for i := range b.m.markets {
		k := &b.m.markets[i]
		most := 0.0
		for _, kg := range k.wanted {
			most = max(most, kg)
		}
		for u := range k.wanted {
			if most > 0 {
				out[int(k.first)+u] = k.share * k.levels[0].Cost / most
			}
		}
	}
	rows := out[len(b.m.markets)*b.m.weeks:]
	users := make([]float64, len(rows))
	for j := range b.m.sowings {
		s := &b.m.sowings[j]
		for _, a := range s.uses {
			rows[a.of] += b.m.brings(s) / (max(a.n, 1e-9) * float64(len(s.uses)))
			users[a.of]++
		}
	}
	for r, most := range b.m.rows {
		rows[r] *= rowScale / (max(1, users[r]) * max(most, 1e-6))
	}
	return out
}

// brings is what a unit of a sowing brings at the dearest prices.
func (m *priced) brings(s *offer) float64 {
	sum := 0.0
	for _, a := range s.brings {
		k := &m.markets[m.lots[a.of].market]
		if len(k.levels) > 0 {
			sum += a.n * k.share * k.levels[0].Cost
		}
	}
	return sum
}
