package table

import (
	"bytes"
	"strings"
)

// delimiterOf finds what stands between the cells: what the file says in a
// first line sep=X, else the commonest of semicolon, tab and comma in the first
// line that is not blank, quoted cells left out. It also returns the number of
// lines before the table.
func delimiterOf(text []byte) (delimiter rune, skip int) {
	rest := text
	for len(rest) > 0 {
		line, after, _ := bytes.Cut(rest, []byte{'\n'})
		line = bytes.TrimRight(line, "\r")
		if said, ok := saidDelimiter(line); ok {
			return said, skip + 1
		}
		if len(bytes.TrimSpace(line)) > 0 {
			return commonest(line), skip
		}
		rest, skip = after, skip+1
	}
	return ',', 0
}

func saidDelimiter(line []byte) (rune, bool) {
	after, ok := bytes.CutPrefix(bytes.ToLower(line), []byte("sep="))
	if !ok || len(after) != 1 || !strings.ContainsRune(",;\t", rune(after[0])) {
		return 0, false
	}
	return rune(after[0]), true
}

func commonest(line []byte) rune {
	counts := map[rune]int{}
	quoted := false
	for _, b := range line {
		switch {
		case b == '"':
			quoted = !quoted
		case !quoted:
			counts[rune(b)]++
		}
	}
	best := ','
	for _, d := range []rune{';', '\t'} {
		if counts[d] > counts[best] {
			best = d
		}
	}
	return best
}

func skipLines(text []byte, n int) []byte {
	for ; n > 0; n-- {
		_, text, _ = bytes.Cut(text, []byte{'\n'})
	}
	return text
}

// usesDecimalComma tells whether numbers are written 12,5: more cells are whole
// numbers with a comma in them than with a point. Where the comma also parts the
// cells, three digits after it are taken for thousands, as in "1,250".
func usesDecimalComma(rows [][]string, delimiter rune) bool {
	commas, points := 0, 0
	for _, row := range rows {
		for _, cell := range row {
			mark, decimals := decimalMark(cell)
			switch {
			case mark == '.':
				points++
			case mark == ',' && (delimiter != ',' || decimals != 3):
				commas++
			}
		}
	}
	return commas > points
}

// decimalMark returns the one point or comma of a cell that is otherwise only
// digits with at most a sign before them, and the number of digits after it; 0
// when the cell is something else.
func decimalMark(cell string) (mark byte, decimals int) {
	digits := strings.TrimLeft(cell, "+-")
	at := strings.IndexAny(digits, ".,")
	if at < 0 || len(cell)-len(digits) > 1 {
		return 0, 0
	}
	for i := 0; i < len(digits); i++ {
		if i != at && (digits[i] < '0' || digits[i] > '9') {
			return 0, 0
		}
	}
	return digits[at], len(digits) - at - 1
}
