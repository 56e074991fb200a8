package desk

import (
	"slices"
	"sync"
	"testing"
	"time"

	"garner/internal/num"
)

// However many weighings are asked for, one goes on at a time, and of those that wait the
// one asked for last comes first; other work does not wait for any.
func TestWeighingsTakeTurns(t *testing.T) {
	o := &Office{underWay: map[num.Digest]*work{}}
	var mu sync.Mutex
	var order []string
	going, most := 0, 0
	hold := make(chan struct{})
	ask := func(name string) (bool, error) {
		_, there, err := weighed(o, num.NewDigester(name).Sum(), time.Millisecond, func() (string, error) {
			mu.Lock()
			order, going = append(order, name), going+1
			most = max(most, going)
			mu.Unlock()
			<-hold
			mu.Lock()
			going--
			mu.Unlock()
			return name, nil
		})
		return there, err
	}
	for _, name := range []string{"first", "a", "b", "c", "a"} {
		if there, err := ask(name); there || err != nil {
			t.Fatalf("%s: there %t, %v", name, there, err)
		}
		if name == "first" { // it is under way before the others come
			for began := time.Now(); time.Since(began) < 10*time.Second; time.Sleep(time.Millisecond) {
				mu.Lock()
				on := going == 1
				mu.Unlock()
				if on {
					break
				}
			}
		}
	}
	if v, there, err := workedOut(o, num.NewDigester("other").Sum(), time.Minute, func() (int, error) { return 7, nil }); v != 7 || !there || err != nil {
		t.Errorf("other work waits: %d %t %v", v, there, err)
	}
	close(hold)
	over := func() bool {
		o.waiting.Lock()
		defer o.waiting.Unlock()
		return len(o.underWay) == 0
	}
	for began := time.Now(); !over() && time.Since(began) < 10*time.Second; {
		time.Sleep(time.Millisecond)
	}
	mu.Lock()
	defer mu.Unlock()
	if want := []string{"first", "a", "c", "b"}; most != 1 || !slices.Equal(order, want) {
		t.Errorf("%d at a time, in the order %v, want %v", most, order, want)
	}
}
