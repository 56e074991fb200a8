package desk

import (
	"fmt"
	"slices"
	"time"

	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/words"
)

// work is something being worked out; what came of it is there when it is done.
type work struct {
	name   num.Digest
	ask    func() (any, error)
	done   chan struct{}
	answer any
	err    error
}

// workedOut works something out once however many ask for it by its name meanwhile,
// and waits so long and no longer; there is false when it is still going on then.
// The work itself keeps what it comes to for those who ask later.
func workedOut[V any](o *Office, name num.Digest, patience time.Duration, ask func() (V, error)) (answer V, there bool, err error) {
	return waitedFor[V](o.begin(name, func() (any, error) { return ask() }), patience)
}

// weighed is workedOut for what keeps the whole machine busy for a while, such as what
// would mend a gap: one at a time is worked out, what was asked for last first, so that
// the other pages stay quick however many of these are opened.
func weighed[V any](o *Office, name num.Digest, patience time.Duration, ask func() (V, error)) (answer V, there bool, err error) {
	return waitedFor[V](o.beginInTurn(name, func() (any, error) { return ask() }), patience)
}

// waitedFor waits for work so long and no longer.
func waitedFor[V any](w *work, patience time.Duration) (answer V, there bool, err error) {
	select {
	case <-w.done:
	case <-time.After(patience):
		return answer, false, nil
	}
	if w.err == nil {
		answer, _ = w.answer.(V)
	}
	return answer, true, w.err
}

// begin starts work, or joins those who wait for it already.
func (o *Office) begin(name num.Digest, ask func() (any, error)) *work {
	o.waiting.Lock()
	defer o.waiting.Unlock()
	if w := o.underWay[name]; w != nil {
		return w
	}
	w := &work{name: name, ask: ask, done: make(chan struct{})}
	o.underWay[name] = w
	go o.finish(w)
	return w
}

// turns lets one work of a kind go on at a time.
type turns struct {
	taken   bool
	waiting []*work // what was asked for last comes last
}

// beginInTurn starts work once no other of its kind goes on, what was asked for last
// first; who asks for it again brings it to the front.
func (o *Office) beginInTurn(name num.Digest, ask func() (any, error)) *work {
	o.waiting.Lock()
	defer o.waiting.Unlock()
	w := o.underWay[name]
	at := slices.Index(o.turns.waiting, w)
	switch {
	case w != nil && at < 0: // it goes on already
		return w
	case w != nil:
		o.turns.waiting = slices.Delete(o.turns.waiting, at, at+1)
	default:
		w = &work{name: name, ask: ask, done: make(chan struct{})}
		o.underWay[name] = w
	}
	o.turns.waiting = append(o.turns.waiting, w)
	if !o.turns.taken {
		o.turns.taken = true
		go o.takeTurns()
	}
	return w
}

// takeTurns does all work that waits for its turn.
func (o *Office) takeTurns() {
	for {
		o.waiting.Lock()
		last := len(o.turns.waiting) - 1
		if last < 0 {
			o.turns.taken = false
			o.waiting.Unlock()
			return
		}
		w := o.turns.waiting[last]
		o.turns.waiting = o.turns.waiting[:last]
		o.waiting.Unlock()
		o.finish(w)
	}
}

// finish does work and lets those know who wait for it.
func (o *Office) finish(w *work) {
	defer close(w.done)
	w.err = safely(func() (err error) {
		w.answer, err = w.ask()
		return err
	})
	o.waiting.Lock()
	delete(o.underWay, w.name)
	o.waiting.Unlock()
}

// safely turns a mistake of ours into a fault, which would otherwise end the
// program from beside a request.
func safely(work func() error) (err error) {
	defer func() {
		if wrong := recover(); wrong != nil {
			err = &fault.Error{Kind: fault.Internal, Phrase: words.P("desk.mistake", nil), Err: fmt.Errorf("%v", wrong)}
		}
	}()
	return work()
}
