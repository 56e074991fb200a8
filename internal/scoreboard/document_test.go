package scoreboard

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/words"
)

var update = flag.Bool("update", false, "write docs/validation.md and its plots anew")

const (
	documentPath = "../../docs/validation.md"
	plotsFolder  = "../../docs/pictures/validation"
)

// The document and its plots are what the board says today. They are compared
// on one architecture only: elsewhere the last bits of a sum may tip a digit.
func TestDocumentOfValidation(t *testing.T) {
	if runtime.GOARCH != "amd64" {
		t.Skip("the document was written on amd64")
	}
	b := wholeBoard(t)
	held(t, documentPath, document(t, b))
	for name, drawing := range plots(b) {
		held(t, filepath.Join(plotsFolder, name), drawing)
	}
}

// held compares a text with its file, or writes it.
func held(t *testing.T, path, text string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	old, err := os.ReadFile(path)
	if err != nil || string(old) != text {
		t.Errorf("%s is behind; make docs writes it anew", path)
	}
}

func plots(b *Board) map[string]string {
	of := map[string]*Section{}
	for i := range b.Sections {
		of[b.Sections[i].Name] = &b.Sections[i]
	}
	texts := words.English()
	crop := func(l *Line) string { return l.Crop + ", " + texts.Text(l.Check) }
	return map[string]string{
		"windows.svg":   drawnDates(of["windows"]),
		"emergence.svg": drawnEmergence(of["emergence"]),
		"days.svg":      drawnRanges(linesIn(of["days"], "d"), crop, 250, "days; wash: printed, ink: computed, open: missed", "Days to maturity: computed against printed ranges"),
		"winter.svg": drawnRanges(linesIn(of["winter"], "d"), func(l *Line) string { return strings.Replace(crop(l), "first cut, ", "", 1) }, 250,
			"days to the first cut; wash: printed, ink: computed, open: missed, ×: never", "Winter trials: days to the first cut"),
	}
}

func linesIn(s *Section, unit string) (out []*Line) {
	for i := range s.Lines {
		if s.Lines[i].Unit == unit {
			out = append(out, &s.Lines[i])
		}
	}
	return out
}

// plotted says what the plot of a section shows.
var plotted = map[string]string{"windows": "Distance of the windows from printed dates, by region", "emergence": "Computed against printed days to emergence",
	"days": "Computed against printed days to maturity", "winter": "Days to the first cut in the winter trials"}

func document(t *testing.T, b *Board) string {
	w := &writer{texts: words.English()}
	w.put("# Validation: the engine against published figures\n\n")
	w.put("Written by `make docs` from what `garner check` computes. Only figures that were read in their source are met or missed; recalled or second-hand\n")
	w.put("figures, and what the engine does not tell, are told apart. Rows that miss stay here. The figures lie in `internal/scoreboard/data` with their sources.\n\n")
	w.put("| section | met | missed | told apart | goal | reached |\n| --- | --- | --- | --- | --- | --- |\n")
	for i := range b.Sections {
		w.summary(&b.Sections[i])
	}
	for i := range b.Sections {
		w.section(&b.Sections[i])
	}
	w.failing(t)
	return w.String()
}

// writer writes Markdown.
type writer struct {
	strings.Builder
	texts *words.Catalogue
}

func (w *writer) put(format string, args ...any) { fmt.Fprintf(w, format, args...) }

func (w *writer) text(key string) string { return w.texts.Text(words.P(key, nil)) }

func (w *writer) summary(s *Section) {
	var goals, reached []string
	for _, g := range s.Goals {
		sign, hit := "≥", "no"
		if g.AtMost {
			sign = "≤"
		}
		if g.Met() {
			hit = "yes"
		}
		goals = append(goals, fmt.Sprintf("%s %s %s", w.texts.Text(g.What), sign, w.value(g.Want, g.Unit)))
		reached = append(reached, got(&g)+", "+hit)
	}
	w.put("| [%s](#%s) | %d | %d | %d | %s | %s |\n", w.text("scoreboard.section_"+s.Name), anchor(w.text("scoreboard.section_"+s.Name)),
		s.Count(Met), s.Count(Missed), s.Count(Apart), strings.Join(goals, "<br>"), strings.Join(reached, "<br>"))
}

