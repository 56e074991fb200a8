package web

import (
	"errors"
	"html/template"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// funcs are the functions of the templates. All text of a page passes through
// them.
func (s *Server) funcs() template.FuncMap {
	f := s.words.Format()
	return template.FuncMap{
		"t":        s.text,                                                        // a text of the catalogue with named values
		"tn":       func(list, name string) string { return s.named(list, name) }, // a name out of a closed list
		"phrase":   s.words.Text,                                                  // a phrase made by the engine
		"key":      func(key string) string { return s.words.Text(words.P(key, nil)) },
		"lang":     s.words.Language,
		"asset":    s.assets.path,
		"date":     f.Date,                                        // 4 January 2027
		"day":      f.Day,                                         // 4 Jan
		"iso":      func(d cal.Date) string { return d.String() }, // for a date field
		"kg":       f.Kilograms,
		"weight":   f.Weight,
		"little":   littleKg,
		"m":        f.Metres,
		"m2":       f.SquareMetres,
		"odds":     f.Odds, // years in ten
		"count":    func(n int) string { return f.Count(float64(n)) },
		"percent":  f.Percent,
		"number":   f.Number,
		"about":    f.About,
		"spare":    func(kg float64) string { return spareFigure(f, kg) },            // kg of a list that others read
		"svg":      func(drawn string) template.HTML { return template.HTML(drawn) }, // a drawing, already escaped
		"rich":     rich,                                                             // a text with its figure that matters marked
		"defs":     draw.Defs,                                                        // the textures of drawings
		"month":    s.monthYear,                                                      // Jan 2027
		"args":     pairs,
		"signed":   func(x float64, decimals int) string { return minus(f.Number(x, decimals)) },
		"join":     strings.Join,
		"capital":  capital,
		"planting": plantingPath, // address of a planting's page

		"formatName":  desk.FormatName, // of a weather file
		"formatNames": desk.FormatNames,
	}
}

// text puts a key with its values, name after name, into words.
func (s *Server) text(key string, values ...any) (string, error) {
	args, err := pairs(values...)
	if err != nil {
		return "", err
	}
	return s.words.Text(words.P(key, args)), nil
}

// pairs gathers values named one after the other.
func pairs(values ...any) (words.Args, error) {
	if len(values)%2 != 0 {
		return nil, errors.New("values are given as name, value, name, value")
	}
	args := words.Args{}
	for i := 0; i < len(values); i += 2 {
		name, ok := values[i].(string)
		if !ok {
			return nil, errors.New("values are given as name, value, name, value")
		}
		args[name] = values[i+1]
	}
	return args, nil
}

// named puts one of a closed list of names into words: web.kind_tunnel and so
// on. A name without a text stands as it is.
func (s *Server) named(list, name string) string {
	key := list + strings.NewReplacer(" + ", "_", " ", "_").Replace(name)
	if !s.words.Has(key) {
		return name
	}
	return s.words.Text(words.P(key, nil))
}
