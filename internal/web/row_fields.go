package web

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// The kinds of field.
const (
	kindText     = "text"
	kindNumber   = "number"
	kindDate     = "date"
	kindMonthDay = "monthday"
	kindChoice   = "choice"
	kindChecks   = "checks" // any of a list, parted by semicolons in the file
)

// fieldBody is a field as it is shown: with what was typed, and what is wrong
// with it.
type fieldBody struct {
	Name    string
	Label   string
	Hint    string
	Kind    string
	Value   string
	Unit    string
	Must    bool
	More    bool
	Wide    bool
	Options []option
	Faults  []words.Phrase
}

// fieldsOf shows the fields of a form with values by column or field.
func (v *visit) fieldsOf(f *rowForm, c *choosing, values map[string]string, faults fault.List) ([]fieldBody, error) {
	columns, err := v.columns(f.table)
	if err != nil {
		return nil, err
	}
	out := make([]fieldBody, len(f.fields))
	for i := range f.fields {
		spec := &f.fields[i]
		if out[i], err = v.fieldOf(f, spec, columns[spec.column()], c, values); err != nil {
			return nil, err
		}
		for _, e := range faults {
			if spec.standsFor(e.At.Column) {
				out[i].Faults = append(out[i].Faults, v.faultOf(&out[i], e.Phrase))
			}
		}
	}
	return out, nil
}

// faultOf is what is wrong with a field. What a file would say there, often an id,
// is no help where one of a list is chosen.
func (v *visit) faultOf(f *fieldBody, said words.Phrase) words.Phrase {
	if f.Kind == kindChoice && f.Value == "" && said.Key == "exchange.blank" {
		return words.P("web.choose_one", nil)
	}
	return said
}

// columns describes the columns of a table by name.
func (v *visit) columns(table string) (map[string]*desk.ColumnView, error) {
	list, err := v.office.Columns(table)
	columns := make(map[string]*desk.ColumnView, len(list))
	for i := range list {
		columns[list[i].Name] = &list[i]
	}
	return columns, err
}

// column is the first column that a field stands for.
func (f *fieldForm) column() string {
	if len(f.columns) > 0 {
		return f.columns[0]
	}
	return f.name
}

func (v *visit) fieldOf(f *rowForm, spec *fieldForm, column *desk.ColumnView, c *choosing, values map[string]string) (fieldBody, error) {
	b := fieldBody{Name: spec.name, Label: v.sentence(column.Label), Kind: kindOf(spec, column), Unit: column.Unit,
		Must: column.Required, More: spec.more, Wide: spec.wide}
	if key := "web.label_" + f.table + "." + spec.name; v.words.Has(key) {
		b.Label = v.say(key, nil)
	}
	if key := "web.hint_" + f.table + "." + spec.name; v.words.Has(key) {
		b.Hint = v.say(key, nil)
	}
	if f.table == "crops" && spec.name == "value" {
		b.Kind, b.Unit = kindNumber, values["unit"] // each number has a unit of its own
	}
	if b.Kind == kindChoice || !v.words.Has(unitTexts+unitKey(b.Unit)) {
		b.Unit = ""
	} else {
		b.Unit = v.say(unitTexts+unitKey(b.Unit), nil)
	}
	b.Value = v.valueOf(spec, b.Kind, values)
	if b.Value == "" && !b.Must {
		b.Value = column.Default
	}
	var err error
	switch {
	case spec.choices != nil:
		b.Options, err = spec.choices(c)
	case b.Kind == kindChoice:
		b.Options, err = c.choicesOf(column)
	}
	if b.Kind != kindChecks {
		b.Options = withChosen(b.Options, b.Value)
	}
	return b, err
}

// unitTexts is where the texts of units begin in the catalogue.
const unitTexts = "web.unit_"

func unitKey(unit string) string { return strings.ReplaceAll(unit, " ", "_") }

