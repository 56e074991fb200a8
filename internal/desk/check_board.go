package desk

import (
	"runtime"

	"garner/internal/scoreboard"
)

// The scoreboard as the prompt shows it.
type (
	Board        = scoreboard.Board
	BoardSection = scoreboard.Section
	BoardLine    = scoreboard.Line
	BoardGoal    = scoreboard.Goal
	BoardSpan    = scoreboard.Span
	BoardVerdict = scoreboard.Verdict
)

// CheckBoard computes the scoreboard, or one section of it; report may be nil.
func CheckBoard(section string, report func(done, total int)) (*Board, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	return scoreboard.NewBoard(b, scoreboard.Asked{Section: section, Workers: runtime.GOMAXPROCS(0), Report: report})
}

// BoardVerdicts are the verdicts in the order in which they are counted.
var BoardVerdicts = []BoardVerdict{scoreboard.Met, scoreboard.Missed, scoreboard.Apart}

// BoardSections are the names of the sections in order.
func BoardSections() []string { return scoreboard.SectionNames() }
