package notebook

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/place"
	"garner/internal/words"
)

// longestBed is the longest name of a bed that is looked for [words].
const longestBed = 5

// readBed finds the bed: by its name or id, by "bed" and a number, or by a word
// for its kind where there is only one of it.
func (r *reading) readBed() {
	if len(r.Beds) == 0 {
		r.missing("notebook.no_beds", nil)
		return
	}
	r.partNumbers()
	for _, find := range []func() bool{r.bedByName, r.bedByNumber, r.bedByKind} {
		if find() {
			r.otherBeds()
			return
		}
	}
	if r.lacking {
		return
	}
	if len(r.Beds) == 1 {
		r.bed = &r.Beds[0]
		return
	}
	r.missing("notebook.which_bed", words.Args{"beds": bedNames(r.Beds)})
}

// bedByName looks for the longest run of words that is the name or id of a bed.
func (r *reading) bedByName() bool {
	keys := map[string]int{}
	for i := range r.Beds {
		for _, name := range []string{r.Beds[i].Name, r.Beds[i].ID} {
			key := joined(cut(name))
			if _, err := strconv.Atoi(key); err == nil || key == "" {
				continue
			}
			if _, twice := keys[key]; !twice {
				keys[key] = i
			}
		}
	}
	for n := longestBed; n >= 1; n-- {
		for i := 0; i+n <= len(r.tokens); i++ {
			if at, ok := keys[joined(r.tokens[i:i+n])]; ok && !r.partOfLonger(i, n) {
				r.bed = &r.Beds[at]
				r.take(i, n)
				return true
			}
		}
	}
	return false
}

// otherBeds reads the numbers of further beds after the one that was found, as
// in "bed 2 and 3" or "beds 2, 3": the line is of the first, and the others are
// asked for.
func (r *reading) otherBeds() {
	var others []string
	for i := 1; i < len(r.tokens); i++ {
		at := i
		if r.free(i) && r.tokens[i].text == "and" {
			at++
		} else if !r.several {
			continue
		}
		n, told := r.figure(at)
		if !told || !r.tokens[i-1].used || r.measured(at) {
			continue
		}
		if bed := r.numbered(r.bed.Kind, n); bed != nil && bed != r.bed {
			others = append(others, bed.Name)
			r.take(i, at-i+1)
		}
	}
	if len(others) > 0 {
		r.ask("notebook.other_beds", words.Args{"bed": r.bed.Name, "others": others})
	}
}

// partOfLonger tells whether a name is followed by a number that makes it
// another bed's, as "tunnel" in "tunnel 2" where several are called so.
func (r *reading) partOfLonger(i, n int) bool {
	if _, numbered := r.figure(i + n); !numbered || r.tokens[i+n-1].kind == number {
		return false
	}
	kind, named := known()["bedkind"][r.tokens[i+n-1].text]
	return named && len(r.ofKind(kind)) > 1 && !r.measured(i+n)
}

// partNumbers parts "beds 2,3" into the numbers of two beds, which would else be
// taken for a decimal.
func (r *reading) partNumbers() {
	for i := 0; i+1 < len(r.tokens); i++ {
		if !r.ofSeveral(i) || !strings.Contains(r.tokens[i+1].raw, ",") {
			continue
		}
		var numbers []token
		for _, raw := range strings.Split(r.tokens[i+1].raw, ",") {
			numbers = append(numbers, numeric(raw))
		}
		r.tokens = slices.Concat(r.tokens[:i+1], numbers, r.tokens[i+2:])
	}
}

// ofSeveral tells whether a word names several beds of a kind.
func (r *reading) ofSeveral(i int) bool {
	kinds := known()["bedkind"]
	one, plural := strings.CutSuffix(r.tokens[i].text, "s")
	return plural && kinds[one] != "" && kinds[one] == kinds[r.tokens[i].text]
}

// measured tells whether a number is of metres or plants, not of a bed.
func (r *reading) measured(i int) bool {
	for _, group := range []string{"length", "area", "square", "count", "month", "row"} {
		if r.has(i+1, group) {
			return true
		}
	}
	return r.free(i+1) && slices.Contains([]string{"x", "left", "percent"}, r.tokens[i+1].text)
}

