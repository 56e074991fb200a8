package larder

// key orders what can be eaten: by the last day it is good, then fresh before
// stored, then first come. It ends in the number of its lot.
type key uint64

const (
	latestDay = 1<<30 - 1
	lotMask   = 1<<31 - 1
)

func newKey(last int, stored bool, lot int) key {
	k := key(min(max(last, 0), latestDay))<<32 | key(lot)
	if stored {
		k |= 1 << 31
	}
	return k
}

func (k key) lot() int  { return int(k & lotMask) }
func (k key) last() int { return int(k >> 32) }

// queue holds what there is of a vegetable, first to be eaten first.
type queue struct {
	keys []key
	head int // keys before it are done with
}

func (q *queue) reset() { q.keys, q.head = q.keys[:0], 0 }

// add puts a key in its place; most come in near the end or the front.
func (q *queue) add(k key) {
	if q.head > 0 && (q.head == len(q.keys) || k < q.keys[q.head]) {
		q.head--
		q.keys[q.head] = k
		return
	}
	q.keys = append(q.keys, k)
	i := len(q.keys) - 1
	for ; i > q.head && q.keys[i-1] > k; i-- {
		q.keys[i] = q.keys[i-1]
	}
	q.keys[i] = k
}
