package scoreboard

import (
	"math"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/table"
	"garner/internal/words"
)

// emergenceGoal is the greatest median error of the days to emergence [%].
const emergenceGoal = 15

// printedDays is a crop's row of the emergence table.
type printedDays struct {
	crop, source string
	degrees      []float64
	days         []float64 // 0: no seedlings
}

// emergence holds the days to half the seedlings at steady soil temperatures
// against the table of Harrington & Minges (1954), inside each crop's working
// range, and the temperatures at which the table has no seedlings at all.
func (m *maker) emergence() (s Section, err error) {
	printed, err := m.emergenceTable()
	if err != nil {
		return s, err
	}
	ranges, err := m.workingRanges()
	if err != nil {
		return s, err
	}
	var all []float64
	for _, p := range printed {
		u := m.sown(p.crop)
		if u == nil {
			continue
		}
		limits, listed := ranges[p.crop]
		if !listed {
			limits = Span{0, p.quickest()}
		}
		off := p.errors(&s, u, limits)
		all = append(all, off...)
		if len(off) > 0 {
			s.Lines = append(s.Lines, Line{Crop: u.Crop, Published: Span{0, emergenceGoal}, Unit: "%", Mark: "seen",
				Check:    words.P("scoreboard.emergence_median", words.Args{"n": len(off), "from": limits.Low, "to": limits.High}),
				Computed: exactly(num.Quantiles(off, 0.5)[0]), Sources: []string{m.work(p.source)}}.judge())
		}
		s.Lines = append(s.Lines, m.nothingAt(p, u)...)
	}
	s.Goals = append(s.Goals, Goal{What: words.P("scoreboard.goal_emergence", words.Args{"n": len(all)}),
		Want: emergenceGoal, Got: num.Quantiles(all, 0.5)[0], AtMost: true, Unit: "%"})
	return s, nil
}

// errors are the unsigned errors inside the working range [%].
func (p *printedDays) errors(s *Section, u *crop.Use, limits Span) (off []float64) {
	for i, c := range p.degrees {
		if p.days[i] == 0 || c < limits.Low || c > limits.High {
			continue
		}
		days, ok := growth.EmergenceDays(u, c)
		if !ok {
			off = append(off, 100)
			continue
		}
		off = append(off, 100*math.Abs(days/p.days[i]-1))
		s.Points = append(s.Points, Point{u.Crop, p.days[i], days})
	}
	return off
}

// nothingAt holds the temperatures without seedlings: the engine's coldest and
// hottest limits must leave them out. Two degrees either way are within the
// table's step of five.
func (m *maker) nothingAt(p printedDays, u *crop.Use) (out []Line) {
	cold, hot := math.Inf(-1), math.Inf(1)
	for i, c := range p.degrees {
		switch {
		case p.days[i] > 0:
		case c < p.quickest():
			cold = max(cold, c)
		default:
			hot = min(hot, c)
		}
	}
	line := Line{Crop: u.Crop, Unit: "C", Slack: 2, Mark: "seen", Sources: []string{m.work(p.source)}}
	if !math.IsInf(cold, 0) {
		l := line
		l.Check, l.Published, l.Computed = words.P("scoreboard.emergence_cold", nil), Span{cold, math.Inf(1)}, exactly(u.EmergeBaseC)
		out = append(out, l.judge())
	}
	if !math.IsInf(hot, 0) {
		l := line
		l.Check, l.Published, l.Computed = words.P("scoreboard.emergence_hot", nil), Span{math.Inf(-1), hot}, exactly(u.EmergeCeilingC)
		out = append(out, l.judge())
	}
	return out
}

// quickest is the temperature of the fewest days, the highest of equals [C].
func (p *printedDays) quickest() float64 {
	best, fewest := 0.0, math.Inf(1)
	for i, c := range p.degrees {
		if p.days[i] > 0 && p.days[i] <= fewest {
			best, fewest = c, p.days[i]
		}
	}
	return best
}

func (m *maker) emergenceTable() (out []printedDays, err error) {
	c, err := table.OpenCells(m.data, "emergence.csv", "crop", "temperature_c", "days", "source", "mark")
	if err != nil {
		return nil, err
	}
	for i := range c.Rows {
		if n := len(out); n == 0 || out[n-1].crop != c.Text(i, "crop") {
			out = append(out, printedDays{crop: c.Text(i, "crop"), source: c.Text(i, "source")})
		}
		p := &out[len(out)-1]
		days := 0.0
		if c.Text(i, "days") != "" {
			days = c.Within(i, "days", 1, 200)
		}
		p.degrees, p.days = append(p.degrees, c.Within(i, "temperature_c", 0, 50)), append(p.days, days)
	}
	return out, c.Err()
}

func (m *maker) workingRanges() (map[string]Span, error) {
	c, err := table.OpenCells(m.data, "emergence_range.csv", "crop", "minimum_c", "optimum_high_c")
	if err != nil {
		return nil, err
	}
	out := map[string]Span{}
	for i := range c.Rows {
		out[c.Text(i, "crop")] = span(c, i, "minimum_c", "optimum_high_c")
	}
	return out, c.Err()
}

// sown is a use of the crop that is chiefly sown or raised from seed.
func (m *maker) sown(name string) *crop.Use {
	u := m.find(name, "")
	if u == nil {
		return nil
	}
	if c, ok := m.book.Crop(u.Crop); ok {
		for _, other := range append([]*crop.Use{u}, c.Uses...) {
			if other.Methods[0] == crop.Seed || other.Methods[0] == crop.Plant {
				return other
			}
		}
	}
	return u
}
