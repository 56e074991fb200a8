package notebook

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// Context is what a notebook is read against.
type Context struct {
	Book  *crop.Book
	Beds  []place.Bed
	Today cal.Date        // must be set
	South bool            // south of the line
	Plan  string          // id of the plan the plantings belong to
	Taken map[string]bool // ids of plantings that are there already; may be nil
}

// Line is how one line was read.
type Line struct {
	Number     int            // of the line in the text, from 1
	Text       string         // as it was written
	Planting   *plan.Planting // nil: not understood
	Understood []words.Phrase // how it was read, piece by piece
	Questions  []words.Phrase // what lacks or was not understood
	Vague      bool           // a day or an area is known only roughly
}

// The most that is read: more is no notebook.
const (
	mostLines  = 400
	mostTokens = 60
	mostRunes  = 400
)

// Read reads a text line by line. Every line that is not blank gives a Line, in
// order, up to 400 of them.
func Read(text string, c Context) []Line {
	taken := map[string]bool{}
	for id := range c.Taken {
		taken[id] = true
	}
	var out []Line
	for i, written := range strings.Split(strings.ReplaceAll(text, "\r", "\n"), "\n") {
		written = strings.TrimSpace(strings.ToValidUTF8(written, "?"))
		if written == "" {
			continue
		}
		if len(out) == mostLines {
			break
		}
		r := reading{Context: c, line: Line{Number: i + 1, Text: written}}
		r.read()
		if r.line.Planting != nil {
			r.line.Planting.ID = named(r.line.Planting, taken)
			taken[r.line.Planting.ID] = true
		}
		out = append(out, r.line)
	}
	return out
}

// reading is a line while it is being read.
type reading struct {
	Context
	line    Line
	tokens  []token
	lacking bool // without an answer there is no planting

	bed      *place.Bed
	several  bool // the word was of several beds
	crop     *crop.Crop
	use      *crop.Use // the use named; nil: by day and bed
	cropAt   int       // token before which a bare number counts plants
	when     when
	method   plan.Method
	sowing   bool // the word was of sowing
	past     bool // told as done
	standing bool // told as standing now
	years    float64
}

// read reads the pieces in their order.
func (r *reading) read() {
	if len([]rune(r.line.Text)) > mostRunes {
		r.ask("notebook.too_long", words.Args{"most": mostRunes})
		return
	}
	r.tokens = cut(r.withoutQuoted(signs.Replace(r.line.Text)))
	if len(r.tokens) > mostTokens {
		r.ask("notebook.too_long", words.Args{"most": mostRunes})
		return
	}
	r.readYears()
	r.readBed()
	r.readWhen()
	r.readCrop()
	r.readTense()
	a := r.readAmount()
	r.readMethod()
	r.tellRest()
	if !r.lacking {
		r.finish(a)
	}
}

// finish puts the pieces together.
func (r *reading) finish(a amount) {
	p := plan.New("", r.Plan)
	p.Bed, p.Crop = r.bed.ID, r.crop.ID
	use := r.chooseUse()
	p.Use = use.Name
	r.understand("notebook.crop", words.Args{"crop": use.Label})
	r.understand("notebook.bed", words.Args{"bed": r.bed.Name})
	p.Method = r.methodFor(use)
	if r.sowing && p.Method == plan.Seed && use.Methods[0] == string(plan.Plant) {
		r.ask("notebook.sown_in_place", words.Args{"crop": use.Label})
	}
	p.Date, p.DateWithinD = r.resolve(use)
	p.AreaM2, p.AreaWithin = r.area(a, use)
	p.YearsOld = r.years
	r.line.Planting = &p
	r.line.Vague = p.DateWithinD > 0 || p.AreaWithin > 0
}

func (r *reading) understand(key string, args words.Args) {
	r.line.Understood = append(r.line.Understood, words.P(key, args))
}

func (r *reading) ask(key string, args words.Args) {
	r.line.Questions = append(r.line.Questions, words.P(key, args))
}

// missing asks for what a planting cannot be without.
func (r *reading) missing(key string, args words.Args) {
	r.lacking = true
	r.ask(key, args)
}

// withoutQuoted takes the name of a variety in quotes out of a line.
func (r *reading) withoutQuoted(line string) string {
	for _, quote := range []string{`"`, "'"} {
		open := strings.Index(" "+line, " "+quote)
		if open < 0 {
			continue
		}
		rest := line[open+1:]
		end := strings.Index(rest, quote)
		if end <= 0 {
			continue
		}
		r.understand("notebook.variety", words.Args{"variety": rest[:end]})
		return line[:open] + " " + rest[end+1:]
	}
	return line
}

// free tells whether there is a token at i that no piece has taken.
func (r *reading) free(i int) bool { return i >= 0 && i < len(r.tokens) && !r.tokens[i].used }

// has tells whether a free word at i belongs to a group.
func (r *reading) has(i int, group string) bool { return r.free(i) && is(group, r.tokens[i].text) }

// use marks n tokens from i on as taken.
func (r *reading) take(i, n int) {
	for k := i; k < i+n && k < len(r.tokens); k++ {
		r.tokens[k].used = true
	}
}

// number returns the number at i, in digits or in words.
func (r *reading) number(i int) (float64, bool) {
	if !r.free(i) {
		return 0, false
	}
	if r.tokens[i].kind == number {
		return r.tokens[i].number, true
	}
	return value("number", r.tokens[i].text)
}

// figure returns the number in digits at i.
func (r *reading) figure(i int) (float64, bool) {
	if !r.free(i) || r.tokens[i].kind != number {
		return 0, false
	}
	return r.tokens[i].number, true
}

// named gives a planting an id of its own: crop and year, then a letter.
func named(p *plan.Planting, taken map[string]bool) string {
	year := p.Date.Year() % 100
	base := p.Crop + "-" + string(rune('0'+year/10)) + string(rune('0'+year%10))
	id := base
	for k := 2; taken[id]; k++ {
		id = base + "-" + digitsOf(k)
	}
	return id
}
