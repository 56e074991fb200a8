package exchange

import (
	"bytes"
	"encoding/json"
	"path"
	"strings"

	"garner/internal/holding"
)

// descriptorFile is the descriptor's name, set by the Data Package standard.
const descriptorFile = "datapackage.json"

// The descriptor, in the order it is written.
type (
	dataPackage struct {
		Profile   string         `json:"profile"`
		Name      string         `json:"name"`
		Title     string         `json:"title,omitempty"`
		Resources []dataResource `json:"resources"`
	}
	dataResource struct {
		Profile     string      `json:"profile"`
		Name        string      `json:"name"`
		Path        string      `json:"path"`
		Title       string      `json:"title"`
		Description string      `json:"description"`
		Format      string      `json:"format"`
		MediaType   string      `json:"mediatype"`
		Encoding    string      `json:"encoding"`
		Dialect     dialect     `json:"dialect"`
		Schema      dataColumns `json:"schema"`
	}
	dialect struct {
		Delimiter      string `json:"delimiter"`
		LineTerminator string `json:"lineTerminator"`
		QuoteChar      string `json:"quoteChar"`
		DoubleQuote    bool   `json:"doubleQuote"`
		Header         bool   `json:"header"`
	}
	dataColumns struct {
		Fields        []dataColumn `json:"fields"`
		MissingValues []string     `json:"missingValues"`
		PrimaryKey    string       `json:"primaryKey,omitempty"`
		ForeignKeys   []foreignKey `json:"foreignKeys,omitempty"`
	}
	dataColumn struct {
		Name        string       `json:"name"`
		Type        string       `json:"type"`
		Description string       `json:"description"`
		Unit        string       `json:"unit,omitempty"`
		Default     string       `json:"default,omitempty"`
		Constraints *constraints `json:"constraints,omitempty"`
	}
)

// describe makes the descriptor of a holding whose weather files are given.
func describe(h *holding.Holding, weather []weatherTable) ([]byte, error) {
	p := dataPackage{Profile: "tabular-data-package", Name: slug(h.ID), Title: canonical(h.Name)}
	for i := range schemas.Tables {
		t := &schemas.Tables[i]
		p.Resources = append(p.Resources, resourceOf(t, t.Name, t.file(), t.names()))
	}
	for _, w := range weather {
		p.Resources = append(p.Resources, resourceOf(w.schema, "weather-file-"+slug(strings.TrimSuffix(w.path, path.Ext(w.path))), w.path, w.columns))
	}
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	err := encoder.Encode(p)
	return out.Bytes(), err
}

func resourceOf(t *tableSchema, name, file string, columns []string) dataResource {
	r := dataResource{
		Profile: "tabular-data-resource", Name: name, Path: file, Title: t.Title, Description: t.Description,
		Format: "csv", MediaType: "text/csv", Encoding: "utf-8",
		Dialect: dialect{Delimiter: ",", LineTerminator: "\n", QuoteChar: `"`, DoubleQuote: true, Header: true},
		Schema:  dataColumns{MissingValues: []string{""}, PrimaryKey: t.PrimaryKey, ForeignKeys: t.ForeignKeys},
	}
	for _, column := range columns {
		r.Schema.Fields = append(r.Schema.Fields, t.Fields[t.column(column)].describe())
	}
	return r
}

func (f *field) describe() dataColumn {
	d := dataColumn{Name: f.Name, Type: f.Type, Description: f.Description, Unit: f.Unit, Default: f.Default}
	c := f.Constraints
	if c.Required || c.Unique || c.Pattern != "" || c.Enum != nil || c.Minimum != nil || c.Maximum != nil {
		d.Constraints = c
	}
	return d
}

// slug brings a name to what the standard allows: small letters, digits, hyphen,
// point and underscore.
func slug(name string) string {
	out := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '.', r == '_':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, name)
	if out = strings.Trim(out, "-"); out == "" {
		return "holding"
	}
	return out
}
