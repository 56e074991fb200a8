package station

import (
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// rawTemperatures looks at the temperatures as given, refused ones too, for
// signs of another unit.
type rawTemperatures struct {
	table      *table.Table
	tMin, tMax int
	days, hot  int
	sum        float64
}

const (
	// hottestC is hardly ever reached on farmed land, and 122 F never.
	hottestC = 50
	// hotShare is the share of such days from which the unit is doubted.
	hotShare = 0.02
	// warmestMeanC is above the mean of the hottest places lived in (Dallol,
	// Ethiopia, 34.6 C; memory).
	warmestMeanC = 36
	// enoughDays make a mean worth doubting.
	enoughDays = 20
)

func newRawTemperatures(t *table.Table) *rawTemperatures {
	return &rawTemperatures{table: t, tMin: t.Column(columnTMin), tMax: t.Column(columnTMax)}
}

func (r *rawTemperatures) see(row int) {
	low, okLow := r.table.Number(r.table.Rows[row][r.tMin])
	high, okHigh := r.table.Number(r.table.Rows[row][r.tMax])
	if !okLow || !okHigh || low < -100 || high > 140 {
		return
	}
	r.days++
	r.sum += (low + high) / 2
	if high > hottestC {
		r.hot++
	}
}

// warnings tells when the temperatures look like Fahrenheit.
func (r *rawTemperatures) warnings(file string) fault.List {
	if r.days < enoughDays {
		return nil
	}
	share, mean := float64(r.hot)/float64(r.days), r.sum/float64(r.days)
	if share < hotShare && mean < warmestMeanC {
		return nil
	}
	return fault.List{fault.New(fault.Invalid, "station.looks_fahrenheit",
		words.Args{"days": r.hot, "mean": mean}).In(fault.Place{File: file, Column: columnTMax})}
}
