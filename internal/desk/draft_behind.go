package desk

import (
	"math"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"garner/internal/plan"
)

// drafting is the year that is drafted behind the pages, one at a time. What came of
// the last one stays until another is asked for.
type drafting struct {
	mu   sync.Mutex
	last *draftRun
}

// draftRun is one draft on its way.
type draftRun struct {
	asked   DraftOptions
	plan    string // in force when it was begun
	stopped atomic.Bool

	mu    sync.Mutex
	began time.Time // of the search; zero: what each sowing gives is being worked out still
	best  DraftBest
	done  bool
	view  *DraftView
	err   error
	kept  string // id of the plan it was kept as
}

// Drafting is how the draft behind the pages stands.
type Drafting struct {
	Asked     DraftOptions
	Searching bool // the search has begun
	Share     float64
	Best      DraftBest // not a number: none yet
	Stopped   bool      // it was asked to be content with the best so far
	Done      bool
	View      *DraftView // nil: it is under way, or came to nothing
	Err       error      // why it came to nothing
	Base      string     // plan that was in force
	Kept      string     // id of the plan that it was kept as; empty: it was not
}

// StartDraft begins to draft a year behind the pages. While one is under way no other
// is begun.
func (o *Office) StartDraft(asked DraftOptions) error {
	h, err := o.Holding()
	if err != nil {
		return err
	}
	o.drafting.mu.Lock()
	defer o.drafting.mu.Unlock()
	if last := o.drafting.last; last != nil && !last.state().Done {
		return nil
	}
	if asked.Seconds == 0 && asked.Steps == 0 {
		asked.Seconds = usualSeconds
	}
	run := &draftRun{asked: asked, plan: h.Plan, best: DraftBest{math.NaN(), math.Inf(-1)}}
	asked.Best, asked.Stop = run.told, run.stopped.Load
	o.drafting.last = run
	go func() {
		var view *DraftView
		err := safely(func() (err error) {
			view, err = DraftYear(h, asked)
			return err
		})
		run.mu.Lock()
		defer run.mu.Unlock()
		run.done, run.view, run.err = true, view, err
	}()
	return nil
}

// StopDraft ends the search and keeps the best so far.
func (o *Office) StopDraft() {
	o.drafting.mu.Lock()
	defer o.drafting.mu.Unlock()
	if o.drafting.last != nil {
		o.drafting.last.stopped.Store(true)
	}
}

// Drafting tells how the draft behind the pages stands; nil when none was asked for.
func (o *Office) Drafting() *Drafting {
	o.drafting.mu.Lock()
	defer o.drafting.mu.Unlock()
	if o.drafting.last == nil {
		return nil
	}
	d := o.drafting.last.state()
	if h, err := o.Holding(); err != nil || !slices.ContainsFunc(h.Plans, func(p plan.Plan) bool { return p.ID == d.Kept }) {
		d.Kept = "" // it was taken back
	}
	return &d
}

func (r *draftRun) told(best DraftBest) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.began.IsZero() {
		r.began = time.Now()
	}
	r.best = best
}

func (r *draftRun) state() Drafting {
	r.mu.Lock()
	defer r.mu.Unlock()
	d := Drafting{Asked: r.asked, Searching: !r.began.IsZero(), Best: r.best, Stopped: r.stopped.Load(), Done: r.done,
		View: r.view, Err: r.err, Base: r.plan, Kept: r.kept}
	if d.Searching && r.asked.Seconds > 0 {
		d.Share = min(1, time.Since(r.began).Seconds()/r.asked.Seconds)
	}
	return d
}
