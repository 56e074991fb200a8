package advise

import (
	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/season"
)

// guess estimates how much of what lacks a planting would give, mean over the
// futures tried [kg]: day by day what is ready fills the shortage, and what goes
// to a store fills what lacks later. Only the order of candidates hangs on it.
func (a *Adviser) guess(w *way, t *outlook.Tried) float64 {
	if len(t.Years) == 0 {
		return 0
	}
	keep := a.stores[key(w.use)]
	sum := 0.0
	for f, o := range t.Years {
		if o.First < 0 {
			continue
		}
		short := a.Table.ShortKg(w.use.Vegetable, f)
		g := filling{short: a.within(short, w.helps), at: int(t.First-a.Table.From) + o.First, hold: max(1, int(w.use.HoldDays))}
		g.fill(o)
		if w.planting.Store != "" {
			warmth := 5.0
			for i := range a.holding.Stores {
				if a.holding.Stores[i].ID == w.planting.Store {
					warmth = a.holding.Stores[i].WinterC
				}
			}
			g.keep((1-keep.row.LossShare)*g.left, int(larder.LifeDays(keep.row, warmth)))
		}
		sum += g.kg
	}
	return sum / float64(len(t.Years))
}

// within is a shortage by day of the table without what lies outside a span.
func (a *Adviser) within(short []float32, s span) []float32 {
	if s == (span{}) {
		return short
	}
	out := make([]float32, len(short))
	for i := range short {
		if s.holds(a.Table.From + cal.Date(i)) {
			out[i] = short[i]
		}
	}
	return out
}

// filling sets one future's crop against its shortage.
type filling struct {
	short []float32
	at    int // day of the table on which the crop begins; may be negative
	hold  int
	kg    float64 // of the shortage filled
	left  float64 // neither eaten nor over: for the store [kg]
	end   int     // day on which it comes to the store
}

func (g *filling) fill(o *season.Outcome) {
	if len(o.Standing) > 0 {
		g.stand(o.Standing)
		return
	}
	// What is picked stays good for the days it holds: a first-in queue.
	ripe := make([]float64, len(o.Flow)+g.hold)
	for i := range ripe {
		if i < len(o.Flow) {
			ripe[i] = float64(o.Flow[i])
		}
		lack := g.lack(g.at + i)
		for k := max(0, i-g.hold+1); k <= i && lack > 0; k++ {
			take := min(lack, ripe[k])
			ripe[k] -= take
			lack -= take
			g.kg += take
		}
		if k := i - g.hold + 1; k >= 0 && g.at+i >= 0 {
			g.left += ripe[k]
			ripe[k] = 0
		}
	}
	g.end = g.at + len(o.Flow)
}

// stand takes shares of what stands.
func (g *filling) stand(standing []float32) {
	share := 1.0
	for i, kg := range standing {
		if lack := g.lack(g.at + i); lack > 0 && kg > 0 {
			take := min(share, lack/float64(kg))
			share -= take
			g.kg += take * float64(kg)
		}
	}
	if n := len(standing); n > 0 {
		g.left, g.end = share*float64(standing[n-1]), g.at+n
	}
}

func (g *filling) lack(day int) float64 {
	if day < 0 || day >= len(g.short) {
		return 0
	}
	return float64(g.short[day])
}

// keep eats from a store while it keeps.
func (g *filling) keep(kg float64, days int) {
	for d := g.end; d < g.end+days && kg > 0; d++ {
		take := min(kg, g.lack(d))
		kg -= take
		g.kg += take
	}
}
