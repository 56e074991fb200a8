package supply

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

//go:embed data/coverings.csv
var coveringsCSV string

const (
	// usualCovering is that of a roof whose covering is not told.
	usualCovering = "tiles"

	// usualLoss is the share of the run-off that a filter or a first flush sends away
	// where it is not told: BS 8515:2009 reckons with a filter that lets 0.9 through, as
	// transcribed in public guides to it.
	usualLoss = 0.1
)

// Roof is what sheds rain into a butt.
type Roof struct {
	AreaM2   float64 // of the ground it covers
	Covering string  // empty: tiles
	Loss     float64 // share that the filter sends away, 0-1; 0: as usual
}

var coverings = sync.OnceValues(func() (map[string]float64, error) { return readCoverings(coveringsCSV) })

// SharePerMM returns the litres that a millimetre of rain brings from a roof.
//
// Check: 130 m2 of tiles with the usual filter and 1,125 mm: 105,300 L in a year, of
// which a twentieth is 5,265 (a worked example of BS 8515:2009, as transcribed).
func (r Roof) SharePerMM() (float64, error) {
	all, err := coverings()
	if err != nil {
		return 0, &fault.Error{Kind: fault.Internal, Phrase: words.P("supply.data_unreadable", nil), Err: err}
	}
	covering := r.Covering
	if covering == "" {
		covering = usualCovering
	}
	runs, known := all[covering]
	if !known {
		return 0, fault.New(fault.Invalid, "supply.covering_unknown", words.Args{"given": covering})
	}
	loss := r.Loss
	if loss <= 0 {
		loss = usualLoss
	}
	return r.AreaM2 * runs * (1 - loss), nil
}

// Coverings names the coverings in order.
func Coverings() []string { return []string{"tiles", "metal", "glass", "felt", "gravel", "green"} }

func readCoverings(text string) (map[string]float64, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string]float64{}
	for i, row := range rows[1:] {
		share, err := strconv.ParseFloat(row[1], 64)
		if err != nil || share <= 0 || share > 1 || row[2] == "" || row[3] == "" {
			return nil, fmt.Errorf("coverings.csv row %d: %s cannot be", i+2, row[0])
		}
		out[row[0]] = share
	}
	return out, nil
}
