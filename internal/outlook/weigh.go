package outlook

import (
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/plan"
)

// Edit is a change to a plan. Edits are weighed each on its own.
type Edit struct {
	Set    []plan.Planting    // added, or put in the place of the planting of the same id
	Remove []string           // ids of plantings taken out
	Covers []place.CoverSpell // laid over their beds, beside those that lie there
	Left   []larder.GapLeft   // gaps that are left, beside those left already
	Buys   []larder.Purchase  // what may be bought, beside what may be already
}

// Weight is what an edit does to the table.
type Weight struct {
	DropKg float64 // by how much the expected shortage over the whole table falls [kg]; negative: it grows
	Drops  []Drop  // the same by vegetable: those whose group the edit touches, by name
	Fates  []Fate  // of the plantings set that reach the table, in the order of the edit
}

// Drop is by how much a vegetable's expected shortage falls.
type Drop struct {
	Vegetable string
	Kg        float64
	ByWeek    []float64 // [kg], from the table's first week on; negative where more is short
	Chance    []float64 // of each week being short once the edit is made, 0-1
	OverKg    float64   // by how much what goes over falls over the whole table [kg]; negative: it grows
}

// Scales weigh edits against a table that was computed. An edit's weight is the
// difference of the table's expected shortage and that of the full table with
// the edit made, computed by the same season and the same larder under the same
// futures; only what the edit touches is computed again. The luck of a planting
// hangs on its id, so a planting keeps its weight only under its own id.
type Scales struct {
	Table *Table

	job      *job
	memory   *Memory
	openings []larder.Opening
	grown    map[num.Digest]*bedResult
	groups   map[num.Digest]*weighedGroup
	pantries map[string]*larder.Pantry // by what makes them, see shape
}

// NewScales computes the table of a setting, as Compute does, and lays it on the
// scales.
func NewScales(s Setting, m *Memory) (*Scales, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	j, err := m.compute(s)
	if err != nil {
		return nil, err
	}
	return j.scales(m)
}

func (j *job) scales(m *Memory) (*Scales, error) {
	s := &Scales{Table: j.table(), job: j, memory: m,
		grown: map[num.Digest]*bedResult{}, groups: map[num.Digest]*weighedGroup{}, pantries: map[string]*larder.Pantry{}}
	var err error
	if s.openings, err = j.openings(); err != nil {
		return nil, err
	}
	for _, b := range j.beds {
		s.grown[b.digest] = b.result
	}
	for _, g := range j.groups {
		w := &weighedGroup{work: g}
		w.sumTable(j)
		s.groups[g.digest] = w
		s.pantries[shape(g)] = g.pantry
	}
	return s, nil
}

// Plantings are those of the plan in force, with the draft's changes made.
func (s *Scales) Plantings() []plan.Planting { return s.job.plantings }

// Weigh weighs edits, each on its own. The weights come in the order of the
// edits and are the same for any number of workers.
func (s *Scales) Weigh(edits []Edit) ([]Weight, error) {
	s.memory.mu.Lock()
	defer s.memory.mu.Unlock()
	w := newWeighing(s)
	for i := range edits {
		if err := w.lay(&edits[i]); err != nil {
			return nil, err
		}
	}
	if err := w.run(); err != nil {
		return nil, err
	}
	out := make([]Weight, len(edits))
	for i := range out {
		out[i] = w.weight(i)
	}
	return out, nil
}
