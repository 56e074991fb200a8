package exchange

import (
	"encoding/binary"
	"encoding/csv"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"garner/internal/climate"
)

// rewrite makes another spreadsheet's writing of every table.
func rewrite(t *testing.T, how func(name string, rows [][]string) string) map[string]string {
	t.Helper()
	files := hand(t)
	for name, content := range files {
		rows, err := csv.NewReader(strings.NewReader(content)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		files[name] = how(name, rows)
	}
	return files
}

func joined(rows [][]string, delimiter rune, crlf bool) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Comma, w.UseCRLF = delimiter, crlf
	_ = w.WriteAll(rows)
	return b.String()
}

// withCommas writes the decimals of every plain number after a comma.
func withCommas(rows [][]string) [][]string {
	for _, row := range rows[1:] {
		for i, cell := range row {
			if strings.Trim(cell, "-0123456789.") == "" && strings.Count(cell, ".") == 1 {
				row[i] = strings.Replace(cell, ".", ",", 1)
			}
		}
	}
	return rows
}

// turned puts the columns in the opposite order.
func turned(rows [][]string) [][]string {
	for _, row := range rows {
		for i, j := 0, len(row)-1; i < j; i, j = i+1, j-1 {
			row[i], row[j] = row[j], row[i]
		}
	}
	return rows
}

func inUTF16(s string) string {
	raw := []byte{0xFF, 0xFE}
	for _, u := range utf16.Encode([]rune(s)) {
		raw = binary.LittleEndian.AppendUint16(raw, u)
	}
	return string(raw)
}

// A holding reads the same however a spreadsheet writes it. The ways are those
// of RFC 4180 and of common spreadsheets.
func TestEveryDialectReadsTheSame(t *testing.T) {
	want := mustRead(t, inFolder(hand(t)))
	dialects := map[string]func(string, [][]string) string{
		"mark and CRLF": func(_ string, rows [][]string) string { return "\uFEFF" + joined(rows, ',', true) },
		"semicolons and decimal commas": func(_ string, rows [][]string) string {
			return joined(withCommas(rows), ';', true)
		},
		"said semicolons": func(_ string, rows [][]string) string { return "sep=;\r\n" + joined(withCommas(rows), ';', true) },
		"commas and quoted decimal commas": func(_ string, rows [][]string) string {
			return joined(withCommas(rows), ',', false)
		},
		"tabs":             func(_ string, rows [][]string) string { return joined(rows, '\t', false) },
		"UTF-16 with tabs": func(_ string, rows [][]string) string { return inUTF16("" + joined(rows, '\t', true)) },
		"columns turned":   func(_ string, rows [][]string) string { return joined(turned(rows), ',', false) },
		"blank rows": func(_ string, rows [][]string) string {
			return strings.ReplaceAll(joined(rows, ',', false), "\nd", "\n,,,\n\nd")
		},
		"no last line end": func(_ string, rows [][]string) string { return strings.TrimRight(joined(rows, ',', false), "\n") },
		"capital headers": func(_ string, rows [][]string) string {
			rows[0] = strings.Split(strings.ToUpper(strings.Join(rows[0], ",")), ",")
			return joined(rows, ',', false)
		},
		"blanks round": func(_ string, rows [][]string) string { spaced(rows); return joined(rows, ',', false) },
		"capitals in lists": func(_ string, rows [][]string) string {
			return strings.ReplaceAll(joined(rows, ',', false), "mesh", "Mesh")
		},
	}
	for name, how := range dialects {
		t.Run(name, func(t *testing.T) {
			got := mustRead(t, inFolder(rewrite(t, how)))
			if diff := cmp.Diff(want, got, sameRows); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func spaced(rows [][]string) {
	for _, row := range rows {
		for i := range row {
			row[i] = " " + row[i] + "  "
		}
	}
}

func TestNamesOfFilesMayDifferInCaseAndLieInOneFolder(t *testing.T) {
	want := mustRead(t, inFolder(hand(t)))
	files := map[string]string{"My Garden/README.txt": "notes", "My Garden/.hidden": "\x00", "__MACOSX/My Garden/._beds.csv": "\x00"}
	for name, content := range hand(t) {
		files["My Garden/"+strings.ToUpper(name)] = content
	}
	got := mustRead(t, inFolder(files))
	if diff := cmp.Diff(want, got, cmpopts.IgnoreFields(climate.Record{}, "ID")); diff != "" {
		t.Error(diff)
	}
}

func TestANoteWithACommaSaysNothingOfDecimals(t *testing.T) {
	files := hand(t)
	files["records.csv"] = "id,date,what,value,unit,note,planting\nr1,2027-02-01,picked,1.5,kg,\"2,5\",p1\nr2,2027-02-02,picked,2,kg,\"3,5\",p1\n"
	h := mustRead(t, inFolder(files))
	if h.Records[0].Value != 1.5 || h.Records[0].Note != "2,5" {
		t.Errorf("%+v", h.Records[0])
	}
}

func TestUnknownColumnsAndFilesAreTold(t *testing.T) {
	files := hand(t)
	files["beds.csv"] = strings.Replace(strings.ReplaceAll(files["beds.csv"], "\n", ",x\n"), "water,x", "water,sol", 1)
	files["planting.csv"] = "id\n"
	_, report := ReadFolder(inFolder(files))
	if !report.OK() || len(report.Warnings) != 2 {
		t.Fatalf("faults:\n%v\nwarnings:\n%v", report.Faults, report.Warnings)
	}
	for i, want := range []string{"exchange.column_unknown_near", "exchange.file_unused_near"} {
		if got := report.Warnings[i].Phrase; got.Key != want {
			t.Errorf("%v, want %s", got, want)
		}
	}
}
