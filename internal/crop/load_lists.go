package crop

import (
	"io/fs"

	"garner/internal/fault"
	"garner/internal/words"
)

func (l *loader) loadParameters() {
	fields := useFields()
	t := l.sheet("parameters.csv", "name", "unit", "min", "max", "scope", "meaning")
	for r := range t.rows {
		p := &Parameter{Name: r.get("name"), Unit: r.get("unit"), Scope: r.get("scope"), Meaning: r.get("meaning")}
		place, known := fields[p.Name]
		if _, twice := l.book.index[p.Name]; twice || !known {
			l.refuse(r.at("name"), fault.Invalid, "crop.parameter_not_ours", words.Args{"parameter": p.Name})
			continue
		}
		var low, high bool
		p.Min, low = l.value(r, "min")
		p.Max, high = l.value(r, "max")
		if !low || !high {
			continue
		}
		p.field, p.item = place.index, place.item
		l.book.index[p.Name] = len(l.book.parameters)
		l.book.parameters = append(l.book.parameters, p)
	}
}

func (l *loader) loadSources() {
	for _, t := range l.folder("sources", "key", "citation", "url", "terms") {
		for r := range t.rows {
			s := Source{r.get("key"), r.get("citation"), r.get("url"), r.get("terms")}
			if s.Key == "" || s.Citation == "" {
				l.refuse(r.at("citation"), fault.Invalid, "crop.source_empty", nil)
			} else if _, twice := l.book.sources[s.Key]; twice {
				l.refuse(r.at("key"), fault.Invalid, "crop.source_twice", words.Args{"source": s.Key})
			} else {
				l.book.sources[s.Key] = s
			}
		}
	}
}

// loadCautions reads cautions.csv and the cautions-….csv beside it.
func (l *loader) loadCautions() {
	names, _ := fs.Glob(l.fsys, "cautions*.csv") // the pattern is sound
	for _, name := range names {
		for r := range l.sheet(name, "key", "text", "source").rows {
			c := Caution{r.get("key"), r.get("text"), r.get("source")}
			if !l.sourced(r) {
				continue
			}
			if _, twice := l.book.cautions[c.Key]; twice || c.Key == "" || c.Text == "" {
				l.refuse(r.at("key"), fault.Invalid, "crop.caution_twice", words.Args{"caution": c.Key})
				continue
			}
			l.book.cautions[c.Key] = c
		}
	}
}

// sourced reports whether the row names a source of the book.
func (l *loader) sourced(r row) bool {
	key := r.get("source")
	if key == "" {
		l.refuse(r.at("source"), fault.Invalid, "crop.source_missing", nil)
		return false
	}
	if _, ok := l.book.sources[key]; !ok {
		l.refuse(r.at("source"), fault.NotFound, "crop.source_unknown", words.Args{"source": key})
		return false
	}
	return true
}
