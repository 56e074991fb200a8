package web

import (
	"net/http"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// What became of a planting, as the last part of its page's address.
const (
	lossLost    = "lost"
	lossFailing = "failing"
	lossMove    = "move"
)

// lossBody is a page on which something that went wrong is told.
type lossBody struct {
	Kind, Name string
	Path, Back string
	Ways       []lossWay
	Hidden     []hiddenField
	Fields     []fieldBody // asked for after how much and why, and listed when they are wrong
	Plants     fieldBody
	Date       fieldBody
	Shares     []option
	Share      string
	Causes     []option
	Why        string
	HasWhy     bool
	Wrong      int
	Faults     []words.Phrase // those of no field
	Mind       []lossMind
	Warn       string
}

// lossWay is one of the things that can have become of a planting.
type lossWay struct {
	Name, Path string
	Here       bool
}

// lossMind is what to mind for one cause.
type lossMind struct {
	Title string // empty: whatever the cause
	Lines []lossLine
}

// lossLine is a caution with where it was read.
type lossLine struct{ Text, Source string }

// lossTyped is what was typed into the form, by field.
type lossTyped map[string]string

// lossForm shows the form with what is likely: today, and all of it.
func (v *visit) lossForm(kind string) error {
	view, err := v.office.LossView(v.r.PathValue("id"))
	if err != nil {
		return err
	}
	typed := lossTyped{"date": view.Today.String(), "share": "1"}
	if kind == lossMove {
		typed["area_m2"] = plainNumber(view.AreaM2)
	}
	return v.showLoss(kind, view, typed, nil)
}

// lossPosted writes what was told, or shows it again with what is wrong.
func (v *visit) lossPosted(kind string) error {
	id := v.r.PathValue("id")
	typed := lossTyped{}
	for _, name := range []string{"date", "share", "plants", "why", "kg", "store", "plants_kept", "bed", "area_m2"} {
		typed[name] = strings.TrimSpace(v.field(name))
	}
	kept, err := v.writeLoss(kind, id, typed)
	if err == nil {
		v.kept(kept, plantingPath(id)+"/hole?entry="+kept.ID)
		return nil
	}
	faults := listOf(err)
	if faults == nil {
		return err
	}
	view, err := v.office.LossView(id)
	if err != nil {
		return err
	}
	return v.showLoss(kind, view, typed, faults)
}

// writeLoss makes the entry of a form.
func (v *visit) writeLoss(kind, id string, typed lossTyped) (*desk.KeptEntry, error) {
	r := lossReader{typed: typed}
	date := r.date("date")
	if kind == lossMove {
		m := desk.Move{Planting: id, On: date, Bed: typed["bed"], AreaM2: r.number("area_m2")}
		if len(r.faults) > 0 {
			return nil, r.faults
		}
		return v.office.Move(v.author(), m)
	}
	lost := desk.Lost{Planting: id, On: date, Why: typed["why"]}
	if lost.Plants = r.number("plants"); typed["plants"] == "" {
		lost.Share = r.number("share")
	}
	saved := desk.Failing{Lost: lost, PickedKg: r.number("kg"), Store: typed["store"], KeptPlants: r.number("plants_kept")}
	switch {
	case len(r.faults) > 0:
		return nil, r.faults
	case kind == lossFailing:
		return v.office.MarkFailing(v.author(), saved)
	}
	return v.office.MarkLost(v.author(), lost)
}

// lossReader reads what was typed and gathers what cannot be read.
type lossReader struct {
	typed  lossTyped
	faults fault.List
}

func (r *lossReader) date(name string) cal.Date {
	d, err := cal.Parse(r.typed[name])
	if err != nil {
		r.wrong(name, "desk.lost_no_day")
		return cal.None
	}
	return d
}

// number reads a number of nought or more, nought when nothing was typed.
func (r *lossReader) number(name string) float64 {
	text := r.typed[name]
	if text == "" {
		return 0
	}
	x, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(x >= 0 && x <= mostNumber) {
		r.wrong(name, "web.loss_number")
		return 0
	}
	return x
}

// mostNumber is the most of anything that the tables take.
const mostNumber = 1e6

func (r *lossReader) wrong(name, key string) {
	r.faults = append(r.faults, fault.New(fault.Invalid, key, nil).In(fault.Place{Column: name}))
}

// showLoss shows the form with what was typed and what is wrong with it.
func (v *visit) showLoss(kind string, view *desk.LossView, typed lossTyped, faults fault.List) error {
	b := &lossBody{Kind: kind, Name: capital(view.Name), Path: plantingPath(view.Planting) + "/" + kind, Back: plantingPath(view.Planting),
		Share: typed["share"], Why: typed["why"], HasWhy: kind != lossMove, Wrong: len(faults)}
	for _, way := range []string{lossLost, lossFailing, lossMove} {
		b.Ways = append(b.Ways, lossWay{v.named("web.loss_way_", way), plantingPath(view.Planting) + "/" + way, way == kind})
	}
	if err := v.fillLoss(b, view, typed); err != nil {
		return err
	}
	b.place(faults)
	entry := v.field("entry")
	if entry == "" {
		var err error
		if entry, err = v.entry(); err != nil {
			return err
		}
	}
	b.Hidden = []hiddenField{{"entry", entry}}
	status := http.StatusOK
	if b.Wrong > 0 {
		status = http.StatusUnprocessableEntity
	}
	return v.show(page{Name: "loss", Nav: "plantings", Status: status, Body: b})
}

// place brings faults to their fields.
func (b *lossBody) place(faults fault.List) {
	fields := []*fieldBody{&b.Date, &b.Plants}
	for i := range b.Fields {
		fields = append(fields, &b.Fields[i])
	}
	for _, e := range faults {
		placed := false
		for _, f := range fields {
			if f.Name == e.At.Column {
				f.Faults = append(f.Faults, e.Phrase)
				placed = true
			}
		}
		if !placed {
			b.Faults = append(b.Faults, e.Phrase)
		}
	}
}
