package notebook

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"strconv"
	"sync"
)

//go:embed data/vocabulary.csv
var vocabularyFile []byte

// vocabulary is what words mean, by group.
type vocabulary map[string]map[string]string

// known reads the words when they are first asked for.
var known = sync.OnceValue(func() vocabulary {
	rows, err := csv.NewReader(bytes.NewReader(vocabularyFile)).ReadAll()
	if err != nil {
		// The file is part of the program and every test reads it.
		panic("notebook: " + err.Error())
	}
	v := vocabulary{}
	for _, row := range rows[1:] {
		if v[row[0]] == nil {
			v[row[0]] = map[string]string{}
		}
		v[row[0]][row[1]] = row[2]
	}
	return v
})

// is tells whether a word belongs to a group.
func is(group, word string) bool {
	_, ok := known()[group][word]
	return ok
}

// value returns what a word of a group stands for, as a number.
func value(group, word string) (float64, bool) {
	text, ok := known()[group][word]
	if !ok {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}
