package gazetteer

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"encoding/csv"
	"io"
	"strconv"
	"sync"

	"garner/internal/sun"
)

var (
	//go:embed data/places.csv.gz
	placesFile []byte
	//go:embed data/normals.csv.gz
	normalsFile []byte
	//go:embed data/aliases.csv
	aliasesFile []byte
	//go:embed data/countries.csv
	countriesFile []byte
)

// atlas is every place, ready for looking up.
type atlas struct {
	places  []Place
	names   []names // by place
	at      map[string]int
	aliases []alias
	country map[string]string // folded name of a country by its folded other names
}

// alias is another name of a place.
type alias struct {
	name, country string
	folded        names
	place         int
}

// read reads the places when they are first asked for.
var read = sync.OnceValue(func() *atlas {
	a, err := readAtlas()
	if err != nil {
		// The files are part of the program and every test reads them.
		panic("gazetteer: " + err.Error())
	}
	return a
})

func readAtlas() (*atlas, error) {
	text, err := unpacked(placesFile)
	if err != nil {
		return nil, err
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	a := &atlas{at: make(map[string]int, len(rows))}
	for _, row := range rows[1:] {
		p, err := placeOf(row)
		if err != nil {
			return nil, err
		}
		a.at[p.ID] = len(a.places)
		a.places = append(a.places, p)
		a.names = append(a.names, namesOf(p.Name, p.Country))
	}
	if err := a.readAliases(); err != nil {
		return nil, err
	}
	return a, a.readCountries()
}

func placeOf(row []string) (Place, error) {
	var n [3]float64
	for i := range n {
		v, err := strconv.ParseFloat(row[3+i], 64)
		if err != nil {
			return Place{}, err
		}
		n[i] = v
	}
	return Place{ID: row[0], Name: row[1], Country: row[2],
		Location: sun.Location{LatitudeDeg: n[0], LongitudeDeg: n[1], ElevationM: n[2]},
		Period:   row[6], Short: row[7] == "short", Doubtful: row[8] == "doubtful"}, nil
}

func (a *atlas) readAliases() error {
	rows, err := csv.NewReader(bytes.NewReader(aliasesFile)).ReadAll()
	if err != nil {
		return err
	}
	for _, row := range rows[1:] {
		if place, known := a.at[row[2]]; known {
			a.aliases = append(a.aliases, alias{row[0], row[1], namesOf(row[0], row[1]), place})
		}
	}
	return nil
}

func (a *atlas) readCountries() error {
	rows, err := csv.NewReader(bytes.NewReader(countriesFile)).ReadAll()
	if err != nil {
		return err
	}
	a.country = make(map[string]string, len(rows))
	for _, row := range rows[1:] {
		a.country[fold(row[0])] = fold(row[1])
	}
	return nil
}

func unpacked(packed []byte) ([]byte, error) {
	z, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(z)
}

// Find returns the place of an id.
func Find(id string) (Place, bool) {
	a := read()
	i, known := a.at[id]
	if !known {
		return Place{}, false
	}
	return a.places[i], true
}
