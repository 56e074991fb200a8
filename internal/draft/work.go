package draft

import (
	"garner/internal/labour"
	"garner/internal/space"
)

// workOf is the garden work of what is kept, by week [h].
func workOf(s *Setting, g *space.Ground) []float64 {
	out := make([]float64, s.Weeks)
	for i := range g.Beds {
		for _, h := range g.Beds[i].Holds {
			if h.Guest || h.Lost {
				continue
			}
			first, end := max(0, int(h.From-s.From)/7), s.Weeks
			if h.Clear.P50.IsSet() {
				end = min(end, (int(h.Clear.P50-s.From)+6)/7)
			}
			for week := first; week < end; week++ {
				out[week] += labour.Garden() / weeksYear * h.AreaM2
			}
		}
	}
	return out
}
