package place

import "garner/internal/cal"

// FeatureKind is what stands on a site beside its beds. The list is closed and
// documented.
type FeatureKind string

// The kinds of feature.
const (
	Wall          FeatureKind = "wall"
	Fence         FeatureKind = "fence"
	Hedge         FeatureKind = "hedge"
	Building      FeatureKind = "building"
	DeciduousTree FeatureKind = "deciduous tree"
	EvergreenTree FeatureKind = "evergreen tree"
	Path          FeatureKind = "path"
)

// Feature is a thing on a site beside its beds: what throws shade, and paths.
type Feature struct {
	ID      string
	Site    string
	Name    string
	Kind    FeatureKind
	At      Spot
	LengthM float64 // of a tree: width of the crown
	WidthM  float64
	HeightM float64 // above the beds; 0: throws no shade
	BaseM   float64 // underside of a crown

	// Share of the light that comes through; 0: as usual for its kind.
	ThroughLeaf, ThroughBare float64
	LeafOn, LeafOff          cal.MonthDay // zero: as usual
}
