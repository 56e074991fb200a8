package table

import (
	"strings"

	"garner/internal/fault"
)

// Table is a table as read: every row as long as the header, cells trimmed.
type Table struct {
	Name         string // of the file, for faults
	Header       []string
	Rows         [][]string // rows without any filled cell are left out
	Numbers      []int      // row number of each of Rows, header = 1
	Delimiter    rune       // ',', ';' or tab
	DecimalComma bool       // numbers are written 12,5
	Refused      fault.List // rows left out because they have more cells than the header
}

// Column returns the place of a column, -1 when there is none. Case does not
// matter.
func (t *Table) Column(name string) int {
	for i, h := range t.Header {
		if strings.EqualFold(h, name) {
			return i
		}
	}
	return -1
}

// At says where a cell is, for faults.
func (t *Table) At(row int, column string) fault.Place {
	return fault.Place{File: t.Name, Row: t.Numbers[row], Column: column}
}
