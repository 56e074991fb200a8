package web

import (
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/plan"
	"garner/internal/words"
)

// trimPage shows which sowings of a vegetable could be smaller, and what the ground
// could give instead.
func trimPage(v *visit) error {
	name := v.r.PathValue("name")
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return faults
	}
	view, err := v.office.TrimViewWithin(name, tried, mendPatience)
	if err != nil {
		return err
	}
	b := &mendBody{Vegetable: capital(name), Path: withTried(vegetablePath(name), tried), Tried: len(tried) > 0}
	if view == nil {
		b.Title, b.Coming = v.say("web.trim_title_coming", nil), v.here()
		return v.showPart(page{Name: "mend", Nav: "table", Body: b})
	}
	b.Vegetable, b.Title = capital(view.Plural), v.say("web.trim_title", words.Args{"vegetable": view.Plural})
	key := "web.trim_lead"
	switch {
	case len(view.Lines) == 0 && view.OverKg < leastTrimKg:
		key = "web.trim_nothing_over"
	case len(view.Lines) == 0:
		key = "web.trim_none"
	}
	b.Lead = append(b.Lead, v.say(key, words.Args{"vegetable": capital(view.Plural), "kg": view.OverKg}))
	if len(view.Lines) > 0 {
		b.Note = v.say("web.trim_note", nil)
	}
	if err := v.fillTrim(b, view, tried); err != nil {
		return err
	}
	return v.showPart(page{Name: "mend", Nav: "table", Body: b})
}

// trimPath is the page of which sowings of a vegetable could be smaller.
func trimPath(vegetable string, tried []plan.Change) string {
	return withTried(vegetablePath(vegetable)+"/trim", tried)
}

func (v *visit) fillTrim(b *mendBody, view *desk.TrimView, tried []plan.Change) error {
	most := 0.0
	for i := range view.Lines {
		most = max(most, view.Lines[i].OverKg)
	}
	path := vegetablePath(view.Vegetable)
	for i := range view.Lines {
		l := &view.Lines[i]
		line := mendLine{N: i + 1, Title: v.words.Text(l.Title), Worth: v.trimWorth(l.OverKg, most)}
		for _, does := range l.Does {
			line.Does = append(line.Does, v.sentence(does))
		}
		best := l.Try
		if l.Then != nil {
			line.Reason, best = v.sentence(*l.Then), l.TryNext
		}
		line.Try = withTried(path, withChanges(tried, best))
		if l.Then != nil {
			both, err := v.acceptForm("web.trim_accept_both", path, withChanges(tried, l.TryNext), i == 0)
			if err != nil {
				return err
			}
			line.Accept = append(line.Accept, both)
		}
		text := "web.trim_accept"
		if l.AreaM2 <= 0 {
			text = "web.trim_accept_drop"
		}
		alone, err := v.acceptForm(text, path, withChanges(tried, l.Try), i == 0 && l.Then == nil)
		if err != nil {
			return err
		}
		line.Accept = append(line.Accept, alone)
		b.Lines = append(b.Lines, line)
	}
	return nil
}

func (v *visit) trimWorth(kg, most float64) string {
	return draw.Worth(kg, most, draw.WorthOptions{WidthPX: worthWidth, HeightPX: worthHeight, Figure: v.words.Format().Forecast(kg),
		Label: v.say("web.trim_worth_label", words.Args{"kg": kg})})
}
