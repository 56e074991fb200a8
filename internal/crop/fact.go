package crop

import "reflect"

// Fact is one number of the book with where it comes from.
type Fact struct {
	Value  float64
	Unit   string
	Source string // key of a Source
	Where  string // page, table or row of the source
	Mark   string // seen, memory, fitted, judgement, borrowed; own for the grower's
	Note   string
}

// marks are the closed list of how a number of the book came about.
var marks = []string{"seen", "memory", "fitted", "judgement", "borrowed"}

// markOwn is the mark of a number of the grower's own.
const markOwn = "own"

// Source is a work the numbers come from.
type Source struct {
	Key, Citation, URL, Terms string
}

// Parameter says what a number of the book means and the range it may take.
type Parameter struct {
	Name, Unit string
	Min, Max   float64
	Scope      string // where the number is usually given: crop, group, class, fitted
	Meaning    string
	field      []int // of Use
	item       int   // of an array field, else -1
}

// get reads the parameter from a use.
func (p *Parameter) get(u *Use) float64 { return p.in(u).Float() }

// set writes the parameter into a use.
func (p *Parameter) set(u *Use, value float64) { p.in(u).SetFloat(value) }

func (p *Parameter) in(u *Use) reflect.Value {
	v := reflect.ValueOf(u).Elem().FieldByIndex(p.field)
	if p.item >= 0 {
		v = v.Index(p.item)
	}
	return v
}

// Fact returns a number of the use with its provenance. A parameter that does
// not apply to the use, or that does not exist, gives the zero Fact. When a
// variety has moved the number, the value is the moved one and the note says so.
func (u *Use) Fact(parameter string) Fact {
	if u.resolved == nil {
		return Fact{}
	}
	i, ok := u.resolved.index[parameter]
	if !ok || u.resolved.facts[i] == nil {
		return Fact{}
	}
	fact := *u.resolved.facts[i]
	if now := u.resolved.parameters[i].get(u); now != fact.Value {
		fact.Value = now
		if fact.Note != "" {
			fact.Note += "; "
		}
		fact.Note += "moved by variety " + u.variety
	}
	return fact
}

// resolved is where the numbers of a use were found, in the order of the
// book's parameters; shared by copies of the use and never changed.
type resolved struct {
	parameters []*Parameter
	index      map[string]int
	facts      []*Fact
	from       []scope // whose default each is; empty for the crop's own
}
