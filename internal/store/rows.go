package store

import (
	"encoding/json"
	"slices"

	"garner/internal/desk"
	"garner/internal/exchange"
	"garner/internal/journal"
)

// fileColumns are the columns of the table that stands for the weather files.
var fileColumns = []string{"name", "hash"}

// columnsOf names the columns of a table; nil when there is no such table.
func columnsOf(table string) []string {
	if table == desk.FilesTable {
		return fileColumns
	}
	return exchange.Columns(table)
}

// pack writes a row as an object by column, blank cells left out; nil is no row.
func pack(columns []string, row journal.Row) any {
	if row == nil {
		return nil
	}
	cells := map[string]string{}
	for i, name := range columns {
		if i < len(row) && row[i] != "" {
			cells[name] = row[i]
		}
	}
	out, _ := json.Marshal(cells) // texts always can be written
	return string(out)
}

// unpack reads what pack wrote, in the order of today's columns. Columns that
// came later are blank.
func unpack(columns []string, packed string) (journal.Row, error) {
	var cells map[string]string
	if err := json.Unmarshal([]byte(packed), &cells); err != nil {
		return nil, err
	}
	row := make(journal.Row, len(columns))
	for i, name := range columns {
		row[i] = cells[name]
	}
	return row, nil
}

// same tells whether two rows say the same; cells that are not there are blank.
func same(a, b journal.Row) bool {
	if (a == nil) != (b == nil) {
		return false
	}
	return slices.Equal(trimmed(a), trimmed(b))
}

func trimmed(row journal.Row) journal.Row {
	for len(row) > 0 && row[len(row)-1] == "" {
		row = row[:len(row)-1]
	}
	return row
}
