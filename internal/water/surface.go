package water

// Drying returns how fast the surface of a soil still loses water, 0-1, of what the
// air asks, when missingMM have gone from it (Kr).
//
// Check: loam with 9 and 20 mm, 13.98 gone: 0.55 (FAO-56 example 31). Source: FAO-56
// eq. 74.
func (s *Soil) Drying(missingMM float64) float64 {
	switch {
	case missingMM <= s.ReadyMM:
		return 1
	case missingMM >= s.SurfaceMM:
		return 0
	}
	return (s.SurfaceMM - missingMM) / (s.SurfaceMM - s.ReadyMM) // eq. 74
}

// Bare returns the share of the ground from which water evaporates: wet, and not
// covered by leaves (few). Check: 0.53 covered, all wet: 0.47 (FAO-56 example 32).
// Source: FAO-56 eq. 75.
func Bare(cover, wetted float64) float64 { return max(0.01, min(1-cover, wetted)) } // eq. 75, limits of its text

// UnderLeaves returns the share of the ground that drippers wet and the sun reaches,
// of the share that they wet, below plants that cover a share of it.
//
// Check: 0.3 below 0.53: 0.19 (FAO-56 example 34). Source: FAO-56, text of Table 20.
func UnderLeaves(wetted, cover float64) float64 { return wetted * (1 - 2.0/3*cover) }

// Evaporation returns the coefficient of what the soil loses (Ke), from its drying,
// the most and the basal coefficient, and the bare share of the ground.
//
// Check: 1, 1.30, 0.9, 0.47: 0.40 (FAO-56 example 32). Source: FAO-56 eq. 71.
func Evaporation(drying, most, basal, bare float64) float64 {
	return max(0, min(drying*(most-basal), bare*most)) // eq. 71
}
