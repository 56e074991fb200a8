package web

import (
	"net/url"
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// mendBody is the page of what could be done about a vegetable at the table.
type mendBody struct {
	Vegetable, Path string // of the vegetable
	Title           string
	Lead            []string
	Note            string // how the bars are read
	Lines           []mendLine
	Last            []mendLine // what always remains
	Others          []nameLink // pages of the other gaps
	Coming          string     // the page's own address while it is being worked out
	Tried           bool       // over the plan with what is being tried
}

// mendLine is one proposal.
type mendLine struct {
	N       int
	Title   string
	Worth   string // drawing
	Does    []string
	Takes   string
	Reason  string
	Remarks []string
	Warning string
	Accept  []acceptForm // none: it changes nothing
	Try     string       // address of the table with it
}

// acceptForm keeps a proposal as one entry.
type acceptForm struct {
	Text   string
	Hidden []hiddenField
	Main   bool
}

// mendPatience is how long a page waits for what is being worked out for the first
// time.
const mendPatience = 700 * time.Millisecond

// mendPage shows what would mend a gap, the most first.
func mendPage(v *visit) error {
	name := v.r.PathValue("name")
	tried, faults := readTried(v.r.URL.Query())
	on := cal.None
	if given := v.query("on"); given != "" {
		d, err := cal.Parse(given)
		if err != nil {
			faults = append(faults, fault.New(fault.Invalid, "web.mend_date", words.Args{"given": given}))
		}
		on = d
	}
	if len(faults) > 0 {
		return faults
	}
	view, err := v.office.MendViewWithin(name, on, tried, mendPatience)
	if err != nil {
		return err
	}
	b := &mendBody{Vegetable: capital(name), Path: withTried(vegetablePath(name), tried), Tried: len(tried) > 0}
	if view == nil {
		b.Title, b.Coming = v.say("web.mend_title_coming", nil), v.here()
		return v.showPart(page{Name: "mend", Nav: "table", Body: b})
	}
	if err := v.fillMend(b, view, tried); err != nil {
		return err
	}
	return v.showPart(page{Name: "mend", Nav: "table", Body: b})
}

func (v *visit) fillMend(b *mendBody, view *desk.MendView, tried []plan.Change) error {
	b.Vegetable = capital(view.Plural)
	b.Title = v.say("web.mend_title", words.Args{"vegetable": view.Plural})
	if view.At < 0 {
		b.Lead = append(b.Lead, v.sentence(view.None()))
		v.otherGaps(b, view, tried)
		return nil
	}
	g := &view.Gaps[view.At]
	key := "web.mend_lead"
	if g.First <= view.Today {
		key = "web.mend_lead_now"
	}
	b.Lead = append(b.Lead, v.say(key, words.Args{"vegetable": capital(view.Plural), "first": words.Sharp(g.First, view.Today),
		"last": words.Sharp(g.Last, view.Today), "kg": g.ShortKg, "chance": g.Chance}))
	b.Note = v.say("web.mend_note", nil)
	most := 0.0
	for i := range view.Lines {
		if l := &view.Lines[i]; !l.Remains() {
			most = max(most, l.GapKg)
		}
	}
	for i := range view.Lines {
		line, err := v.mendLine(i, view, most, tried)
		if err != nil {
			return err
		}
		if view.Lines[i].Remains() {
			b.Last = append(b.Last, line)
			continue
		}
		b.Lines = append(b.Lines, line)
	}
	if len(b.Lines) == 0 {
		b.Lead, b.Note = append(b.Lead, v.say("web.mend_nothing", nil)), ""
	}
	v.otherGaps(b, view, tried)
	return nil
}

// otherGaps lists the gaps beside the one that is answered.
func (v *visit) otherGaps(b *mendBody, view *desk.MendView, tried []plan.Change) {
	for i := range view.Gaps {
		if o := &view.Gaps[i]; i != view.At {
			text := v.say("web.mend_other", words.Args{"first": words.Sharp(o.First, view.Today), "last": words.Sharp(o.Last, view.Today), "kg": o.ShortKg})
			b.Others = append(b.Others, nameLink{text, mendPath(view.Vegetable, o.First, tried)})
		}
	}
}

// mendPath is the page of what would mend a vegetable's gap.
func mendPath(vegetable string, on cal.Date, tried []plan.Change) string {
	path := vegetablePath(vegetable) + "/mend"
	if on.IsSet() {
		path += "?" + url.Values{"on": {on.String()}}.Encode()
	}
	return withTried(path, tried)
}

func (v *visit) mendLine(i int, view *desk.MendView, most float64, tried []plan.Change) (mendLine, error) {
	l := &view.Lines[i]
	out := mendLine{N: i + 1, Title: v.words.Text(l.Title), Takes: v.mendTakes(l.Costs)}
	for _, does := range l.Does {
		out.Does = append(out.Does, v.sentence(does))
	}
	if l.Reason != nil {
		out.Reason = v.sentence(sharpened(*l.Reason, view.Today))
	}
	for _, r := range l.Remarks {
		out.Remarks = append(out.Remarks, v.words.Text(r))
	}
	if l.Warning != nil {
		out.Warning = v.sentence(sharpened(*l.Warning, view.Today))
	}
	if len(l.Try) == 0 {
		return out, nil
	}
	if !l.Remains() {
		out.Worth = v.mendWorth(l.GapKg, most)
	}
	with := withChanges(tried, l.Try)
	out.Try = withTried(vegetablePath(view.Vegetable), with)
	form, err := v.acceptForm("web.mend_accept", vegetablePath(view.Vegetable), with, i == 0)
	out.Accept = []acceptForm{form}
	return out, err
}

// mendTakes says what a proposal takes; empty when it is nothing to speak of.
func (v *visit) mendTakes(costs []words.Phrase) string {
	if len(costs) == 0 {
		return ""
	}
	return v.say("web.mend_takes", words.Args{"costs": costs})
}

func (v *visit) mendWorth(kg, most float64) string {
	return draw.Worth(kg, most, draw.WorthOptions{WidthPX: worthWidth, HeightPX: worthHeight, Figure: v.words.Format().Forecast(kg),
		Label: v.say("web.mend_worth_label", words.Args{"kg": kg})})
}

// acceptForm keeps changes, and goes on to a page.
func (v *visit) acceptForm(text, back string, changes []plan.Change, main bool) (acceptForm, error) {
	entry, err := v.entry()
	f := acceptForm{Text: v.say(text, nil), Main: main, Hidden: []hiddenField{{"entry", entry}, {"back", back}}}
	for _, written := range writtenTries(changes) {
		f.Hidden = append(f.Hidden, hiddenField{tryName, written})
	}
	return f, err
}

// withChanges adds changes to those tried.
func withChanges(tried, more []plan.Change) []plan.Change {
	for _, c := range more {
		tried = withChange(tried, c)
	}
	return tried
}

// leastTrimKg is what must go over of a vegetable for the page of what could be
// smaller [kg].
const leastTrimKg = 1

// mendLinks lead to what would mend the gaps that are told, where they are not listed,
// and to what could be smaller where much goes over.
func (v *visit) mendLinks(view *desk.VegetableView, tried []plan.Change) []nameLink {
	var out []nameLink
	for i := range view.Gaps[:min(len(view.Gaps), mostGapsSaid)] {
		if len(tried) == 0 {
			break // the list of gaps has them
		}
		g, key := &view.Gaps[i], "web.mend_link"
		if g.Now {
			key = "web.mend_link_now"
		}
		out = append(out, nameLink{v.say(key, words.Args{"first": words.Sharp(g.First, view.Today)}), mendPath(view.Name, g.First, tried)})
	}
	if spareKg(&view.Ribbon) >= leastTrimKg {
		out = append(out, nameLink{v.say("web.trim_link", nil), trimPath(view.Name, tried)})
	}
	return out
}
