package leftout

import (
	"bytes"
	_ "embed" // the numbers that may move

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/free.csv
var freeFile []byte

// Free is a number of a class or group that the fit may move.
type Free struct {
	Scope, Name, Parameter string
	Prior                  float64 // what the literature or the window trial gives
	Spread                 float64 // how sure that is: a standard deviation
	Min, Max               float64
	Source, Mark           string
}

// FreeNumbers reads the numbers that may move.
func FreeNumbers() ([]Free, error) { return readFree(freeFile) }

// freeColumns are the columns of data/free.csv.
var freeColumns = []string{"scope", "name", "parameter", "prior", "spread", "min", "max", "source", "mark"}

func readFree(text []byte) ([]Free, error) {
	t, err := table.Read(bytes.NewReader(text), "free.csv", 1<<20)
	if err != nil {
		return nil, err
	}
	faults := t.Refused
	for _, column := range freeColumns {
		if t.Column(column) < 0 {
			faults = append(faults, fault.New(fault.Invalid, "leftout.column", words.Args{"column": column}).In(fault.Place{File: "free.csv", Row: 1, Column: column}))
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	var out []Free
	for i := range t.Rows {
		cell := func(column string) string { return t.Rows[i][t.Column(column)] }
		number := func(column string) float64 {
			v, ok := t.Number(cell(column))
			if !ok {
				faults = append(faults, fault.New(fault.Invalid, "leftout.number", words.Args{"given": cell(column)}).In(t.At(i, column)))
			}
			return v
		}
		f := Free{Scope: cell("scope"), Name: cell("name"), Parameter: cell("parameter"),
			Prior: number("prior"), Spread: number("spread"), Min: number("min"), Max: number("max"),
			Source: cell("source"), Mark: cell("mark")}
		if f.Spread <= 0 || f.Prior < f.Min || f.Prior > f.Max {
			faults = append(faults, fault.New(fault.OutOfRange, "leftout.range", words.Args{"parameter": f.Parameter, "name": f.Name}).In(t.At(i, "prior")))
		}
		out = append(out, f)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

// priors are the values from which a search sets out.
func priors(free []Free) []float64 {
	out := make([]float64, len(free))
	for i, f := range free {
		out[i] = f.Prior
	}
	return out
}

// defaults makes defaults of the book of values.
func defaults(free []Free, values []float64) []crop.Default {
	out := make([]crop.Default, len(free))
	for i, f := range free {
		out[i] = crop.Default{Scope: f.Scope, Name: f.Name, Parameter: f.Parameter, Value: values[i]}
	}
	return out
}
