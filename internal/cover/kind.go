package cover

import "garner/internal/cal"

// Kind is a kind of cover. The list is closed and documented.
type Kind string

// The kinds of cover.
const (
	Open        Kind = "open"
	Mesh        Kind = "mesh"
	Fleece      Kind = "fleece"
	Cloche      Kind = "cloche"
	LowTunnel   Kind = "low tunnel"
	ColdFrame   Kind = "cold frame"
	Tunnel      Kind = "tunnel"
	TunnelTwo   Kind = "double tunnel"
	Glasshouse  Kind = "glasshouse"
	TunnelInner Kind = "tunnel + fleece"
	Indoors     Kind = "indoors"
)

// Spell is a time a cover lies over a bed: from the day it goes on until the
// day it comes off (that day is open again; cal.None: it stays).
type Spell struct {
	Kind    Kind
	On, Off cal.Date
	Sides   Sides
	MeshMM  float64 // holes of a mesh or net [mm]; 0: as usual for its kind
}

// Sides says whether a cover is closed down to the ground.
type Sides string

// The sides a cover may have; empty is closed.
const (
	Closed    Sides = "closed"
	OpenSided Sides = "open"
)
