package exchange

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"regexp"

	"garner/internal/words"
)

//go:embed data/tables.json
var tablesJSON []byte

// definition is the whole of data/tables.json.
type definition struct {
	Tables       []tableSchema `json:"tables"`
	WeatherFiles []tableSchema `json:"weatherFiles"`
}

// tableSchema says what one table holds.
type tableSchema struct {
	Name        string       `json:"name"`
	Title       string       `json:"title"`
	Description string       `json:"description"`
	Required    bool         `json:"required"` // a holding cannot be without it
	OneRow      bool         `json:"oneRow"`   // exactly one row
	Fields      []field      `json:"fields"`
	PrimaryKey  string       `json:"primaryKey"`
	Together    [][2]string  `json:"together"` // pairs of columns that are both filled or both blank
	OneOf       [][2]string  `json:"oneOf"`    // pairs of columns of which exactly one is filled
	GoesWith    []string     `json:"goesWith"` // columns whose row goes when what they name goes, though they may be blank
	ForeignKeys []foreignKey `json:"foreignKeys"`
}

// field is one column. Unit and Default are our own additions to Table Schema,
// which allows them.
type field struct {
	Name        string       `json:"name"`
	Type        string       `json:"type"` // string, number, integer, date
	Description string       `json:"description"`
	Unit        string       `json:"unit"`
	Default     string       `json:"default"` // taken when the cell is blank
	Values      []value      `json:"values"`  // the closed list, when there is one
	Constraints *constraints `json:"constraints"`

	table   string // of the holding; empty: a weather file's
	pattern *regexp.Regexp
}

// value is one entry of a closed list.
type value struct {
	Value   string `json:"value"`
	Meaning string `json:"meaning"`
}

// constraints are those of Table Schema that we use; minimum and maximum are
// numbers, or dates as text.
type constraints struct {
	Required bool     `json:"required,omitempty"`
	Unique   bool     `json:"unique,omitempty"`
	Pattern  string   `json:"pattern,omitempty"`
	Enum     []string `json:"enum,omitempty"`
	Minimum  any      `json:"minimum,omitempty"`
	Maximum  any      `json:"maximum,omitempty"`
}

type foreignKey struct {
	Fields    string    `json:"fields"`
	Reference reference `json:"reference"`
}

// reference names another table, or with an empty name the same one.
type reference struct {
	Resource string `json:"resource"`
	Fields   string `json:"fields"`
}

// schemas is read once from the embedded file and never changed.
var schemas = mustDefine(tablesJSON)

func mustDefine(raw []byte) definition {
	var d definition
	decoder := json.NewDecoder(bytes.NewReader(raw))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&d); err != nil {
		// The file is part of the program and every test reads it.
		panic("exchange: data/tables.json: " + err.Error())
	}
	for _, list := range [][]tableSchema{d.Tables, d.WeatherFiles} {
		for _, t := range list {
			for i := range t.Fields {
				t.Fields[i].complete()
			}
		}
	}
	for _, t := range d.Tables {
		for i := range t.Fields {
			t.Fields[i].table = t.Name
		}
	}
	return d
}

// complete derives the enum constraint from the closed list and compiles the
// pattern, which Table Schema means to match the whole cell.
func (f *field) complete() {
	if f.Constraints == nil {
		f.Constraints = &constraints{}
	}
	for _, v := range f.Values {
		f.Constraints.Enum = append(f.Constraints.Enum, v.Value)
	}
	if f.Constraints.Pattern != "" {
		f.pattern = regexp.MustCompile("^(?:" + f.Constraints.Pattern + ")$")
	}
}

func (f *field) required() bool { return f.Constraints.Required }

// label names the column in plain words, as a form does; the columns of a
// weather file go by the names that weather stations give them.
func (f *field) label() any {
	if f.table == "" {
		return f.Name
	}
	return words.P("desk.column_"+f.table+"."+f.Name, nil)
}

// leavesZero tells whether a zero is written as a blank cell.
func (f *field) leavesZero() bool { return f.isNumber() && !f.required() && f.Default == "" }

// isNumber tells whether the cells are numbers.
func (f *field) isNumber() bool { return f.Type == "number" || f.Type == "integer" }

// file is the table's file in the holding.
func (t *tableSchema) file() string { return t.Name + ".csv" }

func (t *tableSchema) column(name string) int {
	for i := range t.Fields {
		if t.Fields[i].Name == name {
			return i
		}
	}
	return -1
}

func (t *tableSchema) names() []string {
	names := make([]string, len(t.Fields))
	for i := range t.Fields {
		names[i] = t.Fields[i].Name
	}
	return names
}

// tableNamed returns the schema of a table of the holding.
func tableNamed(name string) *tableSchema {
	for i := range schemas.Tables {
		if schemas.Tables[i].Name == name {
			return &schemas.Tables[i]
		}
	}
	return nil
}
