package web

import (
	"strconv"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// keepBody is the part of a planting's page about leaving it or clearing it.
type keepBody struct {
	Says            string
	Draw, DrawPhone string
	Weeks           []keepRow
	Clear           *keepForm // nil where it is cleared then anyway
	Next            string    // the address of what could follow; empty: nothing is worth it
	NextSays        string
	Coming          string // the page's own address while it is being worked out
}

// keepRow is clearing in one week, in figures.
type keepRow struct {
	desk.ClearWeek
	Best bool
}

// keepForm clears it on the best day.
type keepForm struct {
	Path, Text string
	Hidden     []hiddenField
}

// Sizes of the drawing [px].
const (
	keepWidth      = 640.0
	keepWidthPhone = 358.0
	keepHeight     = 120.0
)

// keepOrClear tells of a planting that stands; nil of one that does not.
func (v *visit) keepOrClear(id string, tried []plan.Change) (*keepBody, error) {
	view, err := v.office.KeepOrClearViewWithin(id, tried, yearPatience)
	switch {
	case fault.KindOf(err) == fault.Invalid || fault.KindOf(err) == fault.NotFound:
		return nil, nil // it does not stand
	case err != nil:
		return nil, err
	case view == nil:
		return &keepBody{Coming: v.here()}, nil
	}
	b := &keepBody{Says: v.words.Text(view.Says), Draw: v.keepDraw(view, keepWidth), DrawPhone: v.keepDraw(view, keepWidthPhone)}
	if len(view.Weeks) == 1 {
		b.Draw, b.DrawPhone = "", ""
	}
	for k, w := range view.Weeks {
		b.Weeks = append(b.Weeks, keepRow{w, k == view.Best})
	}
	best := &view.Weeks[view.Best]
	if view.Next != nil {
		b.Next = bedPath(view.Bed) + "/next?from=" + best.NextDate.String() + "&area=" + strconv.FormatFloat(view.AreaM2, 'f', -1, 64)
		if view.Until.IsSet() {
			b.Next += "&until=" + view.Until.String()
		}
		b.NextSays = v.words.Text(view.Next.Reason)
	}
	if view.Next != nil || view.Best < len(view.Weeks)-1 {
		b.Clear, err = v.clearForm(view, best.Clear, len(tried) > 0)
	}
	return b, err
}

// clearForm offers to clear it on the best day, where that is not the plan already.
func (v *visit) clearForm(view *desk.KeepOrClearView, day cal.Date, tried bool) (*keepForm, error) {
	row, err := v.office.Row("plantings", view.Planting)
	if err != nil || tried || row.Cells["clear_by"] == day.String() {
		return nil, nil // of a draft, or planned so
	}
	entry, err := v.entry()
	return &keepForm{Path: plantingPath(view.Planting) + "/clear", Text: v.say("web.keep_clear", words.Args{"date": words.Sharp(day, view.Today)}),
		Hidden: []hiddenField{{"entry", entry}, {"base", strconv.FormatInt(row.Version, 10)}, {"clear_by", day.String()}}}, err
}

func (v *visit) keepDraw(view *desk.KeepOrClearView, width float64) string {
	f := v.words.Format()
	return draw.Keep(view, draw.KeepScale(view, width), draw.KeepOptions{HeightPX: keepHeight,
		Label: v.say("web.keep_label", words.Args{"name": view.Name, "text": v.words.Text(view.Says)}),
		Texts: v.axisTexts("", false), Gives: v.say("web.keep_gives", nil), Follows: v.say("web.keep_follows", nil),
		Best:   v.say("web.keep_best", words.Args{"date": words.Sharp(view.Weeks[view.Best].Clear, view.Today)}),
		Figure: f.KilogramsTold})
}

// clearThen gives a planting the day by which its ground must be free.
func clearThen(v *visit) error {
	id := v.r.PathValue("id")
	day, err := cal.Parse(v.field("clear_by"))
	if err != nil {
		return formUnreadable()
	}
	base, err := v.base()
	if err != nil {
		return err
	}
	kept, err := v.office.ClearBy(v.author(), id, day, base)
	if err != nil {
		return err
	}
	v.kept(kept, plantingPath(id))
	return nil
}
