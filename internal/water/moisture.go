package water

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"garner/internal/fault"
	"garner/internal/words"
)

//go:embed data/retention.csv
var retentionCSV string

//go:embed data/felt.csv
var feltCSV string

// Left is what a reading tells: the share of the water within reach that is left, and
// how far that may be off, both 0-1.
type Left struct{ Share, Error float64 }

// The errors of instruments. probeError is that of a probe that was not set for the
// soil, in shares of the volume [m3/m3]: common practice, makers tell 0.02 to 0.05.
// tensionError is that of a tensiometer, in shares of the water within reach:
// judgement, since the curve of a texture is not that of a bed.
const (
	probeError   = 0.03
	tensionError = 0.12
)

// The range that a tensiometer or block tells anything in [kPa]: a water-filled one
// breaks at some 85 kPa, blocks go to 200 (makers' leaflets; common practice).
const mostTensionKPa = 200

// retention is the curve of a texture between water held and tension.
type retention struct{ residual, saturated, alphaCM, n float64 }

// at returns the water held at a tension [kPa], as a share of the volume.
//
// Check: loam at 33 kPa: 0.164 (by hand). Source: van Genuchten M.T. 1980, Soil Science
// Society of America Journal 44:892, eq. 3.
func (r retention) at(kPa float64) float64 {
	cm := kPa * 10.197
	return r.residual + (r.saturated-r.residual)/math.Pow(1+math.Pow(r.alphaCM*cm, r.n), 1-1/r.n)
}

// wiltingKPa and drainedKPa are the tensions at which roots take no more, and at
// which a soil has drained: 1,500, and 33, of sands 10 (common practice).
const (
	wiltingKPa     = 1500
	drainedKPa     = 33
	drainedSandKPa = 10
)

type feel struct{ left, err float64 }

type moistureData struct {
	retention map[string]retention
	felt      map[string]feel
}

var moistures = sync.OnceValues(func() (*moistureData, error) { return readMoistures(retentionCSV, feltCSV) })

// LeftOfVolume tells what a probe's reading means in a soil [% of the volume]. More
// than the soil can hold and less than air leaves in it are refused.
//
// Check: half way from wilting to capacity: 0.5.
func LeftOfVolume(texture string, pct float64) (Left, error) {
	s, err := SoilOf(texture)
	if err != nil {
		return Left{}, err
	}
	data, err := moistures()
	if err != nil {
		return Left{}, unreadableData(err)
	}
	most := 100 * saturationOf(data, texture, s)
	least := 100 * s.Wilting / 2 // as dry as air leaves a surface (FAO-56, eq. 73)
	switch {
	case pct > most:
		return Left{}, fault.New(fault.OutOfRange, "water.over_saturation", words.Args{"given": pct, "most": math.Round(most)})
	case pct < least:
		return Left{}, fault.New(fault.OutOfRange, "water.under_wilting", words.Args{"given": pct, "least": math.Round(least)})
	}
	span := s.Capacity - s.Wilting
	return Left{held((pct/100-s.Wilting)/span, 0, 1), probeError / span}, nil
}

// mixPores is the share of its volume that a potting mix can fill with water: common
// practice, total porosity 0.75 to 0.85.
const mixPores = 0.8

func saturationOf(data *moistureData, texture string, s *Soil) float64 {
	if r, known := data.retention[texture]; known {
		return max(r.saturated, s.Capacity)
	}
	if s.Capacity >= 0.5 {
		return mixPores
	}
	return max(data.retention[usualSoil].saturated, s.Capacity)
}

// LeftOfTension tells what a tensiometer's reading means in a soil [kPa, or
// centibars]. Potting mixes have no curve here and are refused.
func LeftOfTension(texture string, kPa float64) (Left, error) {
	data, err := moistures()
	if err != nil {
		return Left{}, unreadableData(err)
	}
	if texture == "" {
		texture = usualSoil
	}
	r, known := data.retention[texture]
	switch {
	case !known:
		return Left{}, fault.New(fault.Invalid, "water.no_curve", nil)
	case kPa < 0 || kPa > mostTensionKPa:
		return Left{}, fault.New(fault.OutOfRange, "water.tension_range", words.Args{"given": kPa, "most": mostTensionKPa})
	}
	drained := r.at(drainedKPa)
	if strings.Contains(texture, "sand") {
		drained = r.at(drainedSandKPa)
	}
	wilted := r.at(wiltingKPa)
	return Left{held((r.at(kPa)-wilted)/(drained-wilted), 0, 1), tensionError}, nil
}

// LeftOfFeel tells what a finger's dry, moist or wet means.
func LeftOfFeel(felt string) (Left, error) {
	data, err := moistures()
	if err != nil {
		return Left{}, unreadableData(err)
	}
	f, known := data.felt[felt]
	if !known {
		return Left{}, fault.New(fault.Invalid, "water.felt_unknown", words.Args{"given": felt})
	}
	return Left{f.left, f.err}, nil
}

func unreadableData(err error) error {
	return &fault.Error{Kind: fault.Internal, Phrase: words.P("water.data_unreadable", nil), Err: err}
}

// balanceError is how far the balance itself may be off, in shares of the water within
// reach. judgement: rain, the depth of roots and soils from tables are each good to some
// tenth.
const balanceError = 0.15

// Correct moves a balance toward what was read, the more the surer the reading is
// against the balance, and returns by how much less is missing [mm].
//
// A reading that tells what the balance tells changes nothing. Weights go by the
// inverse squares of both errors.
func (b *Balance) Correct(s *Soil, on *Stand, left Left) (movedMM float64) {
	b.reach(on.reachM())
	within := s.HeldMM(on.reachM())
	weight := balanceError * balanceError / (balanceError*balanceError + left.Error*left.Error)
	movedMM = weight * (b.MissingMM - (1-left.Share)*within)
	b.MissingMM = max(0, b.MissingMM-movedMM)
	return movedMM
}

func readMoistures(curves, feels string) (*moistureData, error) {
	data := &moistureData{map[string]retention{}, map[string]feel{}}
	err := eachRow(curves, 4, func(name string, v []float64) bool {
		r := retention{v[0], v[1], v[2], v[3]}
		data.retention[name] = r
		return 0 < r.residual && r.residual < r.saturated && r.saturated < 1 && r.alphaCM > 0 && r.n > 1
	})
	if err != nil {
		return nil, fmt.Errorf("retention.csv %w", err)
	}
	if err = eachRow(feels, 2, func(name string, v []float64) bool {
		data.felt[name] = feel{v[0], v[1]}
		return v[0] >= 0 && v[0] <= 1 && v[1] > 0 && v[1] < 1
	}); err != nil {
		return nil, fmt.Errorf("felt.csv %w", err)
	}
	return data, nil
}

// eachRow reads rows of a name, so many numbers, a source and a mark.
func eachRow(text string, numbers int, each func(name string, v []float64) bool) error {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return err
	}
	for i, row := range rows[1:] {
		v := make([]float64, numbers)
		for k := range v {
			if v[k], err = strconv.ParseFloat(row[1+k], 64); err != nil {
				return fmt.Errorf("row %d: %w", i+2, err)
			}
		}
		if !each(row[0], v) || row[1+numbers] == "" || row[2+numbers] == "" {
			return fmt.Errorf("row %d: %s cannot be", i+2, row[0])
		}
	}
	return nil
}
