package outlook

import (
	"sync"

	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
)

// givens are what results are worked out from and what no plan changes: the weather of
// sites, the light at beds, crops made ready for the day loop. Several memories may
// share them.
type givens struct {
	mu       sync.Mutex
	turn     int
	weather  shelf[*weatherYears]
	shades   shelf[*bedShade]
	records  map[*climate.Record]num.Digest // a record does not change once it was read
	prepared map[preparedKey]*growth.Parameters
}

func newGivens() *givens {
	return &givens{weather: newShelf[*weatherYears](), shades: newShelf[*bedShade](),
		records: map[*climate.Record]num.Digest{}, prepared: map[preparedKey]*growth.Parameters{}}
}

func (g *givens) begin() {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.turn++
	g.weather.turn, g.shades.turn = g.turn, g.turn
}

func (g *givens) tidy() {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.weather.tidy()
	g.shades.tidy()
}

// weatherOf is the weather of a name, made where it is not known.
func (g *givens) weatherOf(name num.Digest, begin func() *weatherYears) *weatherYears {
	g.mu.Lock()
	defer g.mu.Unlock()
	known, ok := g.weather.get(name)
	if !ok {
		known = begin()
		g.weather.put(name, known)
	}
	return known
}

func (g *givens) shade(name num.Digest) (*bedShade, bool) {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.shades.get(name)
}

func (g *givens) keepShade(name num.Digest, s *bedShade) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.shades.put(name, s)
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
func (g *givens) parameters(name num.Digest, u *crop.Use, start growth.Start, northern bool) *growth.Parameters {
	g.mu.Lock()
	defer g.mu.Unlock()
	key := preparedKey{name, start, northern}
	if p, ok := g.prepared[key]; ok {
		return p
	}
	if len(g.prepared) >= mostPrepared {
		clear(g.prepared)
	}
	p := growth.Prepare(u, start, northern)
	g.prepared[key] = p
	return p
}

// mostRecords bounds the records that are known by name: readings make a new one
// with every entry, and each holds decades of days.
const mostRecords = 16

// record returns the name of a weather record, reckoned once for each.
func (g *givens) record(r *climate.Record) num.Digest {
	g.mu.Lock()
	defer g.mu.Unlock()
	if known, ok := g.records[r]; ok {
		return known
	}
	d := num.NewDigester("record")
	digestRecord(d, r)
	if len(g.records) >= mostRecords {
		clear(g.records)
	}
	g.records[r] = d.Sum()
	return g.records[r]
}
