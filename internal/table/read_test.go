package table_test

import (
	"encoding/binary"
	"errors"
	"io"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"

	"garner/internal/fault"
	"garner/internal/table"
)

func read(t *testing.T, text string) *table.Table {
	t.Helper()
	got, err := table.Read(strings.NewReader(text), "f.csv", 1<<20)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestReadTakesWhatSpreadsheetsWrite(t *testing.T) {
	want := [][]string{{"2027-01-01", "-1.5", "two, words"}, {"2027-01-02", "2.25", ""}}
	comma := [][]string{{"2027-01-01", "-1,5", "two, words"}, {"2027-01-02", "2,25", ""}}
	cases := map[string]struct {
		text    string
		rows    [][]string
		numbers []int
		mark    rune
		decimal bool
	}{
		"plain":      {"a,b,c\n2027-01-01,-1.5,\"two, words\"\n2027-01-02,2.25,\n", want, []int{2, 3}, ',', false},
		"CRLF, mark": {"\uFEFFa,b,c\r\n2027-01-01,-1.5,\"two, words\"\r\n2027-01-02,2.25\r\n", want, []int{2, 3}, ',', false},
		"CR alone":   {"a,b,c\r2027-01-01,-1.5,\"two, words\"\r2027-01-02,2.25,", want, []int{2, 3}, ',', false},
		"semicolons": {"a;b;c\n2027-01-01;-1,5;two, words\n\n2027-01-02;2,25;\n", comma, []int{2, 4}, ';', true},
		"tabs":       {"a\tb\tc\n2027-01-01\t-1.5\ttwo, words\n2027-01-02\t2.25\t\n", want, []int{2, 3}, '\t', false},
		"sep line":   {"sep=;\na;b;c\n2027-01-01;-1,5;two, words\n2027-01-02;2,25;\n", comma, []int{3, 4}, ';', true},
		"quoted":     {"a,b,c\n2027-01-01,\"-1,5\",\"two, words\"\n2027-01-02,\"2,25\",\n", comma, []int{2, 3}, ',', true},
		"empty rows": {"\n,,\na,b,c,,\n2027-01-01, -1.5 ,\"two, words\",,\n,,,\n2027-01-02,2.25\n", want, []int{4, 6}, ',', false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got := read(t, c.text)
			if diff := cmp.Diff([]string{"a", "b", "c"}, got.Header); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(c.rows, got.Rows); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(c.numbers, got.Numbers); diff != "" {
				t.Error(diff)
			}
			if got.Delimiter != c.mark || got.DecimalComma != c.decimal {
				t.Errorf("delimiter %q, decimal comma %v", got.Delimiter, got.DecimalComma)
			}
			if v, ok := got.Number(got.Rows[0][1]); !ok || v != -1.5 {
				t.Errorf("Number = %v, %v", v, ok)
			}
		})
	}
}

func TestReadUTF16(t *testing.T) {
	for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
		var raw []byte
		for _, u := range utf16.Encode([]rune("\uFEFFname\tkg\r\nOkra é\t2\r\n")) {
			raw = order.AppendUint16(raw, u)
		}
		if got := read(t, string(raw)); got.Rows[0][0] != "Okra é" {
			t.Errorf("%v: %q", order, got.Rows)
		}
	}
}

func TestRowsAreCountedAsASpreadsheetDoes(t *testing.T) {
	got := read(t, "a,b\n\"one\ntwo\nthree\",1\nx,2\n\ny,3\n")
	if diff := cmp.Diff([]int{2, 3, 5}, got.Numbers); diff != "" {
		t.Error(diff)
	}
}

func TestReadRefusesWhatIsNoTable(t *testing.T) {
	cases := map[string]struct {
		text, key string
		row       int
	}{
		"empty":          {"", "table.empty", 0},
		"blank":          {"\n ,\n", "table.empty", 0},
		"archive":        {"PK\x03\x04\x14\x00", "table.binary", 0},
		"late zero byte": {"a,b\n" + strings.Repeat("1,2\n", 2000) + "\x00", "table.binary", 0},
		"old encoding":   {"a,b\n1,2\ncaf\xe9,3\n", "table.not_utf8", 3},
		"too large":      {"a,b\n" + strings.Repeat("1,2\n", 1<<18+1), "table.too_large", 0},
		"open quote":     {"a,b\n1,2\n\"x,3\n", "table.bad_quotes", 3},
		"bare quote":     {"a,b\n\"l\nm\",2\n1,b\"c\n", "table.bad_quotes", 3},
		"no name":        {"a,,c\n1,2,3\n", "table.unnamed_column", 1},
		"twice":          {"a,b,A\n1,2,3\n", "table.column_twice", 1},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			for _, r := range []io.Reader{strings.NewReader(c.text), io.MultiReader(strings.NewReader(c.text))} {
				_, err := table.Read(r, "f.csv", 1<<20)
				var f *fault.Error
				if !errors.As(err, &f) || f.Phrase.Key != c.key || f.At.Row != c.row || f.At.File != "f.csv" {
					t.Errorf("got %v, want %s in row %d", err, c.key, c.row)
				}
			}
		})
	}
}

func TestRowsWithTooManyCellsAreLeftOut(t *testing.T) {
	got := read(t, "a,b\n1,2\n3,4,5\n6,7\n")
	if len(got.Rows) != 2 || len(got.Refused) != 1 || got.Refused[0].At.Row != 3 {
		t.Errorf("rows %v refused %v", got.Rows, got.Refused)
	}
}

func TestNumberTakesNoDoubtfulForm(t *testing.T) {
	point, comma := &table.Table{}, &table.Table{DecimalComma: true}
	for _, cell := range []string{"", "1,250", "NaN", "Inf", "0x1p3", "1_000", "1e999", "12 C"} {
		if v, ok := point.Number(cell); ok {
			t.Errorf("%q read as %v", cell, v)
		}
	}
	for _, cell := range []string{"1.250", "1,2,3"} {
		if v, ok := comma.Number(cell); ok {
			t.Errorf("%q read as %v", cell, v)
		}
	}
	if v, ok := point.Number("−3.5"); !ok || v != -3.5 {
		t.Errorf("typeset minus: %v %v", v, ok)
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"a,b\n1,2\n", "a;b\n1,5;2\n", "\uFEFFa\tb\r\n\"x\ny\"\t2", "sep=;\na;b\n", "PK\x03\x04"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		got, err := table.Read(strings.NewReader(string(raw)), "f", 1<<16)
		if err != nil {
			var f *fault.Error
			if !errors.As(err, &f) {
				t.Fatalf("not a fault: %v", err)
			}
			return
		}
		for i, row := range got.Rows {
			if len(row) != len(got.Header) || got.Numbers[i] < 2 {
				t.Fatalf("row %d: %q", got.Numbers[i], row)
			}
		}
	})
}
