package web

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// yearBody is the year of a use at a site.
type yearBody struct {
	Title, Note string
	Sites       []wayLink
	Methods     []methodBody
	Twin        []twinRow
	Ready       bool // harvests are told
}

// methodBody is one way of starting under every cover.
type methodBody struct {
	Name            string
	Also            string // another way with the same dates
	Axis, AxisPhone string // drawings
	Strips          []stripBody
}

// stripBody is one way of starting under one cover.
type stripBody struct {
	Cover     string
	Sentences []string
	Same      string
	Draw      string
	DrawPhone string
}

// twinRow is a window in figures; without dates it is the best there is.
type twinRow struct {
	Method, Cover        string
	From, To             string
	Ready, ReadyTo, Odds string
}

// Sizes of the drawings of a year [px].
const (
	yearWidth      = 960.0
	yearWidthPhone = 358.0
	yearHeight     = 40.0
)

func (v *visit) year(view *desk.CropView, y *desk.CropYear) *yearBody {
	b := &yearBody{Title: v.say("web.crop_year", words.Args{"site": y.Site.Name}), Ready: y.Pattern != crop.Perennial}
	key := "web.crop_year_note"
	if !b.Ready {
		key = "web.crop_year_perennial"
	}
	b.Note = v.say(key, words.Args{"wanted": y.Wanted})
	if len(view.Sites) > 1 {
		for _, s := range view.Sites {
			path := cropPath(view.ID, view.Use) + "&site=" + pathEscaped(s.ID)
			b.Sites = append(b.Sites, wayLink{s.Name, path, s.ID == y.Site.ID})
		}
	}
	same, twins := sameCovers(y), twinMethods(y)
	for i := range y.Starts {
		s := &y.Starts[i]
		b.Twin = append(b.Twin, v.twinRows(s)...)
		if s.Same != "" || twins[s.Method] != "" {
			continue
		}
		if n := len(b.Methods); n == 0 || b.Methods[n-1].Name != v.methodName(s.Method) {
			b.Methods = append(b.Methods, methodBody{Name: v.methodName(s.Method),
				Axis: v.yearAxis(y, s.Method, view.Today, yearWidth), AxisPhone: v.yearAxis(y, s.Method, view.Today, yearWidthPhone)})
		}
		m := &b.Methods[len(b.Methods)-1]
		m.Strips = append(m.Strips, v.strip(view, y, s, same[s.Method+"/"+s.Cover]))
	}
	for method, first := range twins {
		for i := range b.Methods {
			if m := &b.Methods[i]; m.Name == v.methodName(first) {
				m.Also = v.say("web.crop_start_also", words.Args{"method": v.methodName(method)})
			}
		}
	}
	return b
}

// twinMethods names the ways of starting that have the very dates of another one.
func twinMethods(y *desk.CropYear) map[string]string {
	of, out := map[string][]desk.StartView{}, map[string]string{}
	var methods []string
	for _, s := range y.Starts {
		if of[s.Method] == nil {
			methods = append(methods, s.Method)
		}
		of[s.Method] = append(of[s.Method], s)
	}
	alike := func(a, b desk.StartView) bool { return a.Cover == b.Cover && slices.Equal(a.Spells, b.Spells) }
	for i, method := range methods {
		for _, first := range methods[:i] {
			if out[method] == "" && out[first] == "" && slices.EqualFunc(of[first], of[method], alike) {
				out[method] = first
			}
		}
	}
	return out
}

// sameCovers lists, by way of starting and cover, the covers that make no odds.
func sameCovers(y *desk.CropYear) map[string][]string {
	out := map[string][]string{}
	for i := range y.Starts {
		if s := &y.Starts[i]; s.Same != "" {
			out[s.Method+"/"+s.Same] = append(out[s.Method+"/"+s.Same], s.Cover)
		}
	}
	return out
}

func (v *visit) methodName(method string) string { return v.named("web.crop_start_", method) }

func (v *visit) coverName(kind string) string {
	if kind == "open" {
		return v.say("web.crop_open", nil)
	}
	return v.say("web.crop_under", words.Args{"cover": v.named("desk.value_covers.kind.", kind)})
}

