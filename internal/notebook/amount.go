package notebook

import "math"

// amount is how much ground was told, in one of several ways.
type amount struct {
	kind    amountKind
	areaM2  float64
	count   float64 // plants, or rows
	lengthM float64 // of the bed, or of each row; 0: the whole bed
	share   float64 // of the bed
	seeds   bool    // count is of seeds
}

type amountKind int

const (
	nothing amountKind = iota
	ofArea
	ofRows
	ofLength
	ofCount
	ofShare
	ofSome
)

// readAmount reads how much: an area, rows, a length of bed, a count of plants,
// a share of the bed, or some. The first of these that is there counts.
func (r *reading) readAmount() amount {
	for _, read := range []func() (amount, bool){r.sides, r.squareMetres, r.rows, r.length, r.plants, r.bedShare, r.some} {
		if a, ok := read(); ok {
			return a
		}
	}
	return amount{}
}

// metres reads a number with a unit of length from i on, and how many tokens it
// takes.
func (r *reading) metres(i int) (m float64, n int, ok bool) {
	v, ok := r.number(i)
	if !ok {
		return 0, 0, false
	}
	if !r.has(i+1, "length") {
		return v, 1, false
	}
	factor, _ := value("length", r.tokens[i+1].text)
	return v * factor, 2, true
}

// sides reads 2 x 1.2, in metres unless told otherwise.
func (r *reading) sides() (amount, bool) {
	for i := range r.tokens {
		if !r.free(i) || r.tokens[i].text != "x" && r.tokens[i].text != "by" {
			continue
		}
		at := i - 1
		if r.has(at, "length") {
			at--
		}
		width, n, told := r.metres(i + 1)
		length, _, own := r.metres(at)
		if n == 0 || length <= 0 || width <= 0 {
			continue
		}
		if told && !own {
			factor, _ := value("length", r.tokens[i+2].text)
			length *= factor
		}
		r.take(at, i-at+1+n)
		return amount{kind: ofArea, areaM2: length * width}, true
	}
	return amount{}, false
}

// squareMetres reads 3 m2, 3 sqm and 3 square metres.
func (r *reading) squareMetres() (amount, bool) {
	for i := range r.tokens {
		v, ok := r.number(i)
		if !ok || v <= 0 {
			continue
		}
		if r.has(i+1, "area") {
			r.take(i, 2)
			return amount{kind: ofArea, areaM2: v}, true
		}
		if r.has(i+1, "square") && r.has(i+2, "length") {
			factor, _ := value("length", r.tokens[i+2].text)
			r.take(i, 3)
			return amount{kind: ofArea, areaM2: v * factor * factor}, true
		}
	}
	return amount{}, false
}

// rows reads "a row", "2 rows", "half a row", "2 rows of 3 m" and "a 3 m row".
func (r *reading) rows() (amount, bool) {
	for i := range r.tokens {
		if !r.has(i, "row") {
			continue
		}
		r.take(i, 1)
		a := amount{kind: ofRows, count: 1}
		at := i - 1
		for r.free(at) && r.tokens[at].text == "of" {
			at--
		}
		if m, n, ok := r.metres(at - 1); ok && n == 2 {
			a.lengthM = m
			r.take(at-1, 2)
			at -= 2
		}
		if v, ok := r.number(at); ok && v > 0 {
			a.count = v
			r.take(at, 1)
			at--
		}
		if share, ok := r.shareAt(at); ok {
			a.count *= share
		}
		for k := i + 1; a.lengthM == 0 && k < len(r.tokens); k++ {
			if m, n, ok := r.metres(k); ok {
				a.lengthM = m
				r.take(k, n)
			}
		}
		return a, true
	}
	return amount{}, false
}

// length reads "1 m", a length of the bed.
func (r *reading) length() (amount, bool) {
	for i := range r.tokens {
		if m, n, ok := r.metres(i); ok && m > 0 {
			r.take(i, n)
			return amount{kind: ofLength, lengthM: m}, true
		}
	}
	return amount{}, false
}

