package desk

import (
	"slices"

	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/words"
)

// SaveWeather writes a weather source with its figures: a new one, or in place
// of the one with its id. Figures that are nil are none.
func (o *Office) SaveWeather(by Author, w holding.WeatherSource) (*KeptEntry, error) {
	return o.writeWith(by, func() (journal.Entry, [][]byte, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, nil, err
		}
		own := *h
		own.Weather = slices.Clone(h.Weather)
		if at := slices.IndexFunc(own.Weather, func(k holding.WeatherSource) bool { return k.ID == w.ID }); at >= 0 {
			own.Weather[at] = besideFiles(w, &own.Weather[at])
		} else {
			own.Weather = append(own.Weather, w)
		}
		stands, err := o.keeper.Would(nil)
		if err != nil {
			return journal.Entry{}, nil, err
		}
		changes, files, err := replacing(stands.Rows, &own)
		return journal.Entry{What: words.P("desk.edit_weather", words.Args{"name": w.Name}), Changes: changes}, files, err
	})
}

// besideFiles is a weather source as it is to be written: figures that came from
// weather files stay theirs, and only what is new is the source's own.
func besideFiles(w holding.WeatherSource, stands *holding.WeatherSource) holding.WeatherSource {
	own := stands.Own()
	if w.Record != stands.Record {
		own.Record = w.Record
	}
	if w.Normals != stands.Normals {
		own.Normals = w.Normals
	}
	w.Apart = &own
	return w
}
