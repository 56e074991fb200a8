package crop

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// contradiction returns the first pair of numbers of a use that cannot both
// be, and the parameter that is named for it.
func contradiction(u *Use) (*fault.Error, string) {
	pairs := []struct {
		low, high string // low must not be above high
		a, b      float64
		strict    bool // nor equal to it
		apply     bool
	}{
		{"emerge_base_c", "emerge_optimum_c", u.EmergeBaseC, u.EmergeOptimumC, true, u.EmergeCeilingC != 0},
		{"emerge_optimum_c", "emerge_ceiling_c", u.EmergeOptimumC, u.EmergeCeilingC, true, u.EmergeCeilingC != 0},
		{"base_c", "optimum_c", u.BaseC, u.OptimumC, true, true},
		{"optimum_c", "ceiling_c", u.OptimumC, u.CeilingC, true, true},
		{"chill_low_c", "chill_high_c", u.ChillLowC, u.ChillHighC, false, true},
		{"usable_g", "piece_g", u.UsableG, u.PieceG, false, true},
		{"yield_low_kg_m2", "yield_kg_m2", u.YieldLowKgM2, u.YieldKgM2, false, true},
		{"yield_kg_m2", "yield_high_kg_m2", u.YieldKgM2, u.YieldHighKgM2, false, true},
		{"kill_hardened_c", "kill_c", u.KillHardenedC, u.KillC, false, true},
	}
	for _, p := range pairs {
		if p.apply && (p.a > p.b || p.strict && p.a == p.b) {
			return fault.New(fault.Invalid, "crop.above", words.Args{
				"crop": u.Crop, "use": u.Name, "low": p.low, "high": p.high, "low_value": p.a, "high_value": p.b,
			}), p.low
		}
	}
	return nil, ""
}
