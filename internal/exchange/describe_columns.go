package exchange

import "slices"

// Column says what a column of a table holds.
type Column struct {
	Name        string
	Type        string // string, number, integer, date; day for a day of any year (MM-DD)
	Unit        string
	Required    bool
	Default     string   // taken when the cell is blank
	Values      []string // the closed list, when there is one
	Least, Most any      // bounds as float64, or dates as text; nil: none
	PointsTo    string   // the table whose ids it holds, when it is checked
}

// ColumnsOf describes the columns of a table in their order; nil when there is
// no such table.
func ColumnsOf(name string) []Column {
	s := tableNamed(name)
	if s == nil {
		return nil
	}
	out := make([]Column, len(s.Fields))
	for i := range s.Fields {
		f := &s.Fields[i]
		out[i] = Column{Name: f.Name, Type: f.Type, Unit: f.Unit, Required: f.required(), Default: f.Default,
			Values: slices.Clone(f.Constraints.Enum), Least: f.Constraints.Minimum, Most: f.Constraints.Maximum, PointsTo: s.pointsTo(f.Name)}
		if f.pattern != nil && f.patternKey() == "exchange.not_a_day" {
			out[i].Type = "day"
		}
	}
	return out
}

// pointsTo is the table a column points at, nothing when it points at none.
func (t *tableSchema) pointsTo(column string) string {
	if plantingColumns[t.Name] == column {
		return "plantings"
	}
	for _, key := range t.ForeignKeys {
		if key.Fields != column {
			continue
		}
		if key.Reference.Resource == "" {
			return t.Name
		}
		return key.Reference.Resource
	}
	return ""
}
