package larder

// Packed weights of what is kept.
const (
	frozenKgPerL = 0.55 // common practice: 35 lb to the cubic foot of freezer
	sandKgPerL   = 0.35 // judgement: half of the box is sand
	looseKgPerL  = 0.5  // judgement: roots, fruit and heads in crates, 0.4-0.65
	jarKg        = 0.4  // judgement: what a jar of half a litre holds besides the liquid
)

// Holds returns the weight a store holds [kg]: as told, or reckoned from its
// litres or its jars of half a litre.
func (s *Store) Holds() float64 {
	switch {
	case s.CapacityKg > 0:
		return s.CapacityKg
	case s.Jars > 0:
		return s.Jars * jarKg
	}
	return s.Litres * s.kgPerL()
}

func (s *Store) kgPerL() float64 {
	switch s.Method {
	case Frozen:
		return frozenKgPerL
	case "damp sand":
		return sandKgPerL
	}
	return looseKgPerL
}
