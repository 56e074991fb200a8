package climate

import "math"

// LayHours lays hours over each other, the best first, and returns the hours of all
// in order; each list must rise. Of the same hour the first that knows a value gives
// it. A single list stays what it is.
func LayHours(lists ...[]Hour) []Hour {
	var out []Hour
	for _, l := range lists {
		switch {
		case len(l) == 0:
		case len(out) == 0:
			out = l
		default:
			out = overHours(out, l)
		}
	}
	return out
}

// overHours are both lists in order, the first over the second.
func overHours(best, other []Hour) []Hour {
	out := make([]Hour, 0, len(best)+len(other))
	for len(best) > 0 || len(other) > 0 {
		switch {
		case len(other) == 0 || len(best) > 0 && best[0].At() < other[0].At():
			out, best = append(out, best[0]), best[1:]
		case len(best) == 0 || other[0].At() < best[0].At():
			out, other = append(out, other[0]), other[1:]
		default:
			out = append(out, best[0].filled(&other[0]))
			best, other = best[1:], other[1:]
		}
	}
	return out
}

// filled is an hour with what another knows of it besides.
func (h Hour) filled(other *Hour) Hour {
	for _, v := range []struct {
		to   *float64
		from float64
	}{{&h.TempC, other.TempC}, {&h.HumidityPct, other.HumidityPct}, {&h.RainMM, other.RainMM}, {&h.WindMS, other.WindMS}} {
		if math.IsNaN(*v.to) {
			*v.to = v.from
		}
	}
	return h
}