// bedByNumber reads "bed 5", "bed no 5" and "tunnel 2".
func (r *reading) bedByNumber() bool {
	for i := range r.tokens {
		kind, ok := known()["bedkind"][r.tokens[i].text]
		if !ok || r.tokens[i].used {
			continue
		}
		at := i + 1
		for r.free(at) && (r.tokens[at].text == "no" || r.tokens[at].text == "number" || r.tokens[at].text == "nr") {
			at++
		}
		n, ok := r.figure(at)
		if !ok || at == i+1 && kind != "bed" && r.measured(at) {
			continue
		}
		bed := r.numbered(kind, n)
		if bed == nil {
			r.take(i, at-i+1)
			r.missing("notebook.bed_unknown", words.Args{"given": r.tokens[i].raw + " " + r.tokens[at].raw, "beds": bedNames(r.Beds)})
			return false
		}
		r.bed, r.several = bed, r.ofSeveral(i)
		r.take(i, at-i+1)
		return true
	}
	return false
}

// numbered returns the bed of a kind whose name ends in a number, else the one
// of that place in the list.
func (r *reading) numbered(kind string, n float64) *place.Bed {
	all := r.ofKind(kind)
	text := strconv.FormatFloat(n, 'f', -1, 64)
	for _, b := range all {
		if last := lastWord(b.Name); last == text {
			return b
		}
	}
	for i := range r.Beds {
		if strings.EqualFold(r.Beds[i].Name, text) {
			return &r.Beds[i]
		}
	}
	if i := int(n) - 1; n == float64(int(n)) && i >= 0 && i < len(all) && lastNumbers(all) == 0 {
		return all[i]
	}
	return nil
}

// bedByKind reads "the tunnel" where there is one.
func (r *reading) bedByKind() bool {
	for i := range r.tokens {
		kind, ok := known()["bedkind"][r.tokens[i].text]
		if !ok || r.tokens[i].used || kind == "bed" {
			continue
		}
		all := r.ofKind(kind)
		if len(all) == 1 {
			r.bed = all[0]
			r.take(i, 1)
			if i > 0 && r.free(i-1) && r.tokens[i-1].text == "cold" {
				r.take(i-1, 1)
			}
			return true
		}
		r.take(i, 1)
		if len(all) == 0 {
			r.missing("notebook.bed_unknown", words.Args{"given": r.tokens[i].raw, "beds": bedNames(r.Beds)})
			return false
		}
		r.missing("notebook.bed_several", words.Args{"given": r.tokens[i].raw, "beds": namesOf(all)})
		return false
	}
	return false
}

func (r *reading) ofKind(kind string) []*place.Bed {
	var out []*place.Bed
	for i := range r.Beds {
		if r.Beds[i].Kind == kind {
			out = append(out, &r.Beds[i])
		}
	}
	return out
}

// joined writes tokens as one name, so that "Bed 1", "bed1" and "bed-1" agree.
func joined(tokens []token) string {
	var b strings.Builder
	for _, t := range tokens {
		if t.used {
			return ""
		}
		b.WriteString(t.text)
	}
	return b.String()
}

func lastWord(name string) string {
	all := strings.Fields(name)
	if len(all) == 0 {
		return ""
	}
	return all[len(all)-1]
}

// lastNumbers counts the beds whose names end in a number.
func lastNumbers(beds []*place.Bed) (n int) {
	for _, b := range beds {
		if _, err := strconv.Atoi(lastWord(b.Name)); err == nil {
			n++
		}
	}
	return n
}

func bedNames(beds []place.Bed) []string {
	all := make([]*place.Bed, len(beds))
	for i := range beds {
		all[i] = &beds[i]
	}
	return namesOf(all)
}

// mostNamed is how many beds a question names.
const mostNamed = 12

func namesOf(beds []*place.Bed) []string {
	var out []string
	for _, b := range beds {
		if len(out) < mostNamed {
			out = append(out, b.Name)
		}
	}
	return out
}

func digitsOf(n int) string { return strconv.Itoa(n) }
