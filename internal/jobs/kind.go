package jobs

import "slices"

// Kind is a kind of work. The list is that of data/kinds.csv, in the order in which
// work is done at one place.
type Kind string

// The kinds that the code itself makes; those of care stand in the data alone.
const (
	SowIndoors Kind = "sow-indoors"
	Sow        Kind = "sow"
	Set        Kind = "set"
	PlantOut   Kind = "plant-out"
	PrickOut   Kind = "prick-out"
	Replant    Kind = "replant"
	Mulch      Kind = "mulch"
	SowGreen   Kind = "sow-green"
	CutGreen   Kind = "cut-green"
	Cover      Kind = "cover"
	Net        Kind = "net"
	Uncover    Kind = "uncover"
	Protect    Kind = "protect" // for a night
	Vent       Kind = "vent"
	Shut       Kind = "shut"
	Feed       Kind = "feed"
	Burn       Kind = "burn"
	Strip      Kind = "strip"
	Water      Kind = "water"
	Pick       Kind = "pick"
	Lift       Kind = "lift"
	Clear      Kind = "clear"
	Count      Kind = "count"
	Compost    Kind = "compost"
	Lime       Kind = "lime"
	Own        Kind = "own"
)

// Who can do a job.
type Who string

// Each can do what those before can.
const (
	Child    Who = "child"    // with somebody near
	Newcomer Who = "newcomer" // once shown
	Grown    Who = "grown"    // anyone grown who knows the work
)

var whos = []string{string(Child), string(Newcomer), string(Grown)}

// Can tells whether somebody can do a job for which at least who is needed.
func (w Who) Can(needed Who) bool {
	return slices.Index(whos, string(w)) >= slices.Index(whos, string(needed))
}

// Barred is something that a site does not allow. The list is closed and documented.
type Barred string

// What a site may not allow.
const (
	Fires   Barred = "fires"
	Hoses   Barred = "hoses"
	Heights Barred = "heights" // ladders
)

// Kinds are the kinds of work in the order in which they are done at one place. The
// error is of the package's own data.
func Kinds() ([]Kind, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	return slices.Clone(f.order), nil
}
