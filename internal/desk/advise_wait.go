package desk

import (
	"time"

	"garner/internal/num"
)

// adviceWork is an answer being worked out.
type adviceWork struct {
	done chan struct{}
	err  error
}

// within does work once however many ask for it meanwhile, and waits so long and
// no longer; there is false when it is still going on. What it comes to is kept
// by the work itself.
func (o *Office) within(key num.Digest, patience time.Duration, work func() error) (there bool, err error) {
	o.yearing.Lock()
	w := o.advising[key]
	if w == nil {
		w = &adviceWork{done: make(chan struct{})}
		if o.advising == nil {
			o.advising = map[num.Digest]*adviceWork{}
		}
		o.advising[key] = w
		go func() {
			defer close(w.done)
			w.err = work()
			o.yearing.Lock()
			delete(o.advising, key)
			o.yearing.Unlock()
		}()
	}
	o.yearing.Unlock()
	select {
	case <-w.done:
		return true, w.err
	case <-time.After(patience):
		return false, nil
	}
}
