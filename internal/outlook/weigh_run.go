package outlook

import (
	"maps"
	"slices"

	"garner/internal/larder"
	"garner/internal/plan"
)

// weighedGroup is a larder group with its expected shortage by vegetable and week.
type weighedGroup struct {
	work  *groupWork
	short [][]float32 // by future: vegetables x weeks [kg]
	over  [][]float64 // by future and vegetable: what goes over in the table [kg]
	want  [][]float64 // by vegetable and week [kg]

	mean     [][]float64 // by vegetable and week [kg]
	chance   [][]float64 // of being short, by vegetable and week
	meanOver []float64   // by vegetable [kg]
}

// run computes all that was laid out.
func (w *weighing) run() error {
	err := w.share(w.job.Years, func(k *weigher, f int) error { return k.future(f) })
	if err == nil {
		for _, g := range w.groups {
			g.average(w.job)
		}
	}
	return err
}

// share shares futures out to workers.
func (w *weighing) share(futures int, do func(*weigher, int) error) error {
	for _, p := range w.parts {
		if err := p.prepare(); err != nil {
			return err
		}
	}
	alike := w.job.alike(futures)
	return shared(len(alike), w.job.Workers, func() func(int) error {
		k := newWeigher(w)
		return func(i int) error {
			for _, f := range alike[i] {
				if err := safely(f, func(f int) error { return do(k, f) }); err != nil {
					return err
				}
			}
			return nil
		}
	})
}

// weigher owns the working space for one future after another.
type weigher struct {
	*worker
	of       *weighing
	rooms    map[*larder.Pantry]*room
	supplies []*larder.Supply
}

// room is one worker's working space in a pantry.
type room struct {
	scratch *larder.Scratch
	year    *larder.Year
}

func newWeigher(w *weighing) *weigher {
	return &weigher{worker: newWorker(&job{Setting: w.job.Setting}), of: w, rooms: map[*larder.Pantry]*room{}}
}

func (k *weigher) future(f int) error {
	for _, p := range k.of.parts {
		if err := k.bed(p, f); err != nil {
			return err
		}
	}
	for _, g := range k.of.groups {
		r := k.room(g.work.pantry)
		k.supplies = g.work.supplies(k.of.job, f, k.supplies)
		if err := g.work.pantry.Run(r.scratch, larder.Future{Supplies: k.supplies}, r.year); err != nil {
			return err
		}
		g.take(k.of.job, f, r.year)
	}
	return nil
}

func (k *weigher) room(p *larder.Pantry) *room {
	r := k.rooms[p]
	if r == nil {
		r = &room{p.NewScratch(), p.NewYear()}
		k.rooms[p] = r
	}
	return r
}

// weeks adds a year's shortage up to weeks, vegetable after vegetable [kg].
func (g *weighedGroup) weeks(j *job, y *larder.Year) []float32 {
	out := make([]float32, 0, len(y.Courses)*j.Weeks)
	var sums []float64
	for v := range y.Courses {
		sums = larder.Weekly(sums, y.Courses[v].Short[runUp:], j.From)
		for _, kg := range sums {
			out = append(out, float32(kg))
		}
	}
	return out
}

// take keeps what is told of one future. What is wanted is the same in all.
func (g *weighedGroup) take(j *job, f int, y *larder.Year) {
	g.short[f] = g.weeks(j, y)
	g.over[f] = make([]float64, len(y.Courses))
	for v := range y.Courses {
		for _, kg := range y.Courses[v].Over[runUp:] {
			g.over[f][v] += float64(kg)
		}
	}
	if f == 0 {
		for v := range y.Courses {
			g.want = append(g.want, larder.Weekly(nil, y.Courses[v].Want[runUp:], j.From))
		}
	}
}

// sumTable takes the shortage of a group of the table.
func (g *weighedGroup) sumTable(j *job) {
	g.short, g.over = make([][]float32, j.Years), make([][]float64, j.Years)
	for f, y := range g.work.result.years {
		g.take(j, f, y)
	}
	g.average(j)
}

// average turns the futures' shortages into their means.
func (g *weighedGroup) average(j *job) {
	n := len(g.work.rows())
	g.mean, g.chance, g.meanOver = make([][]float64, n), make([][]float64, n), make([]float64, n)
	for v := range g.mean {
		g.mean[v], g.chance[v] = make([]float64, j.Weeks), make([]float64, j.Weeks)
		for f, short := range g.short {
			if short == nil {
				continue
			}
			g.meanOver[v] += g.over[f][v] / float64(j.Years)
			for k := range g.mean[v] {
				kg := float64(short[v*j.Weeks+k])
				g.mean[v][k] += kg / float64(j.Years)
				if kg > 0 && kg > gapShare*g.want[v][k] {
					g.chance[v][k]++
				}
			}
		}
		for k := range g.chance[v] {
			g.chance[v][k] /= float64(j.Years) // a count first: half the years are exactly a half
		}
	}
	g.short, g.over = nil, nil
}

// weight adds up what an edit does.
func (w *weighing) weight(i int) Weight {
	t := &w.trials[i]
	byName := map[string]*Drop{}
	add := func(groups []*weighedGroup, sign float64) {
		for _, g := range groups {
			for v, name := range g.work.rows() {
				d := byName[name]
				if d == nil {
					d = &Drop{Vegetable: name, ByWeek: make([]float64, w.job.Weeks), Chance: make([]float64, w.job.Weeks)}
					byName[name] = d
				}
				for k, kg := range g.mean[v] {
					d.ByWeek[k] += sign * kg
				}
				d.OverKg += sign * g.meanOver[v]
				if sign < 0 {
					copy(d.Chance, g.chance[v])
				}
			}
		}
	}
	add(t.before, 1)
	add(t.then, -1)
	var out Weight
	for _, name := range slices.Sorted(maps.Keys(byName)) {
		d := byName[name]
		for _, kg := range d.ByWeek {
			d.Kg += kg
		}
		out.DropKg += d.Kg
		out.Drops = append(out.Drops, *d)
	}
	out.Fates = w.fates(t)
	return out
}

// fates are those of the plantings set.
func (w *weighing) fates(t *trial) []Fate {
	var out []Fate
	for _, id := range t.set {
		for _, b := range t.beds {
			at := slices.IndexFunc(b.plantings, func(p plan.Planting) bool { return p.ID == id })
			if at >= 0 {
				out = append(out, w.job.fate(b, at))
			}
		}
	}
	return out
}
