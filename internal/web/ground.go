package web

import (
	"cmp"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/place"
)

// plantingsBody is the page of all plantings.
type plantingsBody struct {
	Query    string
	By       string // vegetable or bed
	Show     string // a state, or all
	Today    cal.Date
	Forecast bool
	Groups   []plantingGroup
	Counts   map[string]int // plantings found, by state
	Found    int
}

// plantingGroup is what is listed under one heading.
type plantingGroup struct {
	Name  string
	Link  string
	Lines []desk.GroundLine
}

// allStates shows plantings of every state.
const allStates = "all"

// plantings lists the plantings of the plan in force.
func plantings(v *visit) error {
	ground, err := v.office.GroundView()
	if err != nil {
		return err
	}
	b := plantingsBody{Query: strings.TrimSpace(v.query("q")), By: v.query("by"), Show: v.query("show"),
		Today: ground.Today, Forecast: ground.Forecast, Counts: map[string]int{desk.Standing: 0, desk.Ahead: 0, desk.Past: 0}}
	if b.By != "bed" {
		b.By = "vegetable"
	}
	if !slices.Contains([]string{desk.Standing, desk.Ahead, desk.Past, allStates}, b.Show) {
		b.Show = ""
	}
	var found []desk.GroundLine
	for _, p := range ground.Plantings {
		if !matches(p, b.Query) {
			continue
		}
		b.Counts[p.State]++
		if b.Show == p.State || b.Show == allStates || b.Show == "" && p.State != desk.Past {
			found = append(found, p)
		}
	}
	b.Found = len(found)
	b.Counts["open"] = b.Counts[desk.Standing] + b.Counts[desk.Ahead]
	b.Groups = grouped(found, b.By)
	return v.show(page{Name: "plantings", Nav: "plantings", Body: b})
}

// matches tells whether every word looked for begins a word of the planting.
func matches(p desk.GroundLine, query string) bool {
	text := strings.ToLower(strings.Join([]string{p.Name, p.Variety, p.Vegetable, p.BedName, p.Method}, " "))
	all := strings.Fields(text)
	for _, word := range strings.Fields(strings.ToLower(query)) {
		if !slices.ContainsFunc(all, func(w string) bool { return strings.HasPrefix(w, word) }) {
			return false
		}
	}
	return true
}

// grouped puts plantings under their vegetable or bed, each group in order of
// date, the groups by name.
func grouped(lines []desk.GroundLine, by string) []plantingGroup {
	at := map[string]int{}
	var groups []plantingGroup
	for _, l := range lines {
		key, name, link := l.Vegetable, capital(l.Vegetable), vegetablePath(l.Vegetable)
		if !l.Feeds {
			link = "" // no row of the table
		}
		if by == "bed" {
			key, name, link = l.Bed, l.BedName, bedPath(l.Bed)
		}
		i, known := at[key]
		if !known {
			i = len(groups)
			at[key] = i
			groups = append(groups, plantingGroup{Name: name, Link: link})
		}
		groups[i].Lines = append(groups[i].Lines, l)
	}
	if by != "bed" {
		slices.SortStableFunc(groups, func(a, b plantingGroup) int { return cmp.Compare(a.Name, b.Name) })
	} else {
		slices.SortStableFunc(groups, func(a, b plantingGroup) int { return byNumbers(a.Name, b.Name) })
	}
	return groups
}

// byNumbers compares names as people count: bed 2 before bed 10.
func byNumbers(a, b string) int {
	for a != "" && b != "" {
		na, nb := leadingDigits(a), leadingDigits(b)
		if na > 0 && nb > 0 {
			x, y := strings.TrimLeft(a[:na], "0"), strings.TrimLeft(b[:nb], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[na:], b[nb:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

func leadingDigits(s string) int {
	return len(s) - len(strings.TrimLeft(s, "0123456789"))
}

// bedPath is the address of a bed's page.
func bedPath(id string) string { return "/beds/" + pathEscaped(id) }

// bedsBody is the page of all beds.
type bedsBody struct {
	Today    cal.Date
	Forecast bool
	Sites    []siteBeds
	Beds     int
	AreaM2   float64
}

// siteBeds are the beds of one site in walking order.
type siteBeds struct {
	Name string
	Path string // of its drawing
	Beds []bedLine
}

// bedLine is a bed with what stands in it and what comes.
type bedLine struct {
	place.Bed
	Cover    string // kind that lies over it today, empty: open
	Standing []desk.GroundLine
	Ahead    []desk.GroundLine
	FreeM2   float64 // ground that nothing holds today
}

// mostAhead is how many plantings to come are named beside a bed.
const mostAhead = 3

// beds lists the beds.
func beds(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	ground, err := v.office.GroundView()
	if err != nil {
		return err
	}
	b := bedsBody{Today: ground.Today, Forecast: ground.Forecast, Beds: len(h.Beds)}
	for _, site := range h.Sites {
		s := siteBeds{Name: site.Name, Path: drawnAt{site: site.ID}.path()}
		for _, bed := range h.Beds {
			if bed.Site == site.ID {
				s.Beds = append(s.Beds, bedOf(h, bed, ground))
				b.AreaM2 += bed.AreaM2()
			}
		}
		slices.SortStableFunc(s.Beds, func(x, y bedLine) int { return cmp.Or(cmp.Compare(x.Order, y.Order), byNumbers(x.Name, y.Name)) })
		b.Sites = append(b.Sites, s)
	}
	return v.show(page{Name: "beds", Nav: "ground", Body: b})
}

// bedOf gathers what stands and comes in a bed.
func bedOf(h *holding.Holding, bed place.Bed, ground *desk.GroundView) bedLine {
	line := bedLine{Bed: bed, FreeM2: bed.AreaM2(), Cover: coverOn(h, bed.ID, ground.Today)}
	for _, p := range ground.Plantings {
		switch {
		case p.Bed != bed.ID:
		case p.State == desk.Standing:
			line.Standing = append(line.Standing, p)
			if !p.Shares {
				line.FreeM2 -= p.HeldM2
			}
		case p.State == desk.Ahead && len(line.Ahead) < mostAhead:
			line.Ahead = append(line.Ahead, p)
		}
	}
	line.FreeM2 = max(0, line.FreeM2)
	return line
}

// coverOn is the kind of cover over a bed on a day, empty in the open.
func coverOn(h *holding.Holding, bed string, day cal.Date) string {
	var spells []cover.Spell
	for _, c := range h.Covers {
		if c.Bed == bed {
			spells = append(spells, c.Spell)
		}
	}
	if kind := cover.At(spells, day); kind != cover.Open {
		return string(kind)
	}
	return ""
}
