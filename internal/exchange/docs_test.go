package exchange

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
	"text/template"

	"garner/internal/plan"
)

const docsFile = "../../docs/holding-files.md"

var docsFunctions = template.FuncMap{
	"lower": func(s string) string { return strings.ToLower(s[:1]) + s[1:] },
	"must": func(f field) string {
		switch {
		case f.required():
			return "yes"
		case f.Default != "":
			return "no: " + f.Default
		}
		return "no"
	},
	"meaning": func(f field) string {
		c := f.Constraints
		switch {
		case c.Minimum != nil && c.Maximum != nil:
			return fmt.Sprintf("%s (%v to %v)", f.Description, plainLimit(c.Minimum), plainLimit(c.Maximum))
		case c.Minimum != nil:
			return fmt.Sprintf("%s (%v or more)", f.Description, plainLimit(c.Minimum))
		}
		return f.Description
	},
	"target": func(k foreignKey) string {
		if k.Reference.Resource == "" {
			return "this table"
		}
		return k.Reference.Resource + ".csv"
	},
	"lists": func(t tableSchema) (out []field) {
		for _, f := range t.Fields {
			if len(f.Values) > 0 {
				out = append(out, f)
			}
		}
		return out
	},
}

func plainLimit(v any) any {
	if n, ok := v.(float64); ok {
		return writeNumber(n)
	}
	return v
}

var blankLines = regexp.MustCompile(`\n{3,}`)

// The document of the files is made from the same data as the files. With
// -update it is written.
func TestDocumentIsMadeFromTheTables(t *testing.T) {
	page, err := template.New("holding-files.md.tmpl").Funcs(docsFunctions).ParseFiles("testdata/holding-files.md.tmpl")
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	err = page.Execute(&out, map[string]any{"Tables": schemas.Tables, "WeatherFiles": schemas.WeatherFiles,
		"MostFiles": mostFiles, "MostMB": mostBytes / 1_000_000, "Settable": strings.Join(plan.Fields(), ", ")})
	if err != nil {
		t.Fatal(err)
	}
	want := blankLines.ReplaceAll(bytes.TrimSpace(out.Bytes()), []byte("\n\n"))
	want = append(want, '\n')
	if *update {
		if err := os.WriteFile(docsFile, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(docsFile)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("%v: the document is not that of the tables; run the test with -update", err)
	}
}
