package larder

import (
	"math"

	"garner/internal/fault"
	"garner/internal/words"
)

// Balance shows that nothing was made or mislaid in a run [kg]. Each side is
// added up on its own: what was supplied at the plantings, what was eaten and
// over from the table of results, what was put and lost at the stores.
type Balance struct {
	SuppliedKg float64 // all that flowed, and all that was taken, gathered or left of what stood
	FreshKg    float64
	PutKg      float64
	OverKg     float64
	GroundKg   float64 // left standing or hanging at the end

	OpeningKg  float64
	StoredKg   float64 // eaten from store
	PreparedKg float64
	DecayedKg  float64
	SpoiledKg  float64
	SownKg     float64 // planted from store
	StoreKg    float64 // left in store at the end

	Share float64 // largest gap between a standing planting's shares taken and left, and the whole
}

// residualLimit is the largest residual a run may show, relative to all that
// went through it; results are held to seven figures.
const residualLimit = 1e-6

// GroundResidualKg is supplied less eaten fresh, put in store, over and left.
func (b *Balance) GroundResidualKg() float64 {
	return b.SuppliedKg - b.FreshKg - b.PutKg - b.OverKg - b.GroundKg
}

// StoreResidualKg is opening and put less eaten, lost, planted and left.
func (b *Balance) StoreResidualKg() float64 {
	return b.OpeningKg + b.PutKg - b.StoredKg - b.PreparedKg - b.DecayedKg - b.SpoiledKg - b.SownKg - b.StoreKg
}

// check refuses a run that made or mislaid food, or reckoned with no numbers.
func (b *Balance) check() error {
	through := b.SuppliedKg + b.OpeningKg
	worst := math.Max(math.Abs(b.GroundResidualKg()), math.Abs(b.StoreResidualKg()))
	if worst <= residualLimit*through+1e-9 && b.Share <= residualLimit {
		return nil
	}
	return fault.New(fault.Internal, "larder.balance", words.Args{
		"in": through, "ground": b.GroundResidualKg(), "store": b.StoreResidualKg(), "share": b.Share})
}

// balance draws the run's totals together.
func (s *Scratch) balance(out *Year) {
	b := &out.Balance
	b.SuppliedKg += s.flowedKg
	for i := range s.sources {
		src := &s.sources[i]
		b.SuppliedKg += src.standingKg
		b.GroundKg += out.Plantings[i].GroundKg
		if src.begun {
			b.Share = math.Max(b.Share, math.Abs(src.taken+src.left-1))
		}
	}
	for v := range out.Courses {
		c := &out.Courses[v]
		b.FreshKg += total(c.Fresh)
		b.StoredKg += total(c.Stored)
		b.OverKg += total(c.Over)
	}
	for i := range out.Stores {
		st := &out.Stores[i]
		b.PutKg += st.PutKg
		b.OpeningKg += st.OpeningKg
		b.PreparedKg += st.PreparedKg
		b.DecayedKg += st.DecayedKg
		b.SpoiledKg += st.SpoiledKg
		b.SownKg += st.SownKg
		b.StoreKg += st.LeftKg
	}
}

func total(course []float32) float64 {
	sum := 0.0
	for _, kg := range course {
		sum += float64(kg)
	}
	return sum
}