// kindOf tells how a column is asked for.
func kindOf(spec *fieldForm, column *desk.ColumnView) string {
	switch {
	case spec.several:
		return kindChecks
	case spec.choices != nil || len(column.Values) > 0 || column.PointsTo != "":
		return kindChoice
	case column.Type == "date":
		return kindDate
	case column.Type == "day":
		return kindMonthDay
	case column.Type == "number" || column.Type == "integer":
		return kindNumber
	}
	return kindText
}

// listMark parts the values of a cell that holds several.
const listMark = ";"

// Has tells whether a value is among those of a field that may have several.
func (f *fieldBody) Has(value string) bool {
	for _, v := range strings.Split(f.Value, listMark) {
		if strings.TrimSpace(v) == value {
			return true
		}
	}
	return false
}

// standsFor tells whether a field asks for a column.
func (f *fieldForm) standsFor(column string) bool {
	return column != "" && (f.name == column || slices.Contains(f.columns, column))
}

// withChosen makes sure that what stands in a row can be chosen, so that nothing
// is lost by a list that does not know it.
func withChosen(options []option, value string) []option {
	if value == "" || len(options) == 0 || slices.ContainsFunc(options, func(o option) bool { return o.Value == value }) {
		return options
	}
	return append(options, option{value, value})
}

// valueOf is what a field shows: what was typed, or the row's cell as people
// write it.
func (v *visit) valueOf(f *fieldForm, kind string, values map[string]string) string {
	if len(f.columns) == 0 {
		if kind == kindMonthDay {
			return v.monthDayText(values[f.name])
		}
		return values[f.name]
	}
	if values[f.columns[0]] == "" {
		return values[f.name]
	}
	parts := make([]string, len(f.columns))
	for i, c := range f.columns {
		parts[i] = values[c]
	}
	return strings.Join(parts, "/")
}

// monthDayText writes 06-20 as people do; anything else stays as typed.
func (v *visit) monthDayText(cell string) string {
	d, err := cal.ParseMonthDay(cell)
	if err != nil || cell == "" {
		return cell
	}
	return strings.ReplaceAll(v.words.Format().MonthDay(d), noBreak, " ")
}

// cellsOf reads what was posted into cells as they are written in the files.
func (v *visit) cellsOf(f *rowForm) (map[string]string, error) {
	columns, err := v.columns(f.table)
	if err != nil {
		return nil, err
	}
	cells := map[string]string{}
	for _, spec := range f.fields {
		typed := strings.TrimSpace(v.field(spec.name))
		switch {
		case len(spec.columns) > 0:
			parts := strings.SplitN(typed, "/", len(spec.columns))
			for i, c := range spec.columns {
				cells[c] = ""
				if i < len(parts) {
					cells[c] = parts[i]
				}
			}
		case spec.several:
			cells[spec.name] = strings.Join(v.r.PostForm[spec.name], listMark+" ")
		case kindOf(&spec, columns[spec.column()]) == kindMonthDay:
			cells[spec.name] = v.monthDayCell(typed)
		default:
			cells[spec.name] = typed
		}
	}
	for _, name := range f.carried {
		cells[name] = v.field(name)
	}
	return cells, nil
}

// monthDayCell reads a day of any year as people write it, "20 June" or
// "June 20", into 06-20. What cannot be read stays as typed.
func (v *visit) monthDayCell(typed string) string {
	day, month := 0, 0
	for _, part := range strings.FieldsFunc(strings.ToLower(typed), func(r rune) bool { return r == ' ' || r == '.' || r == ',' || r == '\u00a0' }) {
		if n, err := strconv.Atoi(part); err == nil {
			day = n
			continue
		}
		for m := 1; m <= 12; m++ {
			if len([]rune(part)) >= 3 && strings.HasPrefix(strings.ToLower(v.words.Format().Month(m)), part) {
				month = m
			}
		}
	}
	if month == 0 || day < 1 || day > 31 {
		return typed
	}
	written := cal.MonthDay{Month: month, Day: day}.String()
	if _, err := cal.ParseMonthDay(written); err != nil {
		return typed // there is no such day
	}
	return written
}
