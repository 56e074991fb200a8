package cli

import (
	"encoding/json"
	"fmt"
	"strings"
	"unicode/utf8"

	"garner/internal/fault"
	"garner/internal/words"
)

// say writes a sentence of the answer on a line of its own.
func (a *App) say(p words.Phrase) { fmt.Fprintln(a.Stdout, a.Words.Text(p)) }

// gap leaves a line free.
func (a *App) gap() { fmt.Fprintln(a.Stdout) }

// json writes an answer as one line of JSON.
func (a *App) json(answer any) error {
	encoder := json.NewEncoder(a.Stdout)
	encoder.SetEscapeHTML(false)
	return encoder.Encode(answer)
}

// grid is a table of text with a header row. Columns are as wide as their widest
// cell; those marked right stand to the right, as figures do.
type grid struct {
	right []bool
	rows  [][]string
}

func (g *grid) add(cells ...string) { g.rows = append(g.rows, cells) }

func (g *grid) write(a *App) {
	var widths []int
	for _, row := range g.rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range g.rows {
		var b strings.Builder
		for i, cell := range row {
			if i > 0 {
				b.WriteString("  ")
			}
			blank := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if i < len(g.right) && g.right[i] {
				b.WriteString(blank + cell)
			} else {
				b.WriteString(cell + blank)
			}
		}
		fmt.Fprintln(a.Stdout, strings.TrimRight(b.String(), " "))
	}
}

// padded fills a text with blanks to a width in letters, or cuts it there.
func padded(s string, width int) string {
	n := utf8.RuneCountInString(s)
	if n > width {
		return string([]rune(s)[:width])
	}
	return s + strings.Repeat(" ", width-n)
}

// faultRow is a fault as the JSON shows it.
type faultRow struct {
	File   string `json:"file"`
	Row    int    `json:"row"`
	Column string `json:"column"`
	Text   string `json:"text"`
}

// faultRows puts faults into words for the JSON; none give an empty list.
func (a *App) faultRows(list fault.List) []faultRow {
	rows := make([]faultRow, 0, len(list))
	for _, f := range list {
		rows = append(rows, faultRow{f.At.File, f.At.Row, f.At.Column, a.Words.Text(f.Phrase)})
	}
	return rows
}

// named puts one of a closed list of names into words: cli.stage_young and so
// on. A name without a text stands as it is.
func (a *App) named(list, name string) string {
	key := list + strings.ReplaceAll(strings.ReplaceAll(name, " + ", "_"), " ", "_")
	if !a.Words.Has(key) {
		return name
	}
	return a.Words.Text(words.P(key, nil))
}
