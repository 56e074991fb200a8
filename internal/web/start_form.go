package web

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/gazetteer"
	"garner/internal/words"
)

// startForm is everything a newcomer has told so far, as it was typed. It goes
// from step to step inside the form: nothing is kept before the end.
type startForm struct {
	Query, Place, Height, Zone string
	Adults, Children           string
	Ticks                      map[string]string // by vegetable; nil: not asked yet
	Beds, Lines                string
}

// tickField begins the names of the fields in which vegetables are ticked.
const tickField = "tick-"

// newStartForm is what most households begin with.
func newStartForm(zone string) startForm {
	return startForm{Zone: zone, Adults: "2", Children: "0"}
}

// startForm reads what was posted.
func (v *visit) startForm() startForm {
	f := startForm{Query: v.field("q"), Place: v.field("place"), Height: strings.TrimSpace(v.field("height")), Zone: v.field("zone"),
		Adults: v.field("adults"), Children: v.field("children"), Beds: v.field("beds"), Lines: lineEnds(v.field("lines"))}
	for name, values := range v.r.PostForm {
		if vegetable, ok := strings.CutPrefix(name, tickField); ok && len(values) > 0 {
			if f.Ticks == nil {
				f.Ticks = map[string]string{}
			}
			f.Ticks[vegetable] = values[0]
		}
	}
	if lines, ok := v.r.PostForm["line"]; ok {
		f.Lines = lineEnds(strings.Join(lines, "\n"))
	}
	return f
}

// lineEnds brings line ends to one form and drops blank lines.
func lineEnds(text string) string {
	var out []string
	for _, line := range strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' }) {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return strings.Join(out, "\n")
}

// hidden are the answers that a step does not show.
func (f *startForm) hidden(step int) []hiddenField {
	var out []hiddenField
	add := func(on int, name, value string) {
		if on != step {
			out = append(out, hiddenField{name, value})
		}
	}
	add(stepPlace, "q", f.Query)
	add(stepPlace, "place", f.Place)
	add(stepPlace, "height", f.Height)
	add(stepPlace, "zone", f.Zone)
	add(stepTable, "adults", f.Adults)
	add(stepTable, "children", f.Children)
	var vegetables []string
	for vegetable := range f.Ticks {
		vegetables = append(vegetables, vegetable)
	}
	sort.Strings(vegetables)
	for _, vegetable := range vegetables {
		add(stepTable, tickField+vegetable, f.Ticks[vegetable])
	}
	add(stepGround, "beds", f.Beds)
	if step != stepCheck {
		add(stepGround, "lines", f.Lines)
	}
	return out
}

// checkStep tells what of a step cannot be used as it is.
func (v *visit) checkStep(step int, f *startForm) fault.List {
	switch step {
	case stepPlace:
		return checkPlace(f)
	case stepTable:
		return checkPeople(f)
	case stepGround:
		return v.checkGround(f)
	}
	return nil
}

// checkPlace holds a place to the list; one that alone answers what was typed is
// taken without asking.
func checkPlace(f *startForm) fault.List {
	if _, known := gazetteer.Find(f.Place); !known {
		found := gazetteer.Search(f.Query, 2)
		switch {
		case strings.TrimSpace(f.Query) == "":
			return fault.List{fault.New(fault.Invalid, "web.start_place_needed", nil)}
		case len(found) != 1 || found[0].Spelled:
			return fault.List{fault.New(fault.Invalid, "web.start_place_choose", nil)}
		}
		f.Place = found[0].ID
	}
	height, err := f.elevationM()
	if err != nil {
		return fault.List{err}
	}
	if _, _, err := gazetteer.Normals(f.Place, height); err != nil {
		return listOf(err)
	}
	return nil
}

// elevationM is the garden's height above the sea [m], not a number when it was
// not told: then the station's own height counts.
func (f *startForm) elevationM() (float64, *fault.Error) {
	if f.Height == "" {
		return math.NaN(), nil
	}
	text := strings.TrimSpace(strings.TrimSuffix(strings.ToLower(f.Height), "m"))
	m, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(m > -500 && m < 6000) {
		return 0, fault.New(fault.Invalid, "web.start_height_wrong", words.Args{"given": f.Height})
	}
	return m, nil
}

// mostPeople is more than sit at any household's table.
const mostPeople = 100

// checkPeople holds the numbers of people to what can be.
func checkPeople(f *startForm) fault.List {
	var faults fault.List
	people := 0
	for _, given := range []string{f.Adults, f.Children} {
		n, ok := readPeople(given)
		if !ok {
			faults = append(faults, fault.New(fault.Invalid, "web.start_people_wrong", words.Args{"given": given, "most": mostPeople}))
		}
		people += n
	}
	if len(faults) == 0 && people == 0 {
		faults = append(faults, fault.New(fault.Invalid, "web.start_nobody", nil))
	}
	return faults
}

// readPeople reads a number of people; nothing is nobody.
func readPeople(given string) (int, bool) {
	if given = strings.TrimSpace(given); given == "" {
		return 0, true
	}
	n, err := strconv.Atoi(given)
	return n, err == nil && n >= 0 && n <= mostPeople
}
