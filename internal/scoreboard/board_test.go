package scoreboard

import (
	"math"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/crop"
	"garner/internal/words"
)

// whole is the scoreboard of the book, computed once for all tests.
var whole = sync.OnceValues(func() (*Board, error) {
	book, err := crop.Load()
	if err != nil {
		return nil, err
	}
	return NewBoard(book, Asked{Workers: 2})
})

func wholeBoard(t *testing.T) *Board {
	t.Helper()
	b, err := whole()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func sectionOf(t *testing.T, name string) *Section {
	t.Helper()
	b := wholeBoard(t)
	for i := range b.Sections {
		if b.Sections[i].Name == name {
			return &b.Sections[i]
		}
	}
	t.Fatalf("no section %s", name)
	return nil
}

// least are lines that each section must have, so that a reader that loses its
// data is noticed.
var least = map[string]int{"windows": 400, "emergence": 40, "temperature": 150, "light": 40, "frost": 90, "heat": 40, "bolting": 15,
	"days": 60, "yields": 20, "keeping": 60, "winter": 15, "short-days": 10, "shared-ground": 9, "water": 19, "soil-water": 16, "risk": 20, "practice": 10}

func TestEverySectionHasItsLines(t *testing.T) {
	b := wholeBoard(t)
	if len(b.Sections) != len(least) {
		t.Errorf("%d sections, want %d", len(b.Sections), len(least))
	}
	for _, s := range b.Sections {
		if len(s.Lines) < least[s.Name] {
			t.Errorf("%s: %d lines, want at least %d", s.Name, len(s.Lines), least[s.Name])
		}
		if s.Count(Met)+s.Count(Missed)+s.Count(Apart) != len(s.Lines) {
			t.Errorf("%s: a line has no verdict", s.Name)
		}
	}
}

// Only what was read, or calls itself common practice, passes or fails; every
// line names its source and its check has a text.
func TestOnlyWhatWasReadIsJudged(t *testing.T) {
	texts := words.English()
	for _, s := range wholeBoard(t).Sections {
		for _, l := range s.Lines {
			if l.Verdict != Apart && l.Mark != "seen" && l.Mark != "practice" {
				t.Errorf("%s, %s: judged, but marked %q", s.Name, l.Crop, l.Mark)
			}
			if len(l.Sources) == 0 || !strings.Contains(l.Sources[0], " ") {
				t.Errorf("%s, %s: source %q is no citation", s.Name, l.Crop, l.Sources)
			}
			if text := texts.Text(l.Check); !texts.Has(l.Check.Key) || strings.Contains(text, "{") {
				t.Errorf("%s, %s: check %q reads %q", s.Name, l.Crop, l.Check.Key, text)
			}
		}
	}
}

func TestJudgeMeasuresFromTheNearerEnd(t *testing.T) {
	open := math.Inf(1)
	for _, c := range []struct {
		published, computed Span
		slack               float64
		mark                string
		difference          float64
		verdict             Verdict
	}{
		{Span{10, 20}, Span{15, 15}, 0, "seen", 0, Met},
		{Span{10, 20}, Span{18, 40}, 0, "seen", 0, Met},
		{Span{10, 20}, Span{23, 40}, 0, "seen", 3, Missed},
		{Span{10, 20}, Span{23, 40}, 3, "seen", 3, Met},
		{Span{10, 20}, Span{2, 4}, 5, "seen", -6, Missed},
		{Span{10, open}, Span{1e9, 1e9}, 0, "seen", 0, Met},
		{Span{10, 20}, Span{23, 40}, 0, "memory", 3, Apart},
		{Span{10, 20}, unknown(), 0, "seen", 0, Apart},
		{Span{10, 20}, exactly(open), 0, "seen", open, Missed},
	} {
		l := Line{Published: c.published, Computed: c.computed, Slack: c.slack, Mark: c.mark}.judge()
		if l.Difference != c.difference || l.Verdict != c.verdict {
			t.Errorf("%v against %v: %g, %s; want %g, %s", c.computed, c.published, l.Difference, l.Verdict, c.difference, c.verdict)
		}
	}
}

func TestOneSectionIsThatOfTheWholeBoard(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	b, err := NewBoard(book, Asked{Section: "days", Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(b.Sections) != 1 || len(b.Sections[0].Lines) != len(sectionOf(t, "days").Lines) {
		t.Errorf("%d sections", len(b.Sections))
	}
	for i, l := range b.Sections[0].Lines {
		if o := sectionOf(t, "days").Lines[i]; l.Computed != o.Computed || l.Verdict != o.Verdict {
			t.Errorf("line %d: %+v alone, %+v on the whole board", i, l, o)
		}
	}
	if _, err := NewBoard(book, Asked{Section: "nothing"}); err == nil || !strings.Contains(err.Error(), "nothing") {
		t.Errorf("an unknown section: %v", err)
	}
}

// The goals of the crop book's scoreboard that the engine reaches today: a change
// that loses one must say so.
func TestGoalsThatAreReachedStayReached(t *testing.T) {
	for name, goals := range map[string]int{"emergence": 1, "days": 1, "yields": 1} {
		s := sectionOf(t, name)
		if len(s.Goals) != goals {
			t.Errorf("%s: %d goals, want %d", name, len(s.Goals), goals)
		}
		for _, g := range s.Goals {
			if !g.Met() {
				t.Errorf("%s: %s %g, want %g", name, g.What.Key, g.Got, g.Want)
			}
		}
	}
}

// The distance between two spans changes sign when they change places, does not
// change when both move together, and is nought exactly when they meet.
func TestDistanceOfSpans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end := rapid.IntRange(-50, 50)
		draw := func(name string) Span {
			low := end.Draw(t, name)
			return Span{float64(low), float64(low + rapid.IntRange(0, 40).Draw(t, name+" wide"))}
		}
		a, b, by := draw("a"), draw("b"), float64(end.Draw(t, "moved by"))
		d := a.from(b)
		if d != -b.from(a) {
			t.Fatalf("%v from %v is %g, the other way %g", a, b, d, b.from(a))
		}
		if moved := (Span{a.Low + by, a.High + by}).from(Span{b.Low + by, b.High + by}); moved != d {
			t.Fatalf("moved together: %g, was %g", moved, d)
		}
		if meet := a.Low <= b.High && b.Low <= a.High; meet != (d == 0) {
			t.Fatalf("%v and %v meet: %v, distance %g", a, b, meet, d)
		}
	})
}