// plants reads "42 left", "6 plants", "40 cloves" and a bare number before the
// crop.
func (r *reading) plants() (amount, bool) {
	for i := range r.tokens {
		v, ok := r.number(i)
		if !ok || v <= 0 || v != math.Trunc(v) {
			continue
		}
		at := i + 1
		for at < len(r.tokens) && (r.tokens[at].used || r.tokens[at].text == "of") && at < i+5 {
			at++
		}
		a := amount{kind: ofCount, count: v}
		switch {
		case r.has(at, "count"):
			a.seeds = r.tokens[at].text == "seed" || r.tokens[at].text == "seeds"
			r.methodOf(at)
			r.take(at, 1)
		case r.free(at) && r.tokens[at].text == "left":
			r.take(at, 1)
		case r.has(i-1, "count") && r.tokens[i].kind == number:
			r.methodOf(i - 1)
			r.take(i-1, 1)
		case r.crop != nil && r.beforeCrop(i) && r.tokens[i].kind == number:
		default:
			continue
		}
		r.take(i, 1)
		r.takeCounts()
		return a, true
	}
	return amount{}, false
}

// takeCounts takes words that say once more what was counted: "6 tomato plants
// left".
func (r *reading) takeCounts() {
	for i := range r.tokens {
		if r.has(i, "count") && r.crop != nil {
			r.methodOf(i)
			r.take(i, 1)
		}
	}
}

// beforeCrop tells whether only "of" stands between a token and the crop.
func (r *reading) beforeCrop(i int) bool {
	at := i + 1
	for at < r.cropAt && r.free(at) && is("filler", r.tokens[at].text) {
		at++
	}
	return at == r.cropAt
}

// shareAt reads a share that ends at i, such as "half" or "two thirds".
func (r *reading) shareAt(i int) (float64, bool) {
	if r.free(i) && (r.tokens[i].text == "of" || r.tokens[i].text == "a" || r.tokens[i].text == "the") {
		i--
	}
	if r.fractionAt(i) || r.free(i) && fractions[r.tokens[i].text] > 0 {
		r.take(i, 1)
		return fractions[r.tokens[i].text], true
	}
	if !r.has(i, "share") {
		return 0, false
	}
	v, _ := value("share", r.tokens[i].text)
	r.take(i, 1)
	if n, ok := r.number(i - 1); ok && n >= 1 && n <= 5 {
		v *= n
		r.take(i-1, 1)
	}
	return math.Min(1, v), true
}

// fractions are shares in digits, which look like days.
var fractions = map[string]float64{"1/2": 1.0 / 2, "1/3": 1.0 / 3, "2/3": 2.0 / 3, "1/4": 1.0 / 4, "3/4": 3.0 / 4}

// fractionAt tells whether digits are a share: a bed or a row follows.
func (r *reading) fractionAt(i int) bool {
	if !r.free(i) || fractions[r.tokens[i].text] == 0 || i+1 >= len(r.tokens) {
		return false
	}
	next := r.tokens[i+1]
	return next.used || next.text == "of" || is("row", next.text) || is("bed", next.text)
}

// bedShare reads "half", "a third", "40 percent" and "the whole".
func (r *reading) bedShare() (amount, bool) {
	for i := range r.tokens {
		if share, ok := r.shareAt(i); ok {
			return amount{kind: ofShare, share: share}, true
		}
		if r.has(i, "whole") {
			r.take(i, 1)
			return amount{kind: ofShare, share: 1}, true
		}
		if v, ok := r.figure(i); ok && v > 0 && v <= 100 && r.free(i+1) && r.tokens[i+1].text == "percent" {
			r.take(i, 2)
			return amount{kind: ofShare, share: v / 100}, true
		}
	}
	return amount{}, false
}

// some reads "some", "a few", "a bit of".
func (r *reading) some() (amount, bool) {
	for i := range r.tokens {
		if r.has(i, "some") {
			r.take(i, 1)
			return amount{kind: ofSome}, true
		}
	}
	return amount{}, false
}
