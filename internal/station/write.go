package station

import (
	"bufio"
	"io"
	"strconv"

	"garner/internal/climate"
)

// WriteDaily writes a record in the form that ReadDaily reads: the three columns
// every record has and those of which any value is known. The same record gives
// the same bytes, and reading them back gives the same record.
func WriteDaily(w io.Writer, r *climate.Record) error {
	var columns []dailyColumn
	for _, c := range dailyColumns {
		if c.required || anyKnown(r, c) {
			columns = append(columns, c)
		}
	}
	out := bufio.NewWriter(w)
	out.WriteString(columnDate)
	for _, c := range columns {
		out.WriteByte(',')
		out.WriteString(c.name)
	}
	out.WriteByte('\n')
	for i := range r.Days {
		out.WriteString(r.Days[i].Date.String())
		for _, c := range columns {
			writeCell(out, *c.field(&r.Days[i]))
		}
		out.WriteByte('\n')
	}
	return out.Flush()
}

func anyKnown(r *climate.Record, c dailyColumn) bool {
	for i := range r.Days {
		if c.field(&r.Days[i]).Known {
			return true
		}
	}
	return false
}

// WriteNormals writes normals in the form that ReadNormals reads.
func WriteNormals(w io.Writer, n *climate.Normals) error {
	var columns []normalColumn
	for _, c := range normalColumns {
		if c.required || c.get(&n[0]).Known {
			columns = append(columns, c)
		}
	}
	out := bufio.NewWriter(w)
	out.WriteString(columnMonth)
	for _, c := range columns {
		out.WriteByte(',')
		out.WriteString(c.name)
	}
	out.WriteByte('\n')
	for i := range n {
		out.WriteString(strconv.Itoa(i + 1))
		for _, c := range columns {
			writeCell(out, c.get(&n[i]))
		}
		out.WriteByte('\n')
	}
	return out.Flush()
}

// writeCell writes the shortest decimal form that reads back as the same number.
func writeCell(out *bufio.Writer, m climate.Maybe) {
	out.WriteByte(',')
	if m.Known {
		out.Write(strconv.AppendFloat(out.AvailableBuffer(), m.Value, 'f', -1, 64))
	}
}
