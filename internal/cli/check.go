package cli

import (
	"math"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// checkCommand holds the engine against published figures.
type checkCommand struct {
	PlantingDates string `name:"planting-dates" placeholder:"FOLDER"`
	Section       string `name:"section" placeholder:"NAME"`
	JSON          bool   `name:"json"`
}

// Run computes the scoreboard, or the windows of a folder of planting dates.
func (c *checkCommand) Run(a *App) error {
	if c.PlantingDates != "" {
		return a.checkDates(c.PlantingDates, c.JSON)
	}
	p := a.progress("cli.board_progress")
	board, err := desk.CheckBoard(c.Section, p.report())
	p.clear()
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.boardJSON(board))
	}
	for i := range board.Sections {
		a.showSection(&board.Sections[i])
	}
	if len(board.Sections) > 1 {
		a.showSums(board)
	}
	a.say(words.P("cli.board_reading", nil))
	return nil
}

// showSums writes one line a section: its counts and how many goals it reaches.
func (a *App) showSums(b *desk.Board) {
	table := &grid{right: []bool{false, true, true, true, true}}
	table.add(a.head("cli.board_section"), a.named("cli.board_", "met"), a.named("cli.board_", "missed"), a.named("cli.board_", "apart"), a.head("cli.board_goals"))
	for i := range b.Sections {
		s := &b.Sections[i]
		row := []string{a.Words.Text(words.P("scoreboard.section_"+s.Name, nil))}
		for _, v := range desk.BoardVerdicts {
			row = append(row, strconv.Itoa(s.Count(v)))
		}
		reached := 0
		for _, g := range s.Goals {
			if g.Met() {
				reached++
			}
		}
		goals := ""
		if len(s.Goals) > 0 {
			goals = a.Words.Text(words.P("cli.board_goals_of", words.Args{"reached": reached, "goals": len(s.Goals)}))
		}
		table.add(append(row, goals)...)
	}
	table.write(a)
	a.gap()
}

// showSection writes a section: its counts, its goals, every line, the works.
func (a *App) showSection(s *desk.BoardSection) {
	a.say(words.P("scoreboard.section_"+s.Name, nil))
	a.say(words.P("scoreboard.how_"+s.Name, nil))
	counts := words.Args{}
	for _, v := range desk.BoardVerdicts {
		counts[string(v)] = s.Count(v)
	}
	a.say(words.P("cli.board_count", counts))
	for _, g := range s.Goals {
		key, verdict := "cli.board_goal", "missed"
		if g.AtMost {
			key = "cli.board_goal_most"
		}
		if g.Met() {
			verdict = "met"
		}
		a.say(words.P(key, words.Args{"what": g.What, "got": a.got(&g), "want": a.withUnit(g.Want, g.Unit), "verdict": a.named("cli.board_", verdict)}))
	}
	a.gap()
	table := &grid{right: []bool{false, false, true, true, false, true, true, false}}
	table.add(a.head("cli.board_verdict"), a.head("cli.board_crop"), a.head("cli.board_published"), a.head("cli.board_computed"),
		a.head("cli.board_unit"), a.head("cli.board_difference"), a.head("cli.board_works"), a.head("cli.board_check"))
	works := &workList{}
	for i := range s.Lines {
		l := &s.Lines[i]
		table.add(a.named("cli.board_", string(l.Verdict)), l.Crop, a.span(l.Published, l.Unit), a.span(l.Computed, l.Unit),
			unitOf(l.Unit), a.off(l), works.numbers(a, l.Sources), a.Words.Text(l.Check))
	}
	table.write(a)
	a.gap()
	works.write(a)
	a.gap()
}

// digits are the decimals that figures of a unit are written with.
var digits = map[string]int{"C": 1, "h": 2, "kg/m2": 1, "1": 2, "g/MJ": 1, "1/d": 2, "mm": 2}

func (a *App) amount(v float64, unit string) string {
	if unit == "date" {
		return a.Words.Format().MonthDay(cal.MonthDayOf(int(v)))
	}
	return a.Words.Format().Number(v, digits[unit])
}

// got writes what a goal came to, with as many decimals as tell it from the goal.
func (a *App) got(g *desk.BoardGoal) string {
	for n := digits[g.Unit]; ; n++ {
		text := a.Words.Format().Number(g.Got, n)
		if n == mostDecimals || g.Got == g.Want || text != a.Words.Format().Number(g.Want, n) {
			return strings.TrimSpace(text + " " + unitOf(g.Unit))
		}
	}
}

// mostDecimals is how finely a goal that is all but reached is told.
const mostDecimals = 3

func (a *App) withUnit(v float64, unit string) string {
	return strings.TrimSpace(a.amount(v, unit) + " " + unitOf(unit))
}

// span writes a range; nothing for what is not known.
func (a *App) span(s desk.BoardSpan, unit string) string {
	switch {
	case !s.Known():
		return ""
	case math.IsInf(s.Low, 1):
		return a.Words.Text(words.P("cli.board_never", nil))
	case math.IsInf(s.High, 1):
		return a.Words.Text(words.P("cli.board_least", words.Args{"n": a.amount(s.Low, unit)}))
	case math.IsInf(s.Low, -1):
		return a.Words.Text(words.P("cli.board_most", words.Args{"n": a.amount(s.High, unit)}))
	case s.Low == s.High:
		return a.amount(s.Low, unit)
	}
	return a.amount(s.Low, unit) + "–" + a.amount(s.High, unit)
}

// off writes the difference, nothing where there is none to speak of.
func (a *App) off(l *desk.BoardLine) string {
	if math.IsNaN(l.Difference) || math.IsInf(l.Difference, 0) || l.Difference == 0 {
		return ""
	}
	return a.Words.Format().Number(l.Difference, digits[l.Unit])
}

// unitOf is a unit as it stands in a table: none for dates and shares of one.
func unitOf(unit string) string {
	if unit == "date" || unit == "1" {
		return ""
	}
	return unit
}

// workList numbers the works of a section in the order of their use.
type workList struct{ works []string }

func (w *workList) numbers(a *App, sources []string) string {
	var out []string
	for _, s := range sources {
		n := 0
		for n < len(w.works) && w.works[n] != s {
			n++
		}
		if n == len(w.works) {
			w.works = append(w.works, s)
		}
		out = append(out, a.Words.Format().Number(float64(n+1), 0))
	}
	return strings.Join(out, ",")
}

func (w *workList) write(a *App) {
	table := &grid{right: []bool{true}}
	for i, s := range w.works {
		table.add(a.Words.Format().Number(float64(i+1), 0), s)
	}
	table.write(a)
}
