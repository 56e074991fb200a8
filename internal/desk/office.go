package desk

import (
	"sync"

	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Office is one household's desk: the use cases of the pages over what the
// keeper keeps. It may be used from many places at once.
type Office struct {
	keeper Keeper
	memory *outlook.Memory

	mu     sync.Mutex
	tables map[int64]*outlook.Table // by version, the last few
}

// NewOffice opens a desk over a keeper.
func NewOffice(k Keeper) *Office {
	return &Office{keeper: k, memory: outlook.NewMemory(), tables: map[int64]*outlook.Table{}}
}

// Holding returns the holding as it stands.
func (o *Office) Holding() (*holding.Holding, error) {
	h, _, err := o.keeper.Holding()
	return h, err
}

// Tried returns the holding with changes tried over its plan in force. Nothing
// is written.
func (o *Office) Tried(try []plan.Change) (*holding.Holding, int64, error) {
	h, version, err := o.keeper.Holding()
	if err != nil || len(try) == 0 {
		return h, version, err
	}
	own := *h
	draft := plan.Plan{ID: "tried", Name: "tried", Base: h.Plan}
	own.Plans = append(append([]plan.Plan{}, h.Plans...), draft)
	own.Changes = append([]plan.Change{}, h.Changes...)
	for i, c := range try {
		c.Plan, c.Order = draft.ID, i+1
		own.Changes = append(own.Changes, c)
	}
	own.Plan = draft.ID
	return &own, version, nil
}
