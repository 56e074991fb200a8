package outlook

import (
	"sync"
	"sync/atomic"
)

// shared shares futures out to workers, each of which begins once. The first fault
// ends its worker and is returned.
func shared(futures, workers int, begin func() (future func(int) error)) error {
	var next atomic.Int64
	var failed error
	var mu sync.Mutex
	var wait sync.WaitGroup
	for range max(1, min(workers, futures)) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			do := begin()
			for f := int(next.Add(1)) - 1; f < futures; f = int(next.Add(1)) - 1 {
				if err := safely(f, do); err != nil {
					mu.Lock()
					failed = err
					mu.Unlock()
					return
				}
			}
		}()
	}
	wait.Wait()
	return failed
}

// alike parts the first futures into those that have the same weather, so that one
// worker builds each bed's own weather once for all of them.
func (j *job) alike(futures int) [][]int {
	var out [][]int
	at := map[int]int{}
	for f := range futures {
		like := f
		if len(j.weathers) > 0 && j.weathers[0].prepare() == nil {
			like = j.weathers[0].like(f)
		}
		k, known := at[like]
		if !known {
			k = len(out)
			at[like], out = k, append(out, nil)
		}
		out[k] = append(out[k], f)
	}
	return out
}
