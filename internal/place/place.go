// Package place says where things are: sites, beds and the covers over them.
package place

import (
	"cmp"
	"slices"

	"garner/internal/cover"
	"garner/internal/sun"
)

// Site is one piece of ground with one weather.
type Site struct {
	ID       string
	Name     string
	Location sun.Location
	Weather  string // id of the weather source in the holding

	PlanWidthM float64 // left to right; 0: no plan drawn
	PlanDepthM float64 // bottom to top
	UpDeg      float64 // compass bearing towards which the plan's top lies

	NotAllowed string // what it does not allow, parted by semicolons: fires, hoses, heights
}

// Bed is a growing place: an open bed, border, tunnel bed, frame or container.
type Bed struct {
	ID      string
	Site    string
	Name    string
	Kind    string  // bed, border, tunnel, frame, container, bench
	LengthM float64 // > 0
	WidthM  float64 // > 0
	Light   float64 // share of the open sky's light the bed gets, 0-1
	Soil    string  // poor, fair, good
	Order   int     // place on the walking route

	Shape      Shape // empty: rectangle
	At         Spot
	Outline    string // corners of an outline as written, see ParseOutline
	Texture    string // of the soil; empty: not known
	PH         float64
	Rotation   string // told, silent; empty: told
	TurnRoundD int    // days from clearing until it can be sown again; 0: as usual
	Water      string // id of the source it is watered from; empty: not told
}

// Shape is the shape of a bed on the plan. The list is closed and documented.
type Shape string

// The shapes.
const (
	Rectangle Shape = "rectangle"
	Round     Shape = "round"
	ByOutline Shape = "outline"
)

// Spot is where the middle of a thing lies on its site's plan, in metres from
// the plan's left and bottom edge, and by how much it is turned anticlockwise
// [degrees]. At no turn its length runs left to right.
type Spot struct{ XM, YM, TurnDeg float64 }

// IsSet tells whether a bed is drawn on the plan.
func (s Spot) IsSet() bool { return s.XM != 0 || s.YM != 0 }

// CoverSpell is a cover over a bed for a time.
type CoverSpell struct {
	ID  string
	Bed string
	cover.Spell
}

// CoversOf are the spells over a bed, in the order in which they go on.
func CoversOf(all []CoverSpell, bed string) []CoverSpell {
	var out []CoverSpell
	for _, s := range all {
		if s.Bed == bed {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b CoverSpell) int { return cmp.Compare(a.On, b.On) })
	return out
}

// Gear is a stock of covers that is owned.
type Gear struct {
	ID      string
	Kind    string // mesh, net, fleece, film, hoop, cloche, frame
	Name    string
	MeshMM  float64 // 0: as usual for the kind
	Pieces  int
	LengthM float64
	WidthM  float64
}
