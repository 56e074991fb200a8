package record

import "slices"

// The stages of the blossom of fruit, in order of time.
const (
	GreenTip     Stage = "green tip"
	TightBud     Stage = "tight bud"
	TightCluster Stage = "tight cluster"
	Pink         Stage = "pink"
	White        Stage = "white"
	FullBloom    Stage = "full bloom"
	PetalFall    Stage = "petal fall"
	GreenFruit   Stage = "green fruit"
)

// BlossomStages are the stages of blossom in order of time.
func BlossomStages() []Stage {
	return []Stage{GreenTip, TightBud, TightCluster, Pink, White, FullBloom, PetalFall, GreenFruit}
}

// OfBlossom tells whether a stage is one of blossom, not of a disease or pest.
func (s Stage) OfBlossom() bool { return slices.Contains(BlossomStages(), s) }
