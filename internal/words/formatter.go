package words

import (
	"math"
	"reflect"
	"strconv"
	"strings"
)

// Formatter writes numbers, units and dates for people. Files and --json have
// plain numbers and ISO dates instead.
type Formatter struct {
	catalogue *Catalogue
	Space     string // between a number and its unit; pages use a no-break space
}

// absent stands where there is no number to show.
const absent = "–"

// named returns the way of writing a number that a text asks for by name, nil
// when there is none of that name.
func (f Formatter) named(style string) func(float64) string {
	switch style {
	case "kg":
		return f.Kilograms
	case "kg_told":
		return f.KilogramsTold
	case "g":
		return f.Grams
	case "weight":
		return f.Weight
	case "about":
		return f.About
	case "forecast":
		return f.Forecast
	case "m":
		return f.Metres
	case "m2":
		return f.SquareMetres
	case "c":
		return f.Celsius
	case "l":
		return f.Litres
	case "mm":
		return f.Millimetres
	case "percent":
		return f.Percent
	case "odds":
		return f.Odds
	case "chances":
		return f.Chances
	case "count":
		return f.Count
	case "alone":
		return f.Alone
	case "span":
		return func(n float64) string { return f.counted("words.span", n) }
	case "weeks":
		return func(n float64) string { return f.counted("words.weeks", n) }
	case "days":
		return func(n float64) string { return f.counted("words.days", n) }
	}
	return nil
}

// dateStyles are the ways of writing a date.
var dateStyles = map[string]bool{"date": true, "day": true, "month": true}

func knownStyle(style string) bool {
	_, digits := digitsOf(style)
	return digits || dateStyles[style] || Formatter{}.named(style) != nil
}

// digitsOf reads a style that is a number of decimals, 0-6.
func digitsOf(style string) (int, bool) {
	if len(style) == 1 && style[0] >= '0' && style[0] <= '6' {
		return int(style[0] - '0'), true
	}
	return 0, false
}

// styled writes a number in the way a text asks for.
func (f Formatter) styled(x float64, style string) string {
	if n, ok := digitsOf(style); ok {
		return f.Number(x, n)
	}
	if write := f.named(style); write != nil {
		return write(x)
	}
	return f.Plain(x)
}

// Number writes x with the given decimals, and a comma between thousands from
// ten thousand up. What is no number is written as a dash.
func (f Formatter) Number(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return absent
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	whole, rest, _ := strings.Cut(s, ".")
	if len(strings.TrimPrefix(whole, "-")) >= 5 {
		whole = grouped(whole)
	}
	if rest == "" {
		return whole
	}
	return whole + "." + rest
}

func grouped(whole string) string {
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	return sign + whole
}

// Plain writes a number with as many decimals as it needs, at most three.
func (f Formatter) Plain(x float64) string {
	s := f.Number(x, 3)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

func (f Formatter) unit(number, unit string) string {
	if number == absent {
		return absent
	}
	return number + f.Space + unit
}

// Kilograms writes a weight in kg: two decimals under 1 kg, one under 100 kg,
// none for nothing.
func (f Formatter) Kilograms(kg float64) string { return f.unit(f.sized(kg), "kg") }

// KilogramsTold writes a weight in kg as somebody told it, without decimals that
// say nothing.
func (f Formatter) KilogramsTold(kg float64) string { return f.unit(f.Plain(kg), "kg") }

// Grams writes a weight in whole grams, tenths under 10 g.
func (f Formatter) Grams(g float64) string {
	if math.Abs(g) < 9.95 {
		return f.unit(f.Number(g, 1), "g")
	}
	return f.unit(f.Number(g, 0), "g")
}

// Weight writes a weight given in kg, in grams when it is under 1 kg.
func (f Formatter) Weight(kg float64) string {
	if math.Abs(kg) < 0.9995 {
		return f.Grams(kg * 1000)
	}
	return f.Kilograms(kg)
}

// Metres writes a length.
func (f Formatter) Metres(m float64) string { return f.unit(f.sized(m), "m") }

// SquareMetres writes an area.
func (f Formatter) SquareMetres(m2 float64) string { return f.unit(f.sized(m2), "m²") }

// Celsius writes a temperature to a tenth, whole degrees without decimals, and a
// true minus below zero.
func (f Formatter) Celsius(c float64) string {
	number := strings.TrimSuffix(f.Number(c, 1), ".0")
	if below, frost := strings.CutPrefix(number, "-"); frost {
		number = minus + below
	}
	return f.unit(number, "°C")
}

// minus is the sign of a number under zero in a sentence; a hyphen is shorter.
const minus = "\u2212"

// Litres writes a volume, tenths under 10 litres.
func (f Formatter) Litres(l float64) string {
	if math.Abs(l) < 9.95 {
		return f.unit(f.Number(l, 1), "L")
	}
	return f.unit(f.Number(l, 0), "L")
}

// Millimetres writes rain, tenths under 10 mm.
func (f Formatter) Millimetres(mm float64) string {
	if math.Abs(mm) < 9.95 {
		return f.unit(f.Number(mm, 1), "mm")
	}
	return f.unit(f.Number(mm, 0), "mm")
}

// Percent writes a share (0-1) in per cent.
func (f Formatter) Percent(share float64) string {
	return f.unit(f.Number(share*100, 0), "%")
}

// sized writes a quantity as sharply as its size deserves.
func (f Formatter) sized(x float64) string {
	switch size := math.Abs(x); {
	case size < 0.005:
		return f.Number(0, 0)
	case size < 0.995:
		return f.Number(x, 2)
	case size < 99.95:
		return f.Number(x, 1)
	}
	return f.Number(x, 0)
}

// counted writes a number of weeks or days in the right plural.
func (f Formatter) counted(key string, n float64) string {
	if math.IsNaN(n) || math.IsInf(n, 0) {
		return absent
	}
	return f.catalogue.Text(P(key, Args{"n": n}))
}

// Count writes a whole number in words up to nine, in figures from ten up.
func (f Formatter) Count(n float64) string {
	if n != math.Trunc(n) || n < 0 || n > 9 {
		return f.Plain(n)
	}
	return f.catalogue.Text(P("words.count_"+strconv.Itoa(int(n)), nil))
}

// Alone writes a whole number that no noun follows: none in place of no.
func (f Formatter) Alone(n float64) string {
	if n == 0 {
		return f.catalogue.Text(P("words.count_none", nil))
	}
	return f.Count(n)
}

// Odds writes a chance (0-1) in words, as years in ten.
func (f Formatter) Odds(chance float64) string {
	if math.IsNaN(chance) {
		return absent
	}
	tenths := int(math.Round(chance * 10))
	tenths = max(0, min(10, tenths))
	return f.catalogue.Text(P("words.odds_"+strconv.Itoa(tenths), nil))
}

// Chances writes a chance (0-1) of a forecast in words, as chances in ten.
func (f Formatter) Chances(chance float64) string {
	if math.IsNaN(chance) {
		return absent
	}
	tenths := max(0, min(10, int(math.Round(chance*10))))
	return f.catalogue.Text(P("words.chances_"+strconv.Itoa(tenths), nil))
}

// number reads any of Go's numbers, defined types included.
func number(v any) (float64, bool) {
	r := reflect.ValueOf(v)
	switch {
	case !r.IsValid():
		return 0, false
	case r.CanInt():
		return float64(r.Int()), true
	case r.CanUint():
		return float64(r.Uint()), true
	case r.CanFloat():
		return r.Float(), true
	}
	return 0, false
}
