package table

import (
	"math"
	"strconv"
	"strings"
)

// Number reads a cell as a number in the table's way of writing decimals. ok is
// false when the cell is not a finite plain number; a mark of the other way of
// writing is not taken, because 1,250 and 1.250 may mean either.
func (t *Table) Number(cell string) (value float64, ok bool) {
	if t.DecimalComma {
		if strings.Contains(cell, ".") || strings.Count(cell, ",") > 1 {
			return 0, false
		}
		cell = strings.Replace(cell, ",", ".", 1)
	}
	// A minus sign as typeset by some spreadsheets.
	cell = strings.Replace(cell, "\u2212", "-", 1)
	if strings.ContainsAny(cell, "_xXpPnN") {
		return 0, false
	}
	value, err := strconv.ParseFloat(cell, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		return 0, false
	}
	return value, true
}
