package desk

import "garner/internal/num"

// adviceMemory keeps the answers last given.
type adviceMemory struct {
	advices map[num.Digest]*AdviseView
	choices map[num.Digest]*KeepOrClearView
}

func newAdviceMemory() adviceMemory {
	return adviceMemory{map[num.Digest]*AdviseView{}, map[num.Digest]*KeepOrClearView{}}
}

func (m *viewMemory) advice(key num.Digest) *AdviseView {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.advices[key]
}

func (m *viewMemory) keepAdvice(key num.Digest, v *AdviseView) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.advices) >= mostViews {
		clear(m.advices)
	}
	m.advices[key] = v
}

func (m *viewMemory) choice(key num.Digest) *KeepOrClearView {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.choices[key]
}

func (m *viewMemory) keepChoice(key num.Digest, v *KeepOrClearView) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.choices) >= mostViews {
		clear(m.choices)
	}
	m.choices[key] = v
}
