package advise

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/plan"
)

// How many futures the first stage looks at, and the least odds and worth that
// take a candidate to the second.
const (
	screenYears = 10
	leastOdds   = 0.5
	leastGuess  = 0.01 // [kg]
	leastWarm   = 0.8  // share of futures in which the soil is warm enough to sow
)

// testKey names a range of ways already tried.
type testKey struct {
	bed     string
	areaM2  float64
	until   cal.Date
	day     cal.Date
	crop    string
	use     string
	method  plan.Method
	variety string
	helps   span
}

// testing is what a way came to.
type testing struct {
	odds, guess float64
	ready       cal.Date
}

// screen tries ways under the first futures and keeps those that may be worth
// it, the best first.
func (a *Adviser) screen(ways []way) ([]way, error) {
	if len(ways) == 0 {
		return nil, nil
	}
	var fresh []int
	var plantings []plan.Planting
	for i := range ways {
		if !a.recall(&ways[i]) {
			fresh, plantings = append(fresh, i), append(plantings, ways[i].planting)
		}
	}
	tried, err := a.scales.Try(ways[0].planting.Bed, plantings, screenYears)
	if err != nil {
		return nil, err
	}
	for n, i := range fresh {
		w := &ways[i]
		t := &tried[n]
		w.odds, w.ready = a.oddsOf(&t.Fate, w.use, &w.planting), readyOf(t.Years, t.First).P50
		if warm(t.SoilC, w.use.SoilMinimumC) >= leastWarm {
			w.guess = a.guess(w, t)
		}
		a.keepTest(w)
	}
	var out []way
	for i := range ways {
		if ways[i].guess >= leastGuess && ways[i].odds >= leastOdds {
			out = append(out, ways[i])
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].guess > out[k].guess })
	return out, nil
}

// warm is the share of futures in which the soil is warm enough.
func warm(soilC []float64, leastC float64) float64 {
	n := 0
	for _, c := range soilC {
		if c >= leastC {
			n++
		}
	}
	return float64(n) / float64(max(1, len(soilC)))
}

func keyOf(w *way) testKey {
	p := &w.planting
	return testKey{p.Bed, p.AreaM2, p.ClearBy, p.Date, p.Crop, p.Use, p.Method, p.Variety, w.helps}
}

// recall fills in what a way came to when it was tried before.
func (a *Adviser) recall(w *way) bool {
	a.mu.Lock()
	defer a.mu.Unlock()
	t, ok := a.tested[keyOf(w)]
	if ok {
		w.odds, w.guess, w.ready = t.odds, t.guess, t.ready
	}
	return ok
}

func (a *Adviser) keepTest(w *way) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.tested[keyOf(w)] = testing{w.odds, w.guess, w.ready}
}
