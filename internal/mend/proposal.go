package mend

import (
	"garner/internal/advise"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// Kind is a kind of proposal. The list is closed and documented.
type Kind string

// The kinds of proposal.
const (
	Sow     Kind = "sow"     // a new sowing or planting
	Cover   Kind = "cover"   // a cover over a bed for a time
	Store   Kind = "store"   // a planting whose crop goes to a store
	Enlarge Kind = "enlarge" // more ground for a sowing that is to come
	Shift   Kind = "shift"   // a sowing moved in time
	Buy     Kind = "buy"     // what lacks may be bought
	Leave   Kind = "leave"   // it is done without
)

// Answer is a gap and what could be done about it.
type Answer struct {
	Vegetable string
	Gaps      []outlook.Gap // all of the vegetable, in order of time
	At        int           // index of the gap that is answered; -1: there is none
	Proposals []Proposal    // the best first; Buy and Leave last
	Looked    int           // changes that were weighed
}

// Proposal is one thing that could be done about a gap.
type Proposal struct {
	Kind      Kind
	Edit      outlook.Edit
	Planting  plan.Planting     // sown, stored, enlarged or moved; under a cover, one that it helps
	Was       plan.Planting     // as it stands; empty for Sow
	Spell     place.CoverSpell  // of Cover
	Candidate *advise.Candidate // of Sow
	Purchase  larder.Purchase   // of Buy; empty: no want asks for it
	Span      larder.GapLeft    // of Leave
	GapKg     float64           // by how much the expected shortage in the gap's weeks falls [kg]
	DropKg    float64           // the same over the whole table and all vegetables
	Alike     []string          // of Sow: other beds in which it comes to the same
	Elsewhere []Cost            // vegetables of which more lacks then, the most first
	Weeks     int               // of the gap's weeks that are short no more, more often than not
	Short     float64           // chance of a week of the gap being short as it stands, mean, 0-1
	Left      float64           // the same with the proposal
	Odds      float64           // of a usable crop of Planting, 0-1; 0: not asked (Cover, Store, Buy, Leave)
	Takes     Takes
	Warning   *words.Phrase // what speaks against it; nil: nothing is known
}

// Cost is what more lacks of a vegetable over the table.
type Cost struct {
	Vegetable string
	Kg        float64
}

// Takes is what a proposal takes.
type Takes struct {
	M2Weeks  float64 // ground, for the weeks it is held, beside what is held already
	SeedG    float64
	Plants   float64 // plants, sets or tubers
	WorkH    float64
	CoverM2  float64
	BoughtKg float64 // of Buy, in the weeks of the gap; where no want asks for it, all that lacks
}

// score orders proposals: what they mend of the gap, less what they cost elsewhere.
func (p *Proposal) score() float64 { return p.GapKg + min(0, p.DropKg-p.GapKg) }
