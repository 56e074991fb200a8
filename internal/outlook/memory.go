package outlook

import (
	"sync"

	"garner/internal/num"
)

// Memory keeps computed results under the hash of their inputs from one table
// to the next. One table is computed over a memory at a time.
type Memory struct {
	mu     sync.Mutex
	turn   int
	beds   shelf[*bedResult]
	groups shelf[*groupResult]
	*givens
}

// NewMemory returns an empty memory.
func NewMemory() *Memory {
	return &Memory{beds: newShelf[*bedResult](), groups: newShelf[*groupResult](), givens: newGivens()}
}

// Beside returns a memory of results of its own that shares with another what all
// results are worked out from. The two can be used at once.
func (m *Memory) Beside() *Memory {
	own := NewMemory()
	own.givens = m.givens
	return own
}

// keptTurns is for how many tables a result that nobody asks for is kept: a few
// changes tried and put back cost nothing.
const keptTurns = 6

// begin starts a new table.
func (m *Memory) begin() {
	m.turn++
	m.beds.turn, m.groups.turn = m.turn, m.turn
	m.givens.begin()
}

// tidy forgets what has not been asked for in a while.
func (m *Memory) tidy() {
	m.beds.tidy()
	m.groups.tidy()
	m.givens.tidy()
}

// shelf is one kind of result.
type shelf[T any] struct {
	turn    int
	results map[num.Digest]*kept[T]
}

type kept[T any] struct {
	value T
	used  int
}

func newShelf[T any]() shelf[T] { return shelf[T]{results: map[num.Digest]*kept[T]{}} }

func (s *shelf[T]) get(d num.Digest) (T, bool) {
	if k, ok := s.results[d]; ok {
		k.used = s.turn
		return k.value, true
	}
	var none T
	return none, false
}

func (s *shelf[T]) put(d num.Digest, value T) { s.results[d] = &kept[T]{value, s.turn} }

func (s *shelf[T]) tidy() {
	for d, k := range s.results {
		if s.turn-k.used >= keptTurns {
			delete(s.results, d)
		}
	}
}
