package desk

import (
	"sync"
	"sync/atomic"

	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Office is one household's desk: the use cases of the pages over what the
// keeper keeps. It may be used from many places at once.
type Office struct {
	keeper  Keeper
	editing sync.Mutex // one edit is made at a time

	computing sync.Mutex // one table is computed at a time
	waiting   sync.Mutex // guards what is being worked out
	underWay  map[num.Digest]*work
	turns     turns
	memory    *outlook.Memory
	views     *viewMemory
	warmed    atomic.Bool // there is a last table
	last      computed    // the last table as it stands, and the last one tried
	tried     computed
	advisers  advisers
	drafting  drafting
	fetching  fetching
	hearing   hearing
}

// computed is a table with the digest of what it was computed from.
type computed struct {
	name  num.Digest
	table *outlook.Table
}

// NewOffice opens a desk over a keeper.
func NewOffice(k Keeper) *Office {
	m := outlook.NewMemory()
	return &Office{keeper: k, memory: m, views: newViewMemory(m), underWay: map[num.Digest]*work{},
		fetching: fetching{wake: make(chan struct{}, 1)}}
}

// Holding returns the holding as it stands.
func (o *Office) Holding() (*holding.Holding, error) {
	h, _, err := o.standing()
	return h, err
}

// Tried returns the holding with changes tried over its plan in force. Nothing
// is written.
func (o *Office) Tried(try []plan.Change) (*holding.Holding, int64, error) {
	h, version, err := o.standing()
	if err != nil || len(try) == 0 {
		return h, version, err
	}
	own := *h
	draft := plan.Plan{ID: "tried", Name: "tried", Base: h.Plan}
	own.Plans = append(append([]plan.Plan{}, h.Plans...), draft)
	own.Changes = append([]plan.Change{}, h.Changes...)
	p := parted(try)
	for i, c := range p.plantings {
		c.Plan, c.Order = draft.ID, i+1
		own.Changes = append(own.Changes, c)
	}
	own.Plan = draft.ID
	if own.GapsLeft, err = leftWith(h, p.leaves); err != nil {
		return nil, 0, err
	}
	if own.Purchases, err = boughtWith(h, p.buys); err != nil {
		return nil, 0, err
	}
	own.Covers, err = laid(&own, p.covers, coverIDs(h))
	return &own, version, err
}

// pageSeed is the seed of the pages' tables: the same holding shows the same
// figures.
const pageSeed = 1

// asked is a holding with changes tried, ready to be computed.
type asked struct {
	holding *holding.Holding
	setting outlook.Setting
	name    num.Digest // of the table
	version int64      // of the holding before what is tried
	sky     int64      // rises with every forecast that is fetched
	try     []plan.Change
	tried   bool // it is not the holding as it stands
}

func (o *Office) ask(try []plan.Change) (*asked, error) {
	h, version, err := o.Tried(try)
	if err != nil {
		return nil, err
	}
	a := &asked{sky: o.fetching.revision.Load(), holding: h, version: version, try: try, tried: len(try) > 0}
	if a.setting, err = settingOf(h, OutlookOptions{Seed: pageSeed}); err != nil {
		return nil, err
	}
	key := a.answer("asked").Sum()
	if known, ok := o.views.names.get(key); ok && (a.tried || known.holding == h) {
		a.name = known.name
		return a, nil
	}
	if a.name, err = o.memory.Name(a.setting); err == nil {
		o.views.names.keep(key, named{h, a.name})
	}
	return a, err
}

// named is the name of a holding's table.
type named struct {
	holding *holding.Holding
	name    num.Digest
}

// askOf readies a holding to be computed.
func (o *Office) askOf(a *asked) (*asked, error) {
	var err error
	if a.setting, err = settingOf(a.holding, OutlookOptions{Seed: pageSeed}); err != nil {
		return nil, err
	}
	if a.name, err = o.memory.Name(a.setting); err != nil {
		return nil, err
	}
	return a, nil
}

// atHand is the table that was asked for where it was the last one computed of its kind;
// nil: it was not. Who asks is computing.
func (o *Office) atHand(a *asked) *outlook.Table {
	for _, known := range []*computed{&o.last, &o.tried} {
		if known.table != nil && known.name == a.name {
			return known.table
		}
	}
	return nil
}

// table computes what was asked, or returns it when it was the last thing
// computed of its kind.
func (o *Office) table(a *asked) (*outlook.Table, error) {
	o.computing.Lock()
	defer o.computing.Unlock()
	if t := o.atHand(a); t != nil {
		return t, nil
	}
	t, err := outlook.Compute(a.setting, o.memory)
	if err != nil {
		return nil, err
	}
	made := computed{a.name, t}
	if a.tried {
		o.tried = made
	} else {
		o.last = made
		o.warmed.Store(true)
	}
	return made.table, nil
}
