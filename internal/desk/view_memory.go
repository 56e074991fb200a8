package desk

import (
	"sync"

	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/pairing"
	"garner/internal/space"
)

// mostViews is how many views of each kind are kept at hand.
const mostViews = 40

// viewMemory keeps the views last shown at hand, so that they need not be read or
// made again. What is in it is not changed.
type viewMemory struct {
	mu         sync.Mutex
	tables     map[num.Digest]*TableView
	vegetables map[vegetableKey]*VegetableView
	beds       map[num.Digest]map[string][]float32 // leaf cover by planting
	years      map[num.Digest][]yearAnswer
	spaces     map[num.Digest]*space.Ground
	groundMemory
	pairs map[num.Digest]*pairing.Answer
	adviceMemory
}

// vegetableKey names a vegetable as it stands on a day: any entry may change its
// names, and so the version tells it.
type vegetableKey struct {
	version int64
	today   cal.Date
	name    string
}

func newViewMemory() *viewMemory {
	return &viewMemory{tables: map[num.Digest]*TableView{}, vegetables: map[vegetableKey]*VegetableView{},
		beds: map[num.Digest]map[string][]float32{}, years: map[num.Digest][]yearAnswer{},
		spaces: map[num.Digest]*space.Ground{}, groundMemory: newGroundMemory(), pairs: map[num.Digest]*pairing.Answer{},
		adviceMemory: newAdviceMemory()}
}

func (m *viewMemory) table(key num.Digest) *TableView {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.tables[key]
}

func (m *viewMemory) keepTable(key num.Digest, v *TableView) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.tables) >= mostViews {
		clear(m.tables)
	}
	m.tables[key] = v
}

func (m *viewMemory) vegetable(key vegetableKey) *VegetableView {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.vegetables[key]
}

func (m *viewMemory) keepVegetable(key vegetableKey, v *VegetableView) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.vegetables) >= mostViews {
		clear(m.vegetables)
	}
	m.vegetables[key] = v
}

func (m *viewMemory) bed(name num.Digest) map[string][]float32 {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.beds[name]
}

// mostBeds is for how many beds leaf cover is kept: a garden with what was tried
// in it lately.
const mostBeds = 400

func (m *viewMemory) keepBed(name num.Digest, leaves map[string][]float32) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.beds) >= mostBeds {
		clear(m.beds)
	}
	m.beds[name] = leaves
}

func (m *viewMemory) year(name num.Digest) []yearAnswer {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.years[name]
}

func (m *viewMemory) keepYear(name num.Digest, answers []yearAnswer) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.years) >= mostViews {
		clear(m.years)
	}
	m.years[name] = answers
}

func (m *viewMemory) pair(name num.Digest) *pairing.Answer {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.pairs[name]
}

func (m *viewMemory) keepPair(name num.Digest, a *pairing.Answer) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.pairs) >= mostViews {
		clear(m.pairs)
	}
	m.pairs[name] = a
}
