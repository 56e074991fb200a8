package outlook

import (
	"sync"

	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
)

// Memory keeps computed results under the hash of their inputs from one table
// to the next. One table is computed over a memory at a time.
type Memory struct {
	mu      sync.Mutex
	turn    int
	weather shelf[*weatherYears]
	beds    shelf[*bedResult]
	groups  shelf[*groupResult]
	shades  shelf[*bedShade]

	records  map[*climate.Record]num.Digest // a record does not change once it was read
	prepared map[preparedKey]*growth.Parameters
}

// preparedKey names a use made ready for the day loop.
type preparedKey struct {
	use      num.Digest
	start    growth.Start
	northern bool
}

// mostPrepared is how many uses are kept ready: several crop books' worth.
const mostPrepared = 5000

// parameters makes a use ready for the day loop, once for each.
func (m *Memory) parameters(name num.Digest, u *crop.Use, start growth.Start, northern bool) *growth.Parameters {
	key := preparedKey{name, start, northern}
	if p, ok := m.prepared[key]; ok {
		return p
	}
	if len(m.prepared) >= mostPrepared {
		clear(m.prepared)
	}
	p := growth.Prepare(u, start, northern)
	m.prepared[key] = p
	return p
}

// NewMemory returns an empty memory.
func NewMemory() *Memory {
	return &Memory{weather: newShelf[*weatherYears](), beds: newShelf[*bedResult](), groups: newShelf[*groupResult](),
		shades:  newShelf[*bedShade](),
		records: map[*climate.Record]num.Digest{}, prepared: map[preparedKey]*growth.Parameters{}}
}

// keptTurns is for how many tables a result that nobody asks for is kept: a few
// changes tried and put back cost nothing.
const keptTurns = 6

// begin starts a new table.
func (m *Memory) begin() {
	m.turn++
	m.weather.turn, m.beds.turn, m.groups.turn, m.shades.turn = m.turn, m.turn, m.turn, m.turn
}

// tidy forgets what has not been asked for in a while.
func (m *Memory) tidy() {
	m.weather.tidy()
	m.beds.tidy()
	m.groups.tidy()
	m.shades.tidy()
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

// mostRecords bounds the records that are known by name: readings make a new one
// with every entry, and each holds decades of days.
const mostRecords = 16

// record returns the name of a weather record, reckoned once for each.
func (m *Memory) record(r *climate.Record) num.Digest {
	if known, ok := m.records[r]; ok {
		return known
	}
	d := num.NewDigester("record")
	digestRecord(d, r)
	if len(m.records) >= mostRecords {
		clear(m.records)
	}
	m.records[r] = d.Sum()
	return m.records[r]
}
