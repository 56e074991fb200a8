package crop

import "testing"

// Curing is in the book as extension bulletins print it: potatoes one to two weeks at
// 10-15.6 C, sweet potatoes at 26.7-29.4 C (Purdue), winter squash one to two weeks at
// 24-29 C (Knapp), garlic three to four weeks (Saskatchewan).
func TestCuringIsAsPrinted(t *testing.T) {
	book := load(t)
	for _, c := range []struct {
		crop, method, step   string
		from, to, fromC, toC float64
	}{
		{"potato", "clamp", "cure_dark", 7, 14, 10, 15.6},
		{"sweet-potato", "cured", "cure_warm_damp", 7, 10, 26.7, 29.4},
		{"winter-squash", "cured", "cure_warm_dry", 7, 14, 23.9, 29.4},
		{"garlic", "nets", "dry_necks", 21, 28, 0, 0},
	} {
		found := false
		for _, p := range book.Preparing(c.crop, c.method) {
			if p.Step == c.step {
				found = true
				if p.DaysFrom != c.from || p.DaysTo != c.to || p.FromC != c.fromC || p.ToC != c.toC {
					t.Errorf("%s, %s: %+v", c.crop, c.method, p)
				}
			}
		}
		if !found {
			t.Errorf("%s, %s: no step %s", c.crop, c.method, c.step)
		}
	}
}

// Every way of the book is made ready by some step, and every step is of a way in which
// its crop keeps.
func TestEveryWayIsPrepared(t *testing.T) {
	book := load(t)
	keeps := map[wayOf]bool{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, s := range u.Storage {
				keeps[wayOf{c.ID, s.Method}] = true
				if len(book.Preparing(c.ID, s.Method)) == 0 {
					t.Errorf("%s, %s: nothing says how it is made ready", c.ID, s.Method)
				}
			}
		}
	}
	for way := range book.preparing {
		if way.crop != "" && !keeps[way] {
			t.Errorf("%s is made ready for %s, in which it does not keep", way.crop, way.method)
		}
	}
	for _, method := range storageMethods {
		if len(book.preparing[wayOf{"", method}]) == 0 {
			t.Errorf("nothing goes for all that is kept by %s", method)
		}
	}
}
