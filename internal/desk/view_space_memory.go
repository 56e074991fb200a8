package desk

import (
	"garner/internal/num"
	"garner/internal/space"
)

// spaceKey names all that a layout depends on: the table, and what its name does
// not tell of records, beds and relations, which an entry or a try may change.
func (a *asked) spaceKey() num.Digest {
	d := num.NewDigester("space 1")
	d.Digest(a.name)
	d.Int(a.version)
	d.Int(int64(a.setting.Today))
	for _, c := range a.holding.Changes {
		for _, text := range []string{c.Plan, c.Action, c.Planting, c.Field, c.Value} {
			d.Text(text)
		}
	}
	return d.Sum()
}

func (m *viewMemory) space(key num.Digest) *space.Ground {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.spaces[key]
}

func (m *viewMemory) keepSpace(key num.Digest, g *space.Ground) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.spaces) >= mostViews {
		clear(m.spaces)
	}
	m.spaces[key] = g
}
