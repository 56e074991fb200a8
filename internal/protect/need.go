package protect

import (
	"math"

	"garner/internal/cover"
	"garner/internal/place"
)

// need is what one spell takes of the stock.
type need struct {
	spell   place.CoverSpell
	bed     place.Bed
	gear    string  // kind of gear
	lengthM float64 // of cloth
	widthM  float64
	meshMM  float64 // widest holes that serve; 0: any
	hoops   int
}

// Takes is the kind of gear that a kind of cover is laid with; empty for what takes
// none, such as a house. The error is of the package's own data.
func Takes(kind cover.Kind) (gear string, err error) {
	f, err := known()
	if err != nil {
		return "", err
	}
	return f.laid[kind].gear, nil
}

// netMM is the width of holes [mm] from which a mesh is a net.
const netMM = 4

// of is what a spell takes; false for what takes nothing, such as a house.
func (f *facts) need(s place.CoverSpell, b place.Bed) (need, bool) {
	how, ok := f.laid[s.Kind]
	if !ok {
		return need{}, false
	}
	n := need{spell: s, bed: b, gear: how.gear, lengthM: b.LengthM + 2*how.endsM, widthM: b.WidthM + 2*how.edgesM}
	if how.arched {
		n.widthM = math.Pi/2*b.WidthM + 2*how.edgesM
	}
	if s.Kind == cover.Mesh {
		n.meshMM = s.MeshMM
		if s.MeshMM >= netMM {
			n.gear = "net"
		}
	}
	if how.hoopM > 0 {
		n.hoops = int(math.Ceil(b.LengthM/how.hoopM-1e-9)) + 1
	}
	return n, true
}

// sheets tells whether a kind of gear is cloth that is laid in one piece.
func sheets(gear string) bool {
	return gear == "mesh" || gear == "net" || gear == "fleece" || gear == "film"
}

// overlapM is by how much pieces laid one after another overlap [m].
const overlapM = 0.3

// piecesOf is how many pieces of a stock a spell takes; 0: they do not serve.
func (n *need) piecesOf(g *place.Gear) int {
	switch {
	case g.Kind != n.gear, n.meshMM > 0 && holes(g) > n.meshMM+1e-9:
		return 0
	case g.LengthM <= 0 || g.WidthM <= 0:
		return 1 // no size is told: taken to fit
	case sheets(n.gear):
		if g.WidthM < n.widthM-slackM {
			return 0
		}
		if g.LengthM >= n.lengthM-slackM {
			return 1
		}
		if g.LengthM <= overlapM {
			return 0
		}
		return int(math.Ceil((n.lengthM - overlapM - slackM) / (g.LengthM - overlapM)))
	}
	along := math.Ceil((n.bed.LengthM - slackM) / g.LengthM)
	return int(along * math.Ceil((n.bed.WidthM-slackM)/g.WidthM))
}

// slackM is how much a piece may fall short: people round their measures.
const slackM = 0.05

// holes is the width of the holes of a stock of mesh or net [mm].
func holes(g *place.Gear) float64 {
	switch {
	case g.MeshMM > 0:
		return g.MeshMM
	case g.Kind == "net":
		return usualNetMM
	}
	return usualMeshMM
}

// The usual holes of a mesh and a net [mm]. Common practice.
const (
	usualMeshMM = 1.3
	usualNetMM  = 20
)
