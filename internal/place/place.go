// Package place says where things are: sites, beds and the covers over them.
package place

import (
	"garner/internal/cover"
	"garner/internal/sun"
)

// Site is one piece of ground with one weather.
type Site struct {
	ID       string
	Name     string
	Location sun.Location
	Weather  string // id of the weather source in the holding
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
}

// AreaM2 is the bed's area [m2].
func (b Bed) AreaM2() float64 { return b.LengthM * b.WidthM }

// CoverSpell is a cover over a bed for a time.
type CoverSpell struct {
	ID  string
	Bed string
	cover.Spell
}
