package exchange

import "slices"

// Pointer is a column whose cells are ids of another table's rows.
type Pointer struct {
	Table, Column string
	Required      bool     // a row cannot be without it
	With          []string // columns that are blank when it is
}

// Pointers are the columns that point at the rows of a table.
func Pointers(to string) []Pointer {
	var out []Pointer
	for i := range schemas.Tables {
		t := &schemas.Tables[i]
		for _, key := range t.ForeignKeys {
			if key.Reference.Resource == to || key.Reference.Resource == "" && t.Name == to {
				out = append(out, t.pointer(key.Fields))
			}
		}
		if to == "plantings" && t.column(plantingColumns[t.Name]) >= 0 {
			out = append(out, t.pointer(plantingColumns[t.Name]))
		}
	}
	return out
}

// plantingColumns point at plantings, which may be those a draft adds and so are
// no foreign keys.
var plantingColumns = map[string]string{"plantings": "to", "changes": "planting", "wishes": "planting", "own_jobs": "planting", "batches": "planting", "records": "planting"}

func (t *tableSchema) pointer(column string) Pointer {
	p := Pointer{Table: t.Name, Column: column, Required: t.Fields[t.column(column)].required() || slices.Contains(t.GoesWith, column)}
	for _, pair := range t.Together {
		if slices.Contains(pair[:], column) {
			p.With = pair[:]
		}
	}
	return p
}
