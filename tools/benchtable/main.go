// Benchtable turns the output of go test -bench into the page
// docs/performance.md.
package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
)

func main() {
	if err := write(os.Stdout, os.Stdin); err != nil {
		fmt.Fprintln(os.Stderr, "benchtable:", err)
		os.Exit(1)
	}
}

// row is one benchmark: its package and name, and its measures by unit.
type row struct {
	pkg, name string
	measures  map[string]float64
}

func write(w io.Writer, r io.Reader) error {
	rows, machine, err := read(r)
	if err != nil {
		return err
	}
	fmt.Fprint(w, "# Speed\n\nWritten by `make bench`. Times are for one core unless the name says otherwise.\n")
	if machine != "" {
		fmt.Fprintf(w, "Processor: %s.\n", machine)
	}
	fmt.Fprint(w, "\n| package | benchmark | time | memory | allocations | other |\n| --- | --- | --- | --- | --- | --- |\n")
	for _, b := range rows {
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s | %s |\n", b.pkg, b.name,
			duration(b.measures["ns/op"]), size(b.measures), count(b.measures), others(b.measures))
	}
	return nil
}

func read(r io.Reader) (rows []row, machine string, err error) {
	lines, pkg := bufio.NewScanner(r), ""
	for lines.Scan() {
		line := lines.Text()
		switch {
		case strings.HasPrefix(line, "pkg: "):
			pkg = strings.TrimPrefix(strings.TrimPrefix(line, "pkg: "), "garner/internal/")
		case strings.HasPrefix(line, "cpu: "):
			machine = strings.TrimPrefix(line, "cpu: ")
		case strings.HasPrefix(line, "Benchmark"):
			if b, ok := parse(line); ok {
				b.pkg = pkg
				rows = append(rows, b)
			}
		}
	}
	return rows, machine, lines.Err()
}

// parse reads "BenchmarkDay-2  100  12.3 ns/op  0 B/op".
func parse(line string) (row, bool) {
	fields := strings.Fields(line)
	if len(fields) < 4 {
		return row{}, false
	}
	b := row{name: strings.TrimPrefix(fields[0], "Benchmark"), measures: map[string]float64{}}
	for i := 2; i+1 < len(fields); i += 2 {
		v, err := strconv.ParseFloat(fields[i], 64)
		if err != nil {
			return row{}, false
		}
		b.measures[fields[i+1]] = v
	}
	return b, true
}

func duration(ns float64) string {
	switch {
	case ns < 1e3:
		return fmt.Sprintf("%.1f ns", ns)
	case ns < 1e6:
		return fmt.Sprintf("%.1f µs", ns/1e3)
	case ns < 1e9:
		return fmt.Sprintf("%.1f ms", ns/1e6)
	}
	return fmt.Sprintf("%.2f s", ns/1e9)
}

func size(m map[string]float64) string {
	b, ok := m["B/op"]
	switch {
	case !ok:
		return ""
	case b < 1e4:
		return fmt.Sprintf("%.0f B", b)
	case b < 1e7:
		return fmt.Sprintf("%.0f kB", b/1e3)
	}
	return fmt.Sprintf("%.0f MB", b/1e6)
}

func count(m map[string]float64) string {
	n, ok := m["allocs/op"]
	if !ok {
		return ""
	}
	return fmt.Sprintf("%.0f", n)
}

// others lists the measures a benchmark reports of its own.
func others(m map[string]float64) string {
	var out []string
	for unit, v := range m {
		switch unit {
		case "ns/op", "B/op", "allocs/op":
		default:
			out = append(out, fmt.Sprintf("%.4g %s", v, unit))
		}
	}
	return strings.Join(out, ", ")
}
