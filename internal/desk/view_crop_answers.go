package desk

import (
	"encoding/json"
	"math"
	"runtime"
	"sync"
	"time"

	"garner/internal/cover"
	"garner/internal/growth"
	"garner/internal/window"
)

// yearAnswer is the window of one way of starting under one cover.
type yearAnswer struct {
	Method string
	Cover  cover.Kind
	window.Answer
}

// yearAnswers finds the answers to a question or works them out, once however
// many ask meanwhile. They are nil when patience ends before.
func (o *Office) yearAnswers(q *yearQuestion, patience time.Duration) ([]yearAnswer, error) {
	if known, ok := o.views.years.get(q.name); ok {
		return known, nil
	}
	var answers []yearAnswer
	if text, ok, err := o.keeper.Result(q.name); err == nil && ok && json.Unmarshal(text, &answers) == nil {
		o.views.years.keep(q.name, answers)
		return answers, nil
	}
	answers, _, err := workedOut(o, q.name, patience, func() ([]yearAnswer, error) {
		made, err := q.answers()
		if err != nil {
			return nil, err
		}
		o.views.years.keep(q.name, made)
		text, err := json.Marshal(made)
		if err != nil {
			return nil, err
		}
		return made, o.keeper.Keep(q.name, text)
	})
	return answers, err
}

// answers works all windows out, the covers shared out among the processors.
func (q *yearQuestion) answers() ([]yearAnswer, error) {
	methods := q.use.Methods
	out := make([]yearAnswer, len(q.covers)*len(methods))
	faults := make([]error, len(q.covers))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(len(q.covers), runtime.GOMAXPROCS(0)) {
		workers.Add(1)
		go func() {
			defer workers.Done()
			for k := range next {
				faults[k] = q.under(k, out)
			}
		}()
	}
	for k := range q.covers {
		next <- k
	}
	close(next)
	workers.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// fineChance is how finely the chance of a day is kept.
const fineChance = 1e4

// under answers for every way of starting under one cover.
func (q *yearQuestion) under(k int, out []yearAnswer) error {
	at, err := window.GeneratedPlace(q.site.Location, q.normals, pageSeed, window.UsualYears, 1, q.covers[k])
	if err != nil {
		return err
	}
	for m, method := range q.use.Methods {
		a := window.Find(window.Question{Use: q.use, Start: growth.StartOf(method), Place: at, Years: window.UsualYears, Chance: window.UsualChance})
		for i, c := range a.ByDay {
			a.ByDay[i] = math.Round(c*fineChance) / fineChance // short in what is kept
		}
		out[m*len(q.covers)+k] = yearAnswer{method, q.covers[k], a}
	}
	return nil
}
