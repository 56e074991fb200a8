package labour

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
)

//go:embed data/labour.csv
var file string

// hours are the numbers by name, read once; they never change.
var hours = read(file)

// preserving are the methods that take work in the kitchen beside laying away.
var preserving = []string{"frozen", "bottled", "dried", "fermented"}

// Garden is all the work of a garden, kitchen and all, by the ground in use [h/m2 and
// year].
func Garden() float64 { return hours["garden"] }

// Tend is the work of ground that is held, without picking and kitchen [h/m2 and
// year].
func Tend() float64 { return hours["tend"] }

// Cover is the work of laying a cover and taking it off again [h/m2].
func Cover() float64 { return hours["cover"] }

// Row is the trouble of a row of its own, beside the work of its ground [h].
func Row() float64 { return hours["row"] }

// Pick is the work of picking [h/kg].
func Pick() float64 { return hours["pick"] }

// Preserve is the work in the kitchen of a method of storing, washing, cutting and
// blanching together [h/kg]; 0 where food is laid in as it is.
func Preserve(method string) float64 {
	for _, m := range preserving {
		if m == method {
			return hours[m]
		}
	}
	return 0
}

// PutAway is the work of putting food away by any method, at least that of laying it
// in as it is [h/kg].
func PutAway(method string) float64 {
	if h := Preserve(method); h > 0 {
		return h
	}
	return hours["lay"]
}

// read reads the numbers by name.
func read(text string) map[string]float64 {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		// The file is part of the program and every test reads it.
		panic("labour: data/labour.csv: " + err.Error())
	}
	out := map[string]float64{}
	for _, row := range rows[1:] {
		value, low, high := number(row[1]), number(row[3]), number(row[4])
		if !(value > 0 && low <= value && value <= high) {
			panic("labour: data/labour.csv: " + row[0])
		}
		out[row[0]] = value
	}
	return out
}

func number(cell string) float64 {
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		panic("labour: data/labour.csv: " + cell)
	}
	return v
}
