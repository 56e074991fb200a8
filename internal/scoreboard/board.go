package scoreboard

import (
	"math"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/words"
)

// Verdict is what a line of the board comes to. The list is closed and
// documented.
type Verdict string

// The verdicts.
const (
	Met    Verdict = "met"
	Missed Verdict = "missed"
	Apart  Verdict = "apart" // told apart: no pass or fail, because the figure is recalled or the engine has no answer
)

// Span is a range of values; a single figure has equal ends, an open end is
// infinite.
type Span struct{ Low, High float64 }

// exactly is the span of one figure.
func exactly(v float64) Span { return Span{v, v} }

// unknown is the span of what the engine does not tell.
func unknown() Span { return Span{math.NaN(), math.NaN()} }

// Known tells whether there is a value at all.
func (s Span) Known() bool { return !math.IsNaN(s.Low) }

// join widens a span to hold another.
func (s Span) join(o Span) Span { return Span{min(s.Low, o.Low), max(s.High, o.High)} }

// from is the signed distance from a published span to this one, 0 where they
// meet.
func (s Span) from(published Span) float64 {
	switch {
	case s.High < published.Low:
		return s.High - published.Low
	case s.Low > published.High:
		return s.Low - published.High
	}
	return 0
}

// Line is one check: a published figure and what the engine makes of it.
type Line struct {
	Crop       string // "" where it is of no one crop
	Check      words.Phrase
	Published  Span
	Computed   Span
	Unit       string   // C, d, h, %, kg/m2, g/MJ, 1/d, a, 1, or date: days of the common year
	Slack      float64  // as far off is still met, in the unit
	Sources    []string // citations
	Mark       string   // seen; memory and second hand are told apart; practice
	Difference float64  // signed, from the published to the computed span; 0 where they meet
	Verdict    Verdict
}

// judge works out the difference and the verdict. Only figures that were read in
// their source, and common practice that calls itself so, can be met or missed.
func (l Line) judge() Line {
	if !l.Computed.Known() {
		l.Verdict = Apart
		return l
	}
	l.Difference = l.Computed.from(l.Published)
	switch {
	case l.Mark != "seen" && l.Mark != "practice":
		l.Verdict = Apart
	case math.Abs(l.Difference) <= l.Slack+rounding:
		l.Verdict = Met
	default:
		l.Verdict = Missed
	}
	return l
}

// rounding is what the last bits of a sum may tip.
const rounding = 1e-9

// Goal is what the lines of a section must come to together.
type Goal struct {
	What      words.Phrase
	Want, Got float64
	AtMost    bool // the goal is a ceiling, else a floor
	Unit      string
}

// Met tells whether the goal is reached.
func (g Goal) Met() bool {
	if g.AtMost {
		return g.Got <= g.Want
	}
	return g.Got >= g.Want
}

// Point is one pair of a published and a computed figure, for drawing.
type Point struct {
	Crop                string
	Published, Computed float64
}

// Section is the lines of one kind in the order of the board.
type Section struct {
	Name   string
	Goals  []Goal
	Lines  []Line
	Points []Point
}

// Count is the number of lines with a verdict.
func (s *Section) Count(v Verdict) (n int) {
	for i := range s.Lines {
		if s.Lines[i].Verdict == v {
			n++
		}
	}
	return n
}

// share is the share of the judged lines that are met [%].
func (s *Section) share() float64 {
	met, missed := s.Count(Met), s.Count(Missed)
	if met+missed == 0 {
		return 0
	}
	return 100 * float64(met) / float64(met+missed)
}

// wantShare adds the goal that a share of the judged lines is met [%].
func (s *Section) wantShare(want float64) {
	s.Goals = append(s.Goals, Goal{What: words.P("scoreboard.goal_share", nil), Want: want, Got: s.share(), Unit: "%"})
}

// Board is the whole scoreboard.
type Board struct{ Sections []Section }

// Asked says what is computed.
type Asked struct {
	Section string // one section by its name; "": all
	Workers int
	Report  func(done, total int) // called before each section; may be nil
}

// section is a section by name and how it is made.
type section struct {
	name string
	make func(*maker) (Section, error)
}

// sections are all of them in the order of the board.
var sections = []section{
	{"windows", (*maker).windows},
	{"emergence", (*maker).emergence},
	{"temperature", (*maker).temperature},
	{"light", (*maker).light},
	{"frost", (*maker).frost},
	{"heat", (*maker).heat},
	{"bolting", (*maker).bolting},
	{"days", (*maker).days},
	{"yields", (*maker).yields},
	{"keeping", (*maker).keeping},
	{"winter", (*maker).winter},
	{"short-days", (*maker).shortDays},
	{"shared-ground", (*maker).sharedGround},
	{"water", (*maker).water},
	{"soil-water", (*maker).soilWater},
	{"risk", (*maker).risk},
	{"practice", (*maker).practice},
}

// SectionNames are the names of all sections in order.
func SectionNames() []string {
	names := make([]string, len(sections))
	for i, s := range sections {
		names[i] = s.name
	}
	return names
}

// NewBoard computes the scoreboard, or one section of it. An unknown section is
// refused with the names there are.
func NewBoard(book *crop.Book, a Asked) (*Board, error) {
	wanted, err := wantedSections(a.Section)
	if err != nil {
		return nil, err
	}
	m, err := newMaker(book, a.Workers)
	if err != nil {
		return nil, err
	}
	b := &Board{}
	for i, s := range wanted {
		if a.Report != nil {
			a.Report(i, len(wanted))
		}
		made, err := s.make(m)
		if err != nil {
			return nil, err
		}
		made.Name = s.name
		b.Sections = append(b.Sections, made)
	}
	return b, nil
}

func wantedSections(name string) ([]section, error) {
	if name == "" {
		return sections, nil
	}
	for _, s := range sections {
		if s.name == name {
			return []section{s}, nil
		}
	}
	return nil, fault.New(fault.NotFound, "scoreboard.section_unknown", words.Args{"name": name, "names": SectionNames()})
}
