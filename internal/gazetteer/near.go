package gazetteer

import (
	"math"
	"sort"

	"garner/internal/fault"
	"garner/internal/sun"
	"garner/internal/words"
)

const (
	// earthKm is the mean radius of the Earth [km] (IUGG, R1).
	earthKm = 6371.0
	// climbKm is the distance that a metre of height counts for [km]: 100 m of
	// height, 0.6 C before it is taken off, are as bad as 20 km. // judgement
	climbKm = 0.2
	// shortKm is the distance that a short record counts for [km]. // judgement
	shortKm = 25
	// farthestKm is how far off a station may be chosen [km]: beyond it another
	// climate begins in most of the world. // judgement
	farthestKm = 500
)

// DistanceKm returns the distance along the ground between two places [km].
//
// Valid everywhere. Source: the haversine formula (Sinnott R W 1984, Virtues of
// the haversine, Sky and Telescope 68:159) on a sphere; off by at most 0.6 %.
func DistanceKm(a, b sun.Location) float64 {
	const rad = math.Pi / 180
	north := math.Sin((b.LatitudeDeg - a.LatitudeDeg) * rad / 2)
	east := math.Sin((b.LongitudeDeg - a.LongitudeDeg) * rad / 2)
	h := north*north + math.Cos(a.LatitudeDeg*rad)*math.Cos(b.LatitudeDeg*rad)*east*east
	return 2 * earthKm * math.Asin(math.Sqrt(math.Min(1, h)))
}

// Near returns up to n places round a point, the nearest first.
func Near(at sun.Location, n int) []Match {
	return rank(at, n, func(m *Match) float64 { return m.DistanceKm })
}

// Choose returns the place whose normals suit a point best, by distance and by
// height; a place over 400 m higher or lower is never chosen. A fault tells when
// there is none near enough, with the nearest there is.
func Choose(at sun.Location) (Match, error) {
	best := rank(at, 1, func(m *Match) float64 {
		if math.Abs(m.HigherM) > farthestM || m.DistanceKm > farthestKm {
			return math.Inf(1)
		}
		cost := m.DistanceKm + climbKm*math.Abs(m.HigherM)
		if m.Short || m.Doubtful {
			cost += shortKm
		}
		return cost
	})
	if len(best) == 0 || math.Abs(best[0].HigherM) > farthestM || best[0].DistanceKm > farthestKm {
		nearest := Near(at, 1)
		if len(nearest) == 0 {
			return Match{}, fault.New(fault.NotFound, "gazetteer.none", nil)
		}
		return Match{}, fault.New(fault.NotFound, "gazetteer.none_near", words.Args{
			"place": nearest[0].Name, "country": nearest[0].Country, "km": math.Round(nearest[0].DistanceKm),
			"m": math.Round(math.Abs(nearest[0].HigherM)), "limit_m": farthestM, "limit_km": farthestKm})
	}
	return best[0], nil
}

// rank returns the n places of least cost.
func rank(at sun.Location, n int, cost func(*Match) float64) []Match {
	if len(at.Check()) > 0 || n <= 0 {
		return nil
	}
	a := read()
	all := make([]Match, len(a.places))
	costs := make([]float64, len(a.places))
	order := make([]int, len(a.places))
	for i := range a.places {
		p := &a.places[i]
		all[i] = Match{Place: *p, DistanceKm: DistanceKm(at, p.Location), HigherM: at.ElevationM - p.Location.ElevationM}
		costs[i], order[i] = cost(&all[i]), i
	}
	sort.SliceStable(order, func(x, y int) bool { return costs[order[x]] < costs[order[y]] })
	out := make([]Match, 0, n)
	for _, i := range order[:min(n, len(order))] {
		out = append(out, all[i])
	}
	return out
}
