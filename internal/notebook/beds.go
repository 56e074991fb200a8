package notebook

import (
	"math"
	"strings"
	"unicode"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

const (
	// mostBeds is the most that one text may tell.
	mostBeds = 300
	// The sides of a bed [m].
	leastSideM, mostSideM = 0.05, 1000.0
)

// always is the day on which a cover that stands for good went on, before any
// table begins.
var always = cal.Of(2000, 1, 1)

// ReadBeds reads a household's ground, such as "11 beds 6 x 1.2, tunnel 6 x 4" or
// "2 frames 1.2 x 0.8, 4 pots 40 cm": beds with ids, names and their order, and
// the covers that stand over them for good. Their site is left blank. What cannot
// be read is told, each piece by itself.
func ReadBeds(text string) ([]place.Bed, []place.CoverSpell, fault.List) {
	g := groundReading{count: map[string]int{}}
	for _, piece := range pieces(text) {
		g.read(piece)
	}
	g.nameLone()
	return g.beds, g.covers, g.faults
}

// pieces parts a text at line ends, semicolons, commas that are no decimal marks,
// and "and".
func pieces(text string) []string {
	text = signs.Replace(strings.ToValidUTF8(text, "?"))
	var out []string
	var b strings.Builder
	runes := []rune(text)
	flush := func() {
		if s := strings.TrimSpace(b.String()); s != "" {
			out = append(out, s)
		}
		b.Reset()
	}
	for i, r := range runes {
		decimal := r == ',' && i > 0 && i+1 < len(runes) && unicode.IsDigit(runes[i-1]) && unicode.IsDigit(runes[i+1])
		if strings.ContainsRune("\r\n;", r) || r == ',' && !decimal {
			flush()
			continue
		}
		b.WriteRune(r)
	}
	flush()
	var parted []string
	for _, s := range out {
		parted = append(parted, strings.Split(s, " and ")...)
	}
	return parted
}

// groundReading gathers beds while a text is read.
type groundReading struct {
	beds   []place.Bed
	covers []place.CoverSpell
	faults fault.List
	count  map[string]int // beds of each kind so far
	named  map[string]bool
}

func (g *groundReading) wrong(kind fault.Kind, key string, args words.Args) {
	g.faults = append(g.faults, fault.New(kind, key, args))
}

// read reads one piece: a count, a kind or a name, and two sides or a diameter.
func (g *groundReading) read(piece string) {
	r := reading{tokens: cut(piece)}
	if len(r.tokens) == 0 || len(r.tokens) > mostTokens {
		g.wrong(fault.Invalid, "notebook.bed_nothing", words.Args{"given": short(piece)})
		return
	}
	length, width, ok := r.bedSides()
	if !ok {
		g.wrong(fault.Invalid, "notebook.bed_size", words.Args{"given": short(piece)})
		return
	}
	if !sideFits(length) || !sideFits(width) {
		g.wrong(fault.OutOfRange, "notebook.bed_size_limits", words.Args{"given": short(piece)})
		return
	}
	n := 1.0
	if v, ok := r.number(0); ok {
		n = v
		r.take(0, 1)
	}
	if n < 1 || n != math.Trunc(n) || len(g.beds)+int(math.Min(n, 1e6)) > mostBeds {
		g.wrong(fault.OutOfRange, "notebook.bed_count", words.Args{"given": short(piece), "most": mostBeds})
		return
	}
	kind, over, name := r.bedKind()
	for range int(n) {
		g.add(kind, over, name, length, width)
	}
}

func sideFits(m float64) bool { return m >= leastSideM && m <= mostSideM }

// short cuts what was written to what a fault can show.
func short(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}

// bedSides reads "6 x 1.2 m", "1.2 m x 80 cm", or the one number of a round pot,
// as the sides of a square of the same area [m].
func (r *reading) bedSides() (length, width float64, ok bool) {
	for i := range r.tokens {
		if r.tokens[i].text != "x" && r.tokens[i].text != "by" || !r.free(i) {
			continue
		}
		at, own := i-1, 1.0
		if r.has(at, "length") {
			own, _ = value("length", r.tokens[at].text)
			at--
		}
		l, lengthTold := r.figure(at)
		w, widthTold := r.figure(i + 1)
		if !lengthTold || !widthTold {
			continue
		}
		n, other := i+2-at, 1.0
		if r.has(i+2, "length") {
			other, _ = value("length", r.tokens[i+2].text)
			n++
			if at == i-1 {
				own = other
			}
		}
		r.take(at, n)
		return math.Max(l*own, w*other), math.Min(l*own, w*other), true
	}
	for i := range r.tokens {
		if m, n, told := r.metres(i); told && m > 0 {
			r.take(i, n)
			side := rounded(m * math.Sqrt(math.Pi/4)) // area of a circle
			return side, side, true
		}
	}
	return 0, 0, false
}

// bedKind reads the kind of bed, the cover that belongs to it, and a name of its
// own, made of the words that are left.
func (r *reading) bedKind() (kind string, over cover.Kind, name string) {
	kind = "bed"
	var own []string
	found := false
	for i := range r.tokens {
		t := &r.tokens[i]
		if t.used {
			continue
		}
		k, ok := known()["bedkind"][t.text]
		if ok && (!found || kind == "bed") {
			kind, found = k, true
			singular := strings.TrimSuffix(t.text, "s")
			if singular == "glasshou" || singular == "glas" {
				singular = "glasshouse"
			}
			over = cover.Kind(known()["cover"][singular])
			if len(own) > 0 || i+1 < len(r.tokens) && r.free(i+1) && r.tokens[i+1].kind == word && !is("filler", r.tokens[i+1].text) {
				own = append(own, singular)
			}
			continue
		}
		if !is("filler", t.text) || t.text == "cold" && kind != "frame" {
			own = append(own, t.raw)
		}
	}
	if kind == "frame" && len(own) > 0 && strings.EqualFold(own[0], "cold") {
		own = nil
	}
	return kind, over, strings.Join(own, " ")
}

// kinds are the letter of a kind's ids and the name of its beds.
var kinds = map[string][2]string{
	"bed": {"b", "Bed"}, "tunnel": {"t", "Tunnel"}, "frame": {"f", "Frame"},
	"border": {"w", "Border"}, "container": {"c", "Pot"}, "bench": {"s", "Bench"},
}

func (g *groundReading) add(kind string, over cover.Kind, name string, length, width float64) {
	g.count[kind]++
	n := digitsOf(g.count[kind])
	b := place.Bed{ID: kinds[kind][0] + n, Name: kinds[kind][1] + " " + n, Kind: kind,
		LengthM: rounded(length), WidthM: rounded(width), Light: 1, Soil: "fair", Order: len(g.beds) + 1}
	if over == cover.Glasshouse {
		b.Name = "Glasshouse " + n
	}
	if name != "" {
		b.Name = g.ownName(name)
	}
	g.beds = append(g.beds, b)
	if over != "" {
		g.covers = append(g.covers, place.CoverSpell{ID: b.ID + "-cover", Bed: b.ID, Spell: cover.Spell{Kind: over, On: always, Off: cal.None}})
	}
}

// ownName writes a name with a capital, and a number from the second bed that
// bears it on.
func (g *groundReading) ownName(name string) string {
	runes := []rune(name)
	name = string(unicode.ToUpper(runes[0])) + string(runes[1:])
	if g.named == nil {
		g.named = map[string]bool{}
	}
	own := name
	for k := 2; g.named[own]; k++ {
		own = name + " " + digitsOf(k)
	}
	g.named[own] = true
	return own
}

// nameLone takes the number off the name of the only bed of a kind.
func (g *groundReading) nameLone() {
	for i := range g.beds {
		b := &g.beds[i]
		if b.Kind != "bed" && g.count[b.Kind] == 1 {
			b.Name = strings.TrimSuffix(b.Name, " 1")
		}
	}
}

// rounded keeps a side to the centimetre.
func rounded(m float64) float64 { return math.Round(m*100) / 100 }
