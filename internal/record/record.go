// Package record holds what was seen and done, apart from what was planned.
package record

import "garner/internal/cal"

// What is the kind of a record. The list is closed and documented.
type What string

// The kinds of record.
const (
	Emerged   What = "emerged"
	Planted   What = "planted"
	FirstPick What = "first pick"
	Picked    What = "picked"
	LastPick  What = "last pick"
	Died      What = "died"
	Cleared   What = "cleared"
	Counted   What = "counted" // what is in a store, or of a batch
	Watered   What = "watered"
	Covered   What = "covered"
	Noted     What = "noted"
	Failing   What = "failing" // a share of the planting is lost
	Moved     What = "moved"   // lifted and set in another bed
	Disease   What = "disease" // one that stays in the ground, see Problem
	Sighted   What = "sighted" // a disease or pest, see Problem and Stage
	Composted What = "composted"
	Manured   What = "manured"
	Limed     What = "limed"
	Mulched   What = "mulched"
	Raised    What = "raised" // sown in trays or cells, to be planted out
	Pricked   What = "pricked out"
	Fed       What = "fed"       // feed was given, alone or in the water
	Blossomed What = "blossomed" // the blossom of fruit came to a stage, see Stage
)

// Stage is what of a disease or pest was seen, or how far blossom is.
type Stage string

// The stages; empty is not told.
const (
	Flying Stage = "flying" // flies, moths, beetles
	Eggs   Stage = "eggs"
	Young  Stage = "young"  // maggots, caterpillars, aphids
	Damage Stage = "damage" // what it does to plants
)

// Record is one thing seen or done on a date.
type Record struct {
	ID       string
	Date     cal.Date
	What     What
	Planting string
	Bed      string
	Feature  string // a tree on the plan that blossoms
	Store    string
	Batch    string // that was counted; empty: all that lies in the store
	Value    float64
	Unit     string // kg, plants, pieces, share, L
	Problem  string // id of a disease or pest as in the rotation facts or the rules of risk
	Stage    Stage  // of it that was seen, or of blossom
	Note     string
}

// Sees tells whether a record is of a disease or pest that was seen.
func (r *Record) Sees() bool { return r.Problem != "" && (r.What == Sighted || r.What == Disease) }

// Picks tells whether a record is of a pick.
func (r *Record) Picks() bool {
	return r.What == FirstPick || r.What == Picked || r.What == LastPick
}