// got writes what a goal came to, with as many decimals as tell it from the goal.
func got(g *Goal) string {
	for n := documentDigits[g.Unit]; ; n++ {
		text := fmt.Sprintf("%.*f", n, g.Got)
		if n == 3 || g.Got == g.Want || text != fmt.Sprintf("%.*f", n, g.Want) {
			return strings.TrimSpace(text + " " + strings.TrimSuffix(g.Unit, "1"))
		}
	}
}

// anchor is the address of a heading within its page.
func anchor(heading string) string {
	return strings.ReplaceAll(strings.ReplaceAll(strings.ToLower(heading), ",", ""), " ", "-")
}

func (w *writer) section(s *Section) {
	w.put("\n## %s\n\n%s\n", w.text("scoreboard.section_"+s.Name), w.text("scoreboard.how_"+s.Name))
	if what := plotted[s.Name]; what != "" {
		w.put("\n![%s](pictures/validation/%s.svg)\n", what, s.Name)
	}
	if s.Name == "windows" {
		w.put("\nOf the single dates only those further off than three weeks are listed.\n")
	}
	w.put("\n| crop | check | published | computed | off by | | works |\n| --- | --- | --- | --- | --- | --- | --- |\n")
	var works []string
	for i := range s.Lines {
		l := &s.Lines[i]
		if s.Name == "windows" && l.Unit == "date" && l.Verdict != Missed {
			continue
		}
		var numbers []string
		for _, source := range l.Sources {
			k := slices.Index(works, source)
			if k < 0 {
				k, works = len(works), append(works, source)
			}
			numbers = append(numbers, strconv.Itoa(k+1))
		}
		verdict := map[Verdict]string{Met: "", Missed: "**missed**", Apart: "told apart"}[l.Verdict]
		w.put("| %s | %s | %s | %s | %s | %s | %s |\n", strings.ReplaceAll(l.Crop, "-", " "), w.texts.Text(l.Check), w.span(l.Published, l.Unit), w.span(l.Computed, l.Unit), w.off(l), verdict, strings.Join(numbers, ", "))
	}
	w.put("\nWorks:\n\n")
	for i, work := range works {
		w.put("%d. %s\n", i+1, work)
	}
}

var documentDigits = map[string]int{"C": 1, "h": 2, "kg/m2": 1, "1": 2, "g/MJ": 1, "1/d": 2, "mm": 2}

func (w *writer) value(v float64, unit string) string {
	switch unit {
	case "date":
		return cal.MonthDayOf(int(v)).String()
	case "1":
		return fmt.Sprintf("%.2f", v)
	}
	return number(v, unit) + " " + strings.Replace(unit, "C", "°C", 1)
}

// number writes a value with the decimals of its unit, and nought without a sign.
func number(v float64, unit string) string {
	text := fmt.Sprintf("%.*f", documentDigits[unit], v)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

func (w *writer) span(s Span, unit string) string {
	switch {
	case !s.Known():
		return ""
	case math.IsInf(s.Low, 1):
		return "never"
	case math.IsInf(s.High, 1):
		return "≥ " + w.value(s.Low, unit)
	case math.IsInf(s.Low, -1):
		return "≤ " + w.value(s.High, unit)
	case s.Low == s.High:
		return w.value(s.Low, unit)
	case unit == "date":
		return w.value(s.Low, unit) + " to " + w.value(s.High, unit)
	}
	return number(s.Low, unit) + " to " + w.value(s.High, unit)
}

func (w *writer) off(l *Line) string {
	switch {
	case math.IsNaN(l.Difference):
		return "no window"
	case l.Difference == 0 || math.IsInf(l.Difference, 0):
		return ""
	}
	return fmt.Sprintf("%+.*f", documentDigits[l.Unit], l.Difference)
}

// failing lists the reference plantings that often fail.
func (w *writer) failing(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	m, err := newMaker(book, 1)
	if err != nil {
		t.Fatal(err)
	}
	harvests, err := m.grown()
	if err != nil {
		t.Fatal(err)
	}
	w.put("\n## Reference plantings that often fail in the reference climate\n\n| crop | use | came ready |\n| --- | --- | --- |\n")
	for _, h := range harvests {
		if float64(h.Ready) < 0.7*float64(h.Years) {
			w.put("| %s | %s | %d years of %d |\n", h.Use.Crop, h.Use.Name, h.Ready, h.Years)
		}
	}
}