func (v *visit) strip(view *desk.CropView, y *desk.CropYear, s *desk.StartView, same []string) stripBody {
	b := stripBody{Cover: v.coverName(s.Cover), Sentences: v.spellWords(y, s)}
	if len(same) > 0 {
		names := make([]string, len(same))
		for i, kind := range same {
			names[i] = v.named("desk.value_covers.kind.", kind)
		}
		b.Same = v.say("web.spell_same", words.Args{"covers": names})
	}
	label := v.say("web.crop_start_label", words.Args{"cover": b.Cover, "text": plainText(strings.Join(b.Sentences, " "))})
	b.Draw = v.yearDraw(y, s, view.Today, yearWidth, label)
	b.DrawPhone = v.yearDraw(y, s, view.Today, yearWidthPhone, label)
	return b
}

// spellWords say from when until when, and when that is ready.
func (v *visit) spellWords(y *desk.CropYear, s *desk.StartView) []string {
	if len(s.Spells) == 0 {
		return []string{v.say("web.spell_never", words.Args{"best": s.Best, "day": dayOf(s.BestOn)})}
	}
	var out []string
	for i := range s.Spells {
		w := &s.Spells[i]
		args := words.Args{"first": dayOf(w.First), "last": dayOf(w.Last), "from": words.Third(w.ReadyFrom), "to": words.Third(w.ReadyTo), "chance": w.Chance}
		key := "web.spell_"
		switch {
		case w.AllYear():
			key = "web.spell_all_"
		case y.Pattern == crop.Perennial:
			key = "web.spell_standing_"
		}
		says := v.say(key+s.Method, args)
		if key == "web.spell_" && w.ReadyFrom-w.First > wholeYear {
			says += " " + v.say("web.spell_slow", nil)
		}
		out = append(out, says)
	}
	if s.Best < y.Wanted {
		out = append(out, v.say("web.spell_below", words.Args{"wanted": y.Wanted}))
	}
	return out
}

// wholeYear is the days after which a harvest comes in another year.
const wholeYear = 365

// dayOf is a day of any year.
func dayOf(d cal.Date) cal.MonthDay {
	_, month, day := d.YMD()
	return cal.MonthDay{Month: month, Day: day}
}

func (v *visit) twinRows(s *desk.StartView) []twinRow {
	f := v.words.Format()
	row := twinRow{Method: v.methodName(s.Method), Cover: v.coverName(s.Cover)}
	if len(s.Spells) == 0 {
		row.From, row.Odds = v.say("web.twin_none", words.Args{"day": dayOf(s.BestOn)}), f.Percent(s.Best)
		return []twinRow{row}
	}
	var out []twinRow
	for _, w := range s.Spells {
		row.From, row.To, row.Ready, row.ReadyTo, row.Odds = f.Day(w.First), f.Day(w.Last), f.Day(w.ReadyFrom), f.Day(w.ReadyTo), f.Percent(w.Chance)
		out = append(out, row)
	}
	return out
}

func yearScale(y *desk.CropYear, method string, width float64) draw.Scale {
	return draw.Scale{From: y.From, Days: int(y.End(method) - y.From), WidthPX: width}
}

// yearAxis draws the months; where they are narrow, by their first letters.
func (v *visit) yearAxis(y *desk.CropYear, method string, today cal.Date, width float64) string {
	t := v.axisTexts(v.say("web.axis_today", nil), false)
	t.Year = nil
	if width/float64(y.Months(method)) < narrowMonth {
		for i, name := range t.Months {
			t.Months[i] = string([]rune(plainText(name))[:1])
		}
	}
	return draw.Axis(yearScale(y, method, width), today, nil, t)
}

// narrowMonth is the width under which a month is named by its first letter [px].
const narrowMonth = 28

func (v *visit) yearDraw(y *desk.CropYear, s *desk.StartView, today cal.Date, width float64, label string) string {
	return draw.Year(s, yearScale(y, s.Method, width), draw.YearOptions{HeightPX: yearHeight, Label: label, Today: today, Wanted: y.Wanted,
		Day: v.words.Format().Day, AllYear: v.say("web.spell_all_year", nil), Ready: y.Pattern != crop.Perennial})
}

// Sizes of the drawing of yields by age [px].
const (
	agesWidth  = 350.0
	agesHeight = 64.0
)

func (v *visit) agesDraw(shares []float64, label string) string {
	return draw.Ages(shares, draw.AgesOptions{WidthPX: agesWidth, HeightPX: agesHeight, Label: label, Share: v.words.Format().Percent,
		Season: func(k int) string { return v.say("web.ages_short_"+whole(k), nil) }})
}

func whole(n int) string { return strconv.Itoa(n) }
