package crop

// Preparing is one thing that is done with a crop before it is laid into store. Step
// names a text, "crop.prepare_" and the step; days and temperatures are blank (0) where
// the source tells none.
type Preparing struct {
	Step                string
	DaysFrom, DaysTo    float64 // how long [d]
	FromC, ToC          float64 // in what warmth [C]
	Source, Where, Mark string
}

// Timed tells whether the step takes days.
func (p *Preparing) Timed() bool { return p.DaysTo > 0 }

// Warmed tells whether the step asks for a warmth.
func (p *Preparing) Warmed() bool { return p.ToC > 0 }

// wayOf is a crop, blank for every one, and a way of keeping it.
type wayOf struct{ crop, method string }

// Preparing returns what is done with a crop before it is kept by a method, in order:
// what is the crop's own, then what goes for all that is kept that way.
func (b *Book) Preparing(crop, method string) []Preparing {
	var out []Preparing
	out = append(out, b.preparing[wayOf{crop, method}]...)
	return append(out, b.preparing[wayOf{"", method}]...)
}
