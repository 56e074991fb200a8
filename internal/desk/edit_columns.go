package desk

import (
	"strings"

	"garner/internal/exchange"
	"garner/internal/words"
)

// ColumnView describes a column of a table for a form.
type ColumnView struct {
	Name        string
	Type        string       // string, number, integer, date; day for a day of any year (MM-DD)
	Unit        string       // as in the files: m, m2, C, kg
	Required    bool         // must be filled
	Default     string       // what a blank cell means
	Least, Most any          // bounds as float64, or dates as text; nil: none
	PointsTo    string       // the table whose ids it takes
	Values      []ValueView  // the closed list, when there is one
	Label       words.Phrase // a few words
}

// ValueView is one value of a closed list and what it means.
type ValueView struct {
	Value   string
	Meaning words.Phrase
}

// Columns describes the columns of a table in their order.
func (o *Office) Columns(table string) ([]ColumnView, error) {
	if _, err := columnsOf(table); err != nil {
		return nil, err
	}
	columns := exchange.ColumnsOf(table)
	out := make([]ColumnView, len(columns))
	for i, c := range columns {
		out[i] = ColumnView{Name: c.Name, Type: c.Type, Unit: c.Unit, Required: c.Required, Default: c.Default,
			Least: c.Least, Most: c.Most, PointsTo: c.PointsTo, Label: words.P("desk.column_"+table+"."+c.Name, nil)}
		for _, v := range c.Values {
			out[i].Values = append(out[i].Values, ValueView{v, valueName(table, c.Name, v)})
		}
	}
	return out, nil
}

// valueName says what a value of a closed list means.
func valueName(table, column, value string) words.Phrase {
	return words.P("desk.value_"+table+"."+column+"."+strings.ReplaceAll(slug(value), "-", "_"), nil)
}

// ValueName says what a value of a closed list means.
func ValueName(table, column, value string) words.Phrase { return valueName(table, column, value) }
