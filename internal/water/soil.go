package water

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"garner/internal/fault"
	"garner/internal/words"
)

//go:embed data/soils.csv
var soilsCSV string

// PottingMix is the soil of containers.
const PottingMix = "potting mix"

// usualSoil is taken where the texture is not known.
const usualSoil = "loam"

// Soil is how much water a soil holds, and how it dries from above.
type Soil struct {
	Capacity  float64 // water held after draining, share of the volume (field capacity)
	Wilting   float64 // water that roots cannot take, share of the volume
	ReadyMM   float64 // lost from the surface as fast as the air asks (REW)
	SurfaceMM float64 // lost from the surface in all (TEW)
}

var soils = sync.OnceValues(func() (map[string]*Soil, error) { return readSoils(soilsCSV) })

// SoilOf returns the soil of a texture; an unknown or empty one counts as loam.
//
// Source: data/soils.csv, FAO-56 Table 19.
func SoilOf(texture string) (*Soil, error) {
	all, err := soils()
	if err != nil {
		return nil, &fault.Error{Kind: fault.Internal, Phrase: words.P("water.data_unreadable", nil), Err: err}
	}
	if s := all[texture]; s != nil {
		return s, nil
	}
	return all[usualSoil], nil
}

func readSoils(text string) (map[string]*Soil, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string]*Soil{}
	for i, row := range rows[1:] {
		var v [4]float64
		for k := range v {
			if v[k], err = strconv.ParseFloat(row[1+k], 64); err != nil {
				return nil, fmt.Errorf("soils.csv row %d: %w", i+2, err)
			}
		}
		s := Soil{v[0], v[1], v[2], v[3]}
		if !(0 < s.Wilting && s.Wilting < s.Capacity && s.Capacity < 1 && 0 < s.ReadyMM && s.ReadyMM < s.SurfaceMM) || row[5] == "" || row[6] == "" {
			return nil, fmt.Errorf("soils.csv row %d: %s cannot be", i+2, row[0])
		}
		out[row[0]] = &s
	}
	if out[usualSoil] == nil || out[PottingMix] == nil {
		return nil, fmt.Errorf("soils.csv: %s or %s is missing", usualSoil, PottingMix)
	}
	return out, nil
}

// HeldMM returns the water that roots of a depth [m] can take from a soil that has
// drained [mm] (TAW). Check: 0.15 and 0.06, 0.4 m: 36 (FAO-56 example 36). Source:
// FAO-56 eq. 82.
func (s *Soil) HeldMM(rootM float64) float64 { return 1000 * (s.Capacity - s.Wilting) * rootM } // eq. 82

// SurfaceOf returns what evaporates in all from the surface of a soil [mm] (TEW), from
// the water it holds and the depth that dries [m].
//
// Check: 0.23, 0.10, 0.1 m: 18 (FAO-56 example 35). Source: FAO-56 eq. 73.
func SurfaceOf(capacity, wilting, depthM float64) float64 {
	return 1000 * (capacity - 0.5*wilting) * depthM // eq. 73
}
