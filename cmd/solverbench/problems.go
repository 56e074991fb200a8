package main

import (
	"fmt"
	"math"
	"runtime"

	"garner/internal/crop"
	"garner/internal/draft"
	"garner/internal/num"
	"garner/internal/programme"
)

// challenge is a problem of the benchmark.
type challenge struct {
	Name    string
	Beds    int
	Seconds int // what every contestant is given
	build   func() (*programme.Problem, error)
}

// caps are the seconds given, by the number of beds.
var caps = map[int]int{10: 60, 30: 120, 80: 300}

// seed is that of the gardens of the benchmark.
const seed = 1

// challenges are the planning problems of the benchmark's gardens.
func challenges() ([]challenge, error) {
	book, err := crop.Load()
	if err != nil {
		return nil, err
	}
	cases, err := draft.Benchmark(book, seed)
	if err != nil {
		return nil, err
	}
	var out []challenge
	for _, c := range cases {
		c.Setting.Workers = runtime.NumCPU()
		out = append(out, challenge{c.Name, c.Beds, caps[c.Beds], func() (*programme.Problem, error) {
			d, err := draft.Build(c.Setting)
			if err != nil {
				return nil, err
			}
			return d.Problem, nil
		}})
	}
	return out, nil
}

// tiny is a problem that every solver closes at once, to try the tool.
func tiny() challenge {
	return challenge{"tiny", 2, 10, func() (*programme.Problem, error) { return invented(0, 2, 4, 30, 2), nil }}
}

// invented makes a problem of the shape of a household's year. All its figures are
// invented.
func invented(seed uint64, beds, demands, weeks, futures int) *programme.Problem {
	v := &inventor{num.NewStream(num.Key("invented"), seed), &programme.Problem{Name: fmt.Sprint("invented-", seed), Weeks: weeks}}
	for k := range futures {
		v.p.Futures = append(v.p.Futures, k)
	}
	const bedsOfAClass = 5
	for g := range (beds + bedsOfAClass - 1) / bedsOfAClass {
		v.p.Grounds = append(v.p.Grounds, programme.Ground{ID: fmt.Sprint("ground ", g+1), UnitM2: 1, Units: 4 * min(bedsOfAClass, beds-g*bedsOfAClass), Last: weeks - 1})
	}
	hours := programme.Resource{ID: "hours", Unit: "h", PerWeek: make([]float64, weeks)}
	for u := range hours.PerWeek {
		hours.PerWeek[u] = 0.25 * float64(beds)
	}
	v.p.Resources = append(v.p.Resources, hours)
	for d := range demands {
		v.demand(d)
		for way := range 1 + v.r.IntN(2) {
			v.way(d, way)
		}
	}
	return v.p
}

type inventor struct {
	r *num.Stream
	p *programme.Problem
}

// between is a number drawn from a range.
func (v *inventor) between(low, high float64) float64 { return low + (high-low)*v.r.Float64() }

// demand is eaten through a part of each year, at times in two levels.
func (v *inventor) demand(d int) {
	out := programme.Demand{ID: fmt.Sprint("vegetable ", d+1), OverCost: 0.05}
	kg, from, long := rounded(v.between(0.2, 1.5)), v.r.IntN(52), 20+v.r.IntN(40)
	costs := []float64{2}
	if v.r.Float64() < 0.3 {
		costs = []float64{5, 2}
	}
	for _, cost := range costs {
		l := programme.Level{Cost: cost, PerWeek: make([]float64, v.p.Weeks)}
		for u := range l.PerWeek {
			if (u+52-from)%52 < long {
				l.PerWeek[u] = kg
			}
		}
		out.Levels = append(out.Levels, l)
	}
	v.p.Demands = append(v.p.Demands, out)
}

// lifting is how a crop comes off its ground.
type lifting struct {
	lots   int // one a week
	keeps  int // weeks that a lot is good
	stands int // weeks that the ground is held from the first lot on
}

// liftings: fruits that are picked over, heads that stand some weeks, leaves and
// roots that stand long, what is lifted and stored.
var liftings = []lifting{{10, 1, 10}, {1, 2, 2}, {1, 14, 12}, {1, 26, 1}}

// way is one way of growing a vegetable, in every week and ground it can be sown.
func (v *inventor) way(d, way int) {
	how, start, grows := liftings[v.r.IntN(len(liftings))], 6+v.r.IntN(16), 8+v.r.IntN(14)
	yield, span := v.between(1, 4), 8+v.r.IntN(16)
	for g := range v.p.Grounds {
		good := v.between(0.5, 1.2)
		for year := 0; year < v.p.Weeks; year += 52 {
			for week := start; week < start+span && year+week < v.p.Weeks; week++ {
				late := float64(week-start) / float64(span)
				v.sowing(d, way, g, year+week, grows, how, yield*good*(1-0.3*math.Abs(late-0.4)))
			}
		}
	}
}

func (v *inventor) sowing(d, way, g, week, grows int, how lifting, yield float64) {
	s := programme.Sowing{ID: fmt.Sprintf("vegetable %d, way %d, ground %d, week %d", d+1, way+1, g+1, week), Ground: g, First: week, Last: week, Demand: d, Cost: 0.15,
		Most: v.p.Grounds[g].Units, Uses: []programme.Use{{Resource: 0, Week: week, Amount: 0.25}}}
	for range v.p.Futures {
		ready, kg := week+int(float64(grows)*v.between(0.9, 1.1)), yield*v.between(0.6, 1.4)
		var lots []programme.Lot
		for i := range how.lots {
			if first := ready + i; first < v.p.Weeks {
				lots = append(lots, programme.Lot{First: first, Last: min(first+how.keeps, v.p.Weeks), Kg: rounded(kg / float64(how.lots))})
			}
		}
		s.Lots = append(s.Lots, lots)
		s.Last = min(v.p.Weeks-1, max(s.Last, ready+how.stands))
	}
	v.p.Sowings = append(v.p.Sowings, s)
}

// rounded has four decimals, so that all formats write it as it is.
func rounded(x float64) float64 { return math.Round(x*1e4) / 1e4 }
