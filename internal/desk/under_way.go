package desk

import (
	"fmt"
	"time"

	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/words"
)

// work is something being worked out; what came of it is there when it is done.
type work struct {
	done   chan struct{}
	answer any
	err    error
}

// workedOut works something out once however many ask for it by its name meanwhile,
// and waits so long and no longer; there is false when it is still going on then.
// The work itself keeps what it comes to for those who ask later.
func workedOut[V any](o *Office, name num.Digest, patience time.Duration, ask func() (V, error)) (answer V, there bool, err error) {
	w := o.begin(name, func() (any, error) { return ask() })
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
	w := &work{done: make(chan struct{})}
	o.underWay[name] = w
	go func() {
		defer close(w.done)
		w.err = safely(func() (err error) {
			w.answer, err = ask()
			return err
		})
		o.waiting.Lock()
		delete(o.underWay, name)
		o.waiting.Unlock()
	}()
	return w
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
