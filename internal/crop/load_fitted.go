package crop

import "io/fs"

// fittedFile holds the numbers that the calibration wrote; a book may be without
// it.
const fittedFile = "fitted.csv"

// withFitted adds the fitted numbers to the facts. A fitted number must not
// stand beside one of a source: what is printed is not fitted.
func (l *loader) withFitted(facts map[about]numbers) map[about]numbers {
	if _, err := fs.Stat(l.fsys, fittedFile); err != nil {
		return facts
	}
	t := l.sheet(fittedFile, "crop", "use", "parameter", "value", "unit", "source", "where", "mark", "note")
	for r := range t.rows {
		c := l.cropOf(r)
		if c == nil || len(l.usesOf(r, c)) == 0 {
			continue
		}
		key := about{c.ID, r.get("use")}
		facts[key] = l.take(facts[key], r, c.ID)
	}
	return facts
}
