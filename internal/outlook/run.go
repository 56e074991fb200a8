package outlook

import (
	"fmt"
	"garner/internal/appetite"
	"sync"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/words"
)

// Compute makes the table of a setting, using and filling the memory.
func Compute(s Setting, m *Memory) (*Table, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	j, err := m.compute(s)
	if err != nil {
		return nil, err
	}
	return j.table(), nil
}

// compute gives a setting's beds and groups their results; the memory is locked.
func (m *Memory) compute(s Setting) (*job, error) {
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	err := j.lay(m)
	if err == nil {
		err = j.prepare()
	}
	if err == nil {
		err = j.run()
	}
	if err != nil {
		m.forget(j)
		return nil, err
	}
	return j, nil
}

// Name returns the digest of everything a setting's table depends on, without
// computing it.
func (m *Memory) Name(s Setting) (num.Digest, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	j := &job{Setting: s}
	defer m.forget(j)
	if err := j.lay(m); err != nil {
		return num.Digest{}, err
	}
	d := num.NewDigester("table")
	for _, b := range j.beds {
		d.Digest(b.digest)
	}
	for _, g := range j.groups {
		d.Digest(g.digest)
	}
	return d.Sum(), nil
}

// prepare makes the weather ready where a bed has to be computed.
func (j *job) prepare() error {
	for _, b := range j.beds {
		if b.missing {
			if err := b.prepare(); err != nil {
				return err
			}
		}
	}
	return nil
}

// prepare makes the weather ready of the bed and of those its plantings were moved
// from.
func (b *bedWork) prepare() error {
	for i := range b.former {
		if err := b.former[i].site.years.prepare(); err != nil {
			return err
		}
	}
	return b.site.years.prepare()
}

// lay resolves the plan and finds out what must be computed.
func (j *job) lay(m *Memory) error {
	plantings, faults := plan.Resolve(j.Holding.Plans, j.Holding.Plantings, j.Holding.Changes, j.Holding.Plan)
	if len(faults) > 0 {
		return faults
	}
	j.plantings = plantings
	j.likes = wantedGroups(j.Holding)
	j.wants = j.wanted()
	j.uses = newUses(j.Book, j.Holding.Varieties, m)
	if err := j.laySites(m); err != nil {
		return err
	}
	if err := j.layBeds(); err != nil {
		return err
	}
	if err := j.layGroups(j.keeping); err != nil {
		return err
	}
	for _, b := range j.beds {
		b.result, _ = m.beds.get(b.digest)
		if b.result == nil {
			b.result = &bedResult{years: make([][]season.Outcome, j.Years)}
			b.missing = true
			m.beds.put(b.digest, b.result)
		}
	}
	for _, g := range j.groups {
		g.result, _ = m.groups.get(g.digest)
		if g.result == nil {
			g.result = &groupResult{years: make([]*larder.Year, j.Years)}
			g.missing = true
			m.groups.put(g.digest, g.result)
		}
	}
	return nil
}

// forget drops results that a failed run left half made.
func (m *Memory) forget(j *job) {
	for _, b := range j.beds {
		if b.missing {
			delete(m.beds.results, b.digest)
		}
	}
	for _, g := range j.groups {
		if g.missing {
			delete(m.groups.results, g.digest)
		}
	}
}

// keeping asks the book how a crop keeps by a method.
func (j *job) keeping(name, use, method string) (crop.Storage, bool) {
	c, ok := j.Book.Crop(name)
	if !ok {
		return crop.Storage{}, false
	}
	u, err := c.Use(use)
	if err != nil {
		return crop.Storage{}, false
	}
	return u.Way(method)
}

// run shares the futures out to workers.
func (j *job) run() error {
	return j.inFutures(func(w *worker) func(int) error { return w.future })
}

// inFutures does a work in every future and tells how far it is.
func (j *job) inFutures(do func(*worker) func(future int) error) error {
	var mu sync.Mutex
	done, alike := 0, j.alike(j.Years)
	return shared(len(alike), j.Workers, func() func(int) error {
		w := newWorker(j)
		future := do(w)
		return func(i int) error {
			for _, f := range alike[i] {
				if err := safely(f, future); err != nil {
					return err
				}
				mu.Lock()
				if done++; j.Progress != nil {
					j.Progress(done, j.Years)
				}
				mu.Unlock()
			}
			return nil
		}
	})
}

// worker owns the working space for one future after another.
type worker struct {
	job      *job
	runner   season.Runner
	bedsides map[num.Digest]*season.Bedside
	built    map[num.Digest]int // the future of whose weather a bedside is
	draws    []growth.Draw
	supplies []*larder.Supply
	scratch  []*larder.Scratch
}

func newWorker(j *job) *worker {
	w := &worker{job: j, bedsides: map[num.Digest]*season.Bedside{}, built: map[num.Digest]int{},
		scratch: make([]*larder.Scratch, len(j.groups))}
	for i, g := range j.groups {
		if g.missing {
			w.scratch[i] = g.pantry.NewScratch()
		}
	}
	return w
}

// safely does what is to be done for a future and turns a mistake of ours into a
// fault, which would otherwise end the program from inside a worker.
func safely(f int, do func(future int) error) (err error) {
	defer func() {
		if wrong := recover(); wrong != nil {
			err = &fault.Error{Kind: fault.Internal, Phrase: words.P("outlook.mistake", words.Args{"future": f}), Err: fmt.Errorf("%v", wrong)}
		}
	}()
	return do(f)
}

// future computes what is missing of one future.
func (w *worker) future(f int) error {
	for _, b := range w.job.beds {
		if b.missing {
			if err := w.bed(b, f); err != nil {
				return err
			}
		}
	}
	for i, g := range w.job.groups {
		if !g.missing {
			continue
		}
		w.supplies = g.supplies(w.job, f, w.supplies)
		g.result.years[f] = g.pantry.NewYear()
		if err := g.pantry.Run(w.scratch[i], larder.Future{Supplies: w.supplies}, g.result.years[f]); err != nil {
			return err
		}
	}
	return nil
}

func (w *worker) bed(b *bedWork, f int) error {
	w.runner.Enough = w.job.enough
	w.draws = b.draws(w.job.Seed, f, w.draws)
	if e := w.job.enough; e > 0 && int(b.from-w.job.first()) >= e {
		b.result.years[f] = w.runner.Run(b.site.sky, &season.Bedside{}, &b.bed, w.draws) // nothing has begun
		return nil
	}
	beside, err := w.beside(b.site, &b.bed.Ground, b.start, b.ground, f)
	if err != nil {
		return err
	}
	if err := w.besides(b, f); err != nil {
		return err
	}
	b.result.years[f] = w.runner.Run(b.site.sky, beside, &b.bed, w.draws)
	return nil
}

// beside is the own weather of ground under one future, built once for all beds
// that share it, and for futures one after another that have the same weather.
func (w *worker) beside(site *siteWork, ground *season.Ground, start int, name num.Digest, f int) (*season.Bedside, error) {
	beside, ok := w.bedsides[name]
	if !ok {
		beside = &season.Bedside{}
		w.bedsides[name] = beside
	}
	like := site.years.like(f)
	if of, built := w.built[name]; !built || of != like {
		if err := beside.Build(site.sky, site.years.of(f), *ground, start); err != nil {
			return nil, err
		}
		w.built[name] = like
	}
	return beside, nil
}

// wanted are the wants of the holding by weight.
func (j *job) wanted() []larder.Want {
	return appetite.ByWeight(j.Book, j.Holding.Eaters, j.likes, j.Holding.Wants)
}
