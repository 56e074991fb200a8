package web

import (
	"net/url"
	"strconv"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// Link is the address of the list in another order or with other states shown;
// what was looked for stays.
func (b plantingsBody) Link(by, show string) string {
	q := url.Values{}
	for name, value := range map[string]string{"q": b.Query, "by": by, "show": show} {
		if value != "" && value != "vegetable" {
			q.Set(name, value)
		}
	}
	if len(q) == 0 {
		return "/plantings"
	}
	return "/plantings?" + q.Encode()
}

// Begun tells when and how a planting began or will begin.
func (b plantingsBody) Begun(p desk.GroundLine) words.Phrase { return begun(p, b.Today) }

func begun(p desk.GroundLine, today cal.Date) words.Phrase {
	key := "web.begun_"
	if p.State == desk.Ahead {
		key = "web.begins_"
	}
	method := p.Method
	if method == "" {
		method = "some"
	}
	return words.P(key+method, words.Args{"day": toldDay(p.Date, p.DateWithinD, today)})
}

// Next tells what a planting's forecast says next, nil when there is nothing to
// tell.
func (b plantingsBody) Next(p desk.GroundLine) *words.Phrase {
	var next words.Phrase
	switch {
	case p.State == desk.Past || !b.Forecast:
		return nil
	case p.Ready.P50.IsSet() && p.Ready.P50 > b.Today:
		key := "web.ready_about"
		if !p.Feeds {
			key = "web.covers_about"
		}
		next = words.P(key, words.Args{"day": words.Sharp(p.Ready.P50, b.Today)})
	case p.Over.P50 > b.Today && p.Over.P50 < b.Today+overAhead:
		next = words.P("web.over_about", words.Args{"day": words.Sharp(p.Over.P50, b.Today)})
	case !p.Ready.P50.IsSet():
		next = words.P("web.ready_never", nil)
	default:
		return nil
	}
	return &next
}

// overAhead is how far ahead [days] the end of a planting is told. What lives for
// years is over at the table's own end, which says nothing.
const overAhead = 300

// Day tells the day of a planting to come.
func (b bedsBody) Day(p desk.GroundLine) words.Phrase {
	return toldDay(p.Date, p.DateWithinD, b.Today)
}

// roughDays is the width [days] from which a day that was told roughly is told
// as a part of its month.
const roughDays = 5

// toldDay tells a planned or recorded day as sharply as it was given: a day told
// roughly as a part of its month.
func toldDay(day cal.Date, within int, today cal.Date) words.Phrase {
	if within == 0 {
		return planned(day, today)
	}
	if within < roughDays {
		return words.P("web.about", words.Args{"what": planned(day, today)})
	}
	year, _, dayOfMonth := day.YMD()
	part := words.P([]string{"words.sharp_early", "words.sharp_mid", "words.sharp_late"}[min(2, (dayOfMonth-1)/10)], words.Args{"day": day})
	if year != today.Year() {
		return words.P("words.sharp_year", words.Args{"date": part, "year": strconv.Itoa(year)})
	}
	return part
}

// strip is a bed drawn as a length of ground: what holds it today is solid, what
// is free is dashed.
type strip struct {
	Width, Inner float64
	Parts        []stripPart
}

type stripPart struct {
	Kind     string // ground, or over for what grows under another
	X, Width float64
}

// The scale of the strips [px/m2] and the widest there may be [px].
const (
	stripScale  = 12.0
	widestStrip = 290.0
)

// Strip draws the bed.
func (b bedLine) Strip() strip {
	scale := min(stripScale, widestStrip/b.AreaM2())
	s := strip{Width: rounded(b.AreaM2() * scale)}
	s.Inner = s.Width - 1
	x := 0.0
	for _, p := range b.Standing {
		if p.Shares {
			continue
		}
		w := min(rounded(p.AreaM2*scale), s.Width-x)
		if w > 1 {
			s.Parts = append(s.Parts, stripPart{"ground", x, w - 1})
			x = rounded(x + w)
		}
	}
	return s
}

func rounded(px float64) float64 { return float64(int(px*10+0.5)) / 10 }
