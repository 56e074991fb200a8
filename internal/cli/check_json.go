package cli

import (
	"math"

	"garner/internal/desk"
)

// boardAnswer is the scoreboard as the JSON shows it. What is not known, and an
// open end of a range, is null.
type boardAnswer struct {
	Sections []sectionAnswer `json:"sections"`
}

type sectionAnswer struct {
	Section string       `json:"section"`
	Met     int          `json:"met"`
	Missed  int          `json:"missed"`
	Apart   int          `json:"apart"`
	Goals   []goalAnswer `json:"goals"`
	Rows    []lineAnswer `json:"rows"`
}

type goalAnswer struct {
	Goal     string   `json:"goal"`
	AtLeast  *float64 `json:"at_least"`
	AtMost   *float64 `json:"at_most"`
	Computed float64  `json:"computed"`
	Unit     string   `json:"unit"`
	Met      bool     `json:"met"`
}

type lineAnswer struct {
	Crop          string   `json:"crop"`
	Check         string   `json:"check"`
	PublishedFrom *float64 `json:"published_from"`
	PublishedTo   *float64 `json:"published_to"`
	ComputedFrom  *float64 `json:"computed_from"`
	ComputedTo    *float64 `json:"computed_to"`
	Unit          string   `json:"unit"`
	Allowed       float64  `json:"allowed"`
	Difference    *float64 `json:"difference"`
	Sources       []string `json:"sources"`
	Mark          string   `json:"mark"`
	Verdict       string   `json:"verdict"`
}

func (a *App) boardJSON(b *desk.Board) boardAnswer {
	out := boardAnswer{Sections: []sectionAnswer{}}
	for i := range b.Sections {
		s := &b.Sections[i]
		row := sectionAnswer{Section: s.Name, Met: s.Count("met"), Missed: s.Count("missed"), Apart: s.Count("apart"), Goals: []goalAnswer{}, Rows: []lineAnswer{}}
		for _, g := range s.Goals {
			goal := goalAnswer{Goal: a.Words.Text(g.What), Computed: g.Got, Unit: g.Unit, Met: g.Met()}
			if want := g.Want; g.AtMost {
				goal.AtMost = &want
			} else {
				goal.AtLeast = &want
			}
			row.Goals = append(row.Goals, goal)
		}
		for k := range s.Lines {
			row.Rows = append(row.Rows, a.lineJSON(&s.Lines[k]))
		}
		out.Sections = append(out.Sections, row)
	}
	return out
}

func (a *App) lineJSON(l *desk.BoardLine) lineAnswer {
	return lineAnswer{Crop: l.Crop, Check: a.Words.Text(l.Check), Unit: l.Unit, Allowed: l.Slack, Sources: l.Sources, Mark: l.Mark, Verdict: string(l.Verdict),
		PublishedFrom: finite(l.Published.Low), PublishedTo: finite(l.Published.High), ComputedFrom: finite(l.Computed.Low), ComputedTo: finite(l.Computed.High),
		Difference: finite(l.Difference)}
}

// finite is a number for the JSON, null when it is none.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
