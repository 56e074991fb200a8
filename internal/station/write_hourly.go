package station

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"

	"garner/internal/climate"
)

// WriteHourly writes hours in the form that ReadHourly reads: time, temperature and
// those columns of which any value is known. Times are without a zone, as hours have
// none; of an hour that the clock repeats the first is written.
func WriteHourly(w io.Writer, hours []climate.Hour) error {
	var columns []hourlyColumn
	for _, c := range hourlyColumns {
		known := func(h climate.Hour) bool { return !math.IsNaN(*c.field(&h)) }
		if c.required || slices.ContainsFunc(hours, known) {
			columns = append(columns, c)
		}
	}
	out := bufio.NewWriter(w)
	out.WriteString(columnTime)
	for _, c := range columns {
		out.WriteByte(',')
		out.WriteString(c.name)
	}
	out.WriteByte('\n')
	for i := range hours {
		h := &hours[i]
		if i > 0 && h.At() <= hours[i-1].At() {
			continue
		}
		fmt.Fprintf(out, "%sT%02d:00", h.Date, h.Hour)
		for _, c := range columns {
			v := *c.field(h)
			writeCell(out, climate.Maybe{Value: v, Known: !math.IsNaN(v)})
		}
		out.WriteByte('\n')
	}
	return out.Flush()
}
