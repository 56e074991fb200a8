package web

import (
	"net/http"

	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// tendBody is the part of a bed's page about its ground and covers, with the
// small forms that record what is done there.
type tendBody struct {
	*desk.BedView
	Soil, Disease *smallForm
	Rotation      *smallForm
	Lies          []tendCover
	SoilKinds     []string
}

// tendCover is a cover with the form that takes it off for a while.
type tendCover struct {
	desk.BedCover
	Name string // with its sides and holes
	Says words.Phrase
	Path string
	Off  *smallForm // nil when it came off before today
}

// smallForm is a form of a few fields on a page with others.
type smallForm struct {
	ID     string
	Path   string
	Hidden []hiddenField
	Fields []fieldBody
	Wrong  int
	Faults []words.Phrase // those of no field
}

// typedForm is a form that was sent and could not be taken: it is shown again
// with what was typed and what is wrong.
type typedForm struct {
	id     string
	values map[string]string
	faults fault.List
}

// tend gathers the ground and covers of a bed.
func (v *visit) tend(bed string, typed typedForm) (*tendBody, error) {
	view, err := v.office.BedView(bed)
	if err != nil {
		return nil, err
	}
	b := &tendBody{BedView: view, SoilKinds: soilKinds}
	path := bedPath(bed)
	today := view.Today.String()
	if b.Soil, err = v.small("soil", path+"/soil", typed, []fieldBody{
		{Name: "date", Label: v.say("web.tend_date", nil), Kind: kindDate, Value: today, Must: true},
		{Name: "value", Label: v.say("web.tend_amount", nil), Kind: kindNumber},
		{Name: "unit", Label: v.say("web.tend_unit", nil), Kind: kindChoice, Value: "barrows", Must: true, Options: v.tendUnits()},
	}); err != nil {
		return nil, err
	}
	if b.Disease, err = v.small("disease", path+"/disease", typed, []fieldBody{
		{Name: "problem", Label: v.say("web.tend_problem", nil), Kind: kindChoice, Must: true, Wide: true, Options: problemOptions()},
		{Name: "date", Label: v.say("web.tend_seen_on", nil), Kind: kindDate, Value: today, Must: true},
		{Name: "note", Label: v.say("web.tend_note", nil), Kind: kindText},
	}); err != nil {
		return nil, err
	}
	if b.Rotation, err = v.small("rotation", path+"/rotation", typed, nil, hiddenField{"base", number(view.Version)}); err != nil {
		return nil, err
	}
	for _, c := range view.Covers {
		line, err := v.tendCover(c, view, typed)
		if err != nil {
			return nil, err
		}
		b.Lies = append(b.Lies, line)
	}
	return b, nil
}

// small makes a form; when it is the one that was sent, with what was typed.
func (v *visit) small(id, path string, typed typedForm, fields []fieldBody, hidden ...hiddenField) (*smallForm, error) {
	entry, err := v.entry()
	f := &smallForm{ID: id, Path: path, Hidden: append([]hiddenField{{"entry", entry}}, hidden...), Fields: fields}
	placed := map[string]bool{}
	for i := range f.Fields {
		own := &f.Fields[i]
		column := own.Name
		placed[column] = true
		own.Name = id + "-" + column
		if typed.id != id {
			continue
		}
		own.Value = typed.values[column]
		for _, e := range typed.faults {
			if e.At.Column == column {
				own.Faults = append(own.Faults, e.Phrase)
			}
		}
	}
	if typed.id == id {
		f.Wrong = len(typed.faults)
		for _, e := range typed.faults {
			if !placed[e.At.Column] {
				f.Faults = append(f.Faults, e.Phrase)
			}
		}
	}
	return f, err
}

// sent reads what was typed into a small form, by column.
func (v *visit) sent(id string, columns ...string) map[string]string {
	values := map[string]string{}
	for _, c := range columns {
		values[c] = v.field(id + "-" + c)
	}
	return values
}

func (v *visit) tendUnits() []option {
	var out []option
	for _, unit := range []string{"barrows", "L", "kg"} {
		out = append(out, option{unit, v.say("web.tend_unit_"+unit, nil)})
	}
	return out
}

func problemOptions() []option {
	var out []option
	for _, p := range desk.Problems() {
		out = append(out, option{p.ID, capital(p.Name)})
	}
	return out
}

// tendCover tells of a cover.
func (v *visit) tendCover(c desk.BedCover, view *desk.BedView, typed typedForm) (tendCover, error) {
	line := v.coverLine(c.CoverSpell)
	t := tendCover{BedCover: c, Name: line.Name, Says: line.Says, Path: line.Path}
	if c.Sides == cover.OpenSided && cover.CanOpen(c.Kind) {
		t.Name = v.say("web.tend_open_sides", words.Args{"cover": t.Name})
	}
	if mm, keeps := c.Barrier(); keeps && c.Kind != cover.Fleece {
		t.Name = v.say("web.tend_holes", words.Args{"cover": t.Name, "mm": mm})
	}
	if c.Past || c.House() {
		return t, nil
	}
	day := max(view.Today, c.On+1)
	var err error
	t.Off, err = v.small("off-"+c.ID, "/covers/"+pathEscaped(c.ID)+"/off", typed, []fieldBody{
		{Name: "off", Label: v.say("web.tend_off", nil), Kind: kindDate, Value: day.String(), Must: true},
		{Name: "on", Label: v.say("web.tend_on_again", nil), Kind: kindDate},
	}, hiddenField{"base", number(c.Version)})
	return t, err
}

// again shows a bed's page again with what is wrong in one of its forms.
func (v *visit) again(bed string, typed typedForm) error {
	return v.showBed(bed, typed, http.StatusUnprocessableEntity)
}
