package cover

import (
	"math"
	"strings"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/sun"
	"garner/internal/words"
)

// kinds are all kinds in the order of the documents, Open first.
var kinds = []Kind{Open, Mesh, Fleece, Cloche, LowTunnel, ColdFrame, Tunnel, TunnelTwo,
	Glasshouse, TunnelInner, Indoors}

// Cover is one kind of cover with its numbers. It never changes.
type Cover struct {
	kind        Kind
	open        bool
	own         facts
	outer       *facts  // the cover it lies within, or nil
	light, rain float64 // shares through all layers
}

// Kinds returns every kind of cover, the open ground first.
func Kinds() []Kind { return append([]Kind(nil), kinds...) }

// Lookup returns the cover of a kind, or a fault that lists the kinds.
func Lookup(kind Kind) (*Cover, error) {
	covers, err := book()
	if err != nil {
		return nil, &fault.Error{Kind: fault.Internal, Phrase: words.P("cover.data_unreadable", nil), Err: err}
	}
	if c := covers[kind]; c != nil {
		return c, nil
	}
	return nil, unknown(kind)
}

func unknown(kind Kind) *fault.Error {
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = string(k)
	}
	return fault.New(fault.NotFound, "cover.unknown_kind",
		words.Args{"given": string(kind), "kinds": strings.Join(names, ", ")})
}

// Kind returns the cover's kind.
func (c *Cover) Kind() Kind { return c.kind }

// LightShare returns the share of radiation and light that passes, 0-1.
func (c *Cover) LightShare() float64 { return c.light }

// RainShare returns the share of the rain that reaches the soil, 0-1.
func (c *Cover) RainShare() float64 { return c.rain }

// SkyShare returns the share of the warmth that ground in the open would radiate
// to the sky which the ground under the cover still loses, 0-1.
//
// Source: data/covers.csv, glass and film by Hanson 1963.
func (c *Cover) SkyShare() float64 {
	switch {
	case c.open:
		return 1
	case c.outer != nil:
		return c.own.skyShare * c.outer.skyShare
	}
	return c.own.skyShare
}

// SoilLiftC returns how much warmer [C] the soil is than the air and radiation
// under the cover would make it.
func (c *Cover) SoilLiftC() float64 {
	if c.outer != nil {
		return c.own.soilLiftC + c.outer.soilLiftC
	}
	return c.own.soilLiftC
}

// Barrier returns the width of the cover's gaps [mm], and whether it keeps
// insects wider than them out; a cover that is opened for air does not.
func (c *Cover) Barrier() (meshMM float64, keepsOut bool) {
	if c.open || math.IsInf(c.own.meshMM, 1) {
		return 0, false
	}
	return c.own.meshMM, true
}

// Under returns the weather under the cover on a day with the given weather
// outside and the radiation above the air [MJ/m2/day], which tells how clear
// the sky is. The open ground gets the day as it is. The maximum is never under
// the minimum.
//
// Valid for radiation, rain and wind of 0 or more. Where there is no radiation
// above the air the sky counts as overcast. Source: data/covers.csv, tests
// against Savage 1980, Acta Horticulturae 187 and the Oregon row covers.
func (c *Cover) Under(out climate.Day, extraterrestrialMJ float64) (in climate.Day) {
	if c.open {
		return out
	}
	sunny := sun.SunshineShare(extraterrestrialMJ, out.RadiationMJ)
	if c.outer == nil {
		c.own.under(&in, &out, sunny)
		return in
	}
	var between climate.Day
	c.outer.under(&between, &out, sunny)
	c.own.under(&in, &between, sunny)
	return in
}
