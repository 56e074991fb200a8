package web

import (
	"math"
	"strconv"

	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// Heights of ribbons [px].
const (
	rowHeight     = 20.0
	crowdedHeight = 14.0
	shareHeight   = 26.0
)

// axisTexts are the words of a time axis, with months named in short or in full.
func (v *visit) axisTexts(todayWords string, full bool) draw.AxisTexts {
	f := v.words.Format()
	t := draw.AxisTexts{Label: v.say("web.axis_label", nil), Today: todayWords,
		Year: func(year int) string { return v.say("web.axis_year", words.Args{"year": strconv.Itoa(year)}) },
		Daylight: func(hours float64) string {
			return v.say("web.axis_daylight", words.Args{"hours": v.clock(hours)})
		},
		Hours: v.clock}
	for m := range t.Months {
		t.Months[m] = f.ShortMonth(m + 1)
		if full {
			t.Months[m] = f.Month(m + 1)
		}
	}
	return t
}

// clock tells hours as hours and minutes, to ten minutes.
func (v *visit) clock(hours float64) string {
	tens := int(math.Round(hours * 6))
	if tens%6 == 0 {
		return v.say("web.axis_hours_whole", words.Args{"hours": tens / 6})
	}
	return v.say("web.axis_hours", words.Args{"hours": tens / 6, "minutes": tens % 6 * 10})
}

// axes draws the time along the top, for a desk and for a phone.
func (v *visit) axes(view *desk.TableView) (wide, phone string) {
	s := draw.Weeks(view.From, view.Weeks)
	full := v.say("web.axis_today_date", words.Args{"date": planned(view.Today, view.Today)})
	wide = draw.Axis(s, view.Today, view.Daylight, v.axisTexts(full, false))
	s.WidthPX = draw.PhoneWeekPX * float64(view.Weeks)
	phone = draw.AxisPhone(s, view.Today, view.Daylight, v.axisTexts(v.say("web.axis_today", nil), true))
	return wide, phone
}

// ribbonWords name the kinds of food.
func (v *visit) ribbonWords() draw.RibbonWords {
	return draw.RibbonWords{Ground: v.say("web.ribbon_ground", nil), Store: v.say("web.ribbon_store", nil), Bought: v.say("web.ribbon_bought", nil),
		Short: v.say("web.ribbon_short", nil), Spare: v.say("web.ribbon_spare", nil)}
}

// rowRibbons draws the ribbons of the rows. The kinds are named once on the page.
func (v *visit) rowRibbons(view *desk.TableView, rows []*desk.RibbonView, before map[string]*desk.RibbonView, crowded bool) []string {
	s := draw.Weeks(view.From, view.Weeks)
	height := rowHeight
	if crowded {
		height = crowdedHeight
	}
	named := make([]draw.RibbonWords, len(rows))
	if !crowded {
		named = draw.ShareOut(rows, s, v.ribbonWords(), height)
	}
	out := make([]string, len(rows))
	for i, r := range rows {
		out[i] = draw.Ribbon(r, s, draw.RibbonOptions{HeightPX: height, Label: v.ribbonLabel(view, r), Today: view.Today,
			Words: named[i], Small: crowded, Months: true, Before: before[r.Name]})
	}
	return out
}

// ribbonLabel says in text what a ribbon shows.
func (v *visit) ribbonLabel(view *desk.TableView, r *desk.RibbonView) string {
	first, more := rowWords(r, view.Today)
	text := v.sentence(first)
	if more != nil {
		text += v.words.Text(*more)
	}
	return v.say("web.ribbon_label", words.Args{"name": capital(r.Plural), "text": plainText(text)})
}

// shareRibbon draws the bottom line.
func (v *visit) shareRibbon(view *desk.TableView) string {
	percent := v.words.Format().Percent(view.ThinShare)
	return draw.Share(&view.Share, draw.Weeks(view.From, view.Weeks), draw.ShareOptions{HeightPX: shareHeight, Today: view.Today,
		Label: v.say("web.table_share_label", words.Args{"text": v.say("web.table_share_now", shareWords(view)) + v.say("web.table_share_later", shareWords(view))}), Thinnest: view.Thinnest, ThinText: percent, Months: true})
}

// shareWords are the values of the sentence about the whole table.
func shareWords(view *desk.TableView) words.Args {
	return words.Args{"now": view.ShareNow, "thin": view.ThinShare, "first": words.Sharp(view.Thinnest, view.Today),
		"poor": view.ThinPoor, "good": view.ThinGood}
}
