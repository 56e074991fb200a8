package exchange

import (
	"strings"
	"unicode/utf8"

	"garner/internal/table"
)

// canonical is a cell as it is written: sound UTF-8, line ends as one character,
// no other control characters, nothing blank round it.
func canonical(cell string) string {
	if strings.ContainsFunc(cell, isControl) || !utf8.ValidString(cell) {
		cell = strings.ToValidUTF8(cell, "\uFFFD")
		cell = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(cell)
		cell = strings.Map(func(r rune) rune {
			if isControl(r) && r != '\n' && r != '\t' {
				return -1
			}
			return r
		}, cell)
	}
	return strings.TrimSpace(cell)
}

func isControl(r rune) bool { return r < 0x20 || r == 0x7F }

// closest returns the entry of a closed list that a cell means: case does not
// matter. A cell that means none is left as it is.
func closest(cell string, f *field) string {
	for _, v := range f.Values {
		if strings.EqualFold(v.Value, cell) {
			return v.Value
		}
	}
	return cell
}

// numbersOf returns the reader of the table's numbers. Whether decimals stand
// after a comma is judged by the columns of numbers alone: a note such as "2,5"
// says nothing of them.
func numbersOf(t *table.Table, s *tableSchema) numberReader {
	own := *t
	own.DecimalComma = decimalComma(t, s)
	return own.Number
}

func decimalComma(t *table.Table, s *tableSchema) bool {
	commas, points := 0, 0
	for i := range s.Fields {
		at := t.Column(s.Fields[i].Name)
		if at < 0 || !s.Fields[i].isNumber() {
			continue
		}
		for _, row := range t.Rows {
			switch {
			case strings.Contains(row[at], "."):
				points++
			case isDecimal(row[at], t.Delimiter):
				commas++
			}
		}
	}
	return commas > points
}

// isDecimal tells whether a cell is a number with one comma before its decimals.
// Where commas also part the cells, three digits after one are thousands.
func isDecimal(cell string, delimiter rune) bool {
	whole, decimals, found := strings.Cut(strings.TrimLeft(cell, "+-\u2212"), ",")
	return found && (delimiter != ',' || len(decimals) != 3) &&
		strings.Trim(whole, "0123456789") == "" && strings.Trim(decimals, "0123456789") == "" && decimals != ""
}

// pointed writes a number that stands in a column of text with a point.
func pointed(cell string, delimiter rune) string {
	if isDecimal(cell, delimiter) {
		return strings.Replace(cell, ",", ".", 1)
	}
	return cell
}
