package desk

import (
	"sync"

	"garner/internal/num"
)

// groundMemory keeps the beds and vegetables last shown on the ground.
type groundMemory struct {
	mu         sync.Mutex
	beds       map[num.Digest]*BedYear
	vegetables map[num.Digest]*vegetableWeeks
	lights     map[lightKey]*ShadeView
}

// lightKey names the light on a site in a month; any entry may change it.
type lightKey struct {
	version int64
	site    string
	month   int
}

func newGroundMemory() groundMemory {
	return groundMemory{beds: map[num.Digest]*BedYear{}, vegetables: map[num.Digest]*vegetableWeeks{}, lights: map[lightKey]*ShadeView{}}
}

func (m *groundMemory) bedYear(name num.Digest) *BedYear {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.beds[name]
}

func (m *groundMemory) keepBedYear(name num.Digest, y *BedYear) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.beds) >= mostBeds {
		clear(m.beds)
	}
	m.beds[name] = y
}

func (m *groundMemory) vegetableWeeks(name num.Digest) *vegetableWeeks {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.vegetables[name]
}

func (m *groundMemory) keepVegetableWeeks(name num.Digest, w *vegetableWeeks) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.vegetables) >= mostBeds {
		clear(m.vegetables)
	}
	m.vegetables[name] = w
}

func (m *groundMemory) light(key lightKey) *ShadeView {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.lights[key]
}

func (m *groundMemory) keepLight(key lightKey, v *ShadeView) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.lights) >= mostViews {
		clear(m.lights)
	}
	m.lights[key] = v
}
