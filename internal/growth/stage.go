package growth

// Stage is where a planting stands. The list is closed and documented.
type Stage uint8

// The stages.
const (
	Waiting     Stage = iota // not in the ground yet
	Germinating              // in the ground, not through
	Young                    // through or planted, in its first 25 days
	Growing
	Ready   // can be picked; of a green manure, covers the ground and can be turned in
	Resting // a perennial out of season
	Over    // finished
	Dead    // lost
)

var stageNames = [...]string{"waiting", "germinating", "young", "growing", "ready", "resting", "over", "dead"}

// String returns the stage's word.
func (s Stage) String() string { return stageNames[s] }

// End is how a planting ended. The list is closed and documented.
type End uint8

// The ends.
const (
	Unfinished End = iota // the weather ended first
	Harvested
	Killed
	Bolted
	TooSmall
	TooSlow
	TooHot
	Covered // a green manure that covered its ground
	Lifted  // taken up to be set elsewhere, where it goes on
	Lost    // recorded as lost
)

var endNames = [...]string{"weather ended", "harvested", "killed", "bolted", "too small", "too slow", "too hot", "ground covered", "lifted", "lost"}

// String returns the end's words.
func (e End) String() string { return endNames[e] }

var endKeys = [...]string{"unfinished", "harvested", "killed", "bolted", "small", "slow", "hot", "covered", "lifted", "lost"}

// Key returns the end's one-word key.
func (e End) Key() string { return endKeys[e] }
