package web

import (
	"net/http"

	"garner/internal/desk"
	"garner/internal/words"
)

// feedBody is the page of liquid feed along with the water.
type feedBody struct {
	Ways   waterWays
	View   *desk.FeedView
	Lead   []string
	Rows   []feedLine
	Label  *smallForm
	Wrong  int
	Faults []words.Phrase
}

// feedLine is a planting's turn with the form that records it.
type feedLine struct {
	*desk.FeedRow
	Name, Path, Says string
	Now              bool
	Hidden           []hiddenField
}

// feedPage shows who is fed when, and with how much.
func feedPage(v *visit) error { return v.showFeed(typedForm{}, 0) }

func (v *visit) showFeed(typed typedForm, status int) error {
	view, err := v.office.FeedView()
	if err != nil {
		return err
	}
	row, err := v.office.Row("holding", view.Holding)
	if err != nil {
		return err
	}
	b := &feedBody{Ways: v.waterWays("feed"), View: view}
	switch {
	case !view.Wanted:
		b.Lead = append(b.Lead, v.say("web.feed_not_wanted", nil))
	case view.DueNowL > 0:
		b.Lead = append(b.Lead, v.say("web.feed_due", words.Args{"l": view.DueNowL, "ml": view.DueML}))
	default:
		b.Lead = append(b.Lead, v.say("web.feed_none_due", nil))
	}
	for i := range view.Turns {
		line, err := v.feedLine(view, &view.Turns[i])
		if err != nil {
			return err
		}
		b.Rows = append(b.Rows, line)
	}
	if b.Label, err = v.small("label", "/water/feed", typed, []fieldBody{
		{Name: "feed_ml_l", Label: v.say("web.feed_label", nil), Kind: kindNumber, Unit: v.say("web.unit_ml/L", nil), Value: row.Cells["feed_ml_l"], Hint: v.say("web.feed_label_hint", nil)},
	}, hiddenField{"base", number(row.Version)}); err != nil {
		return err
	}
	return v.show(page{Name: "feed", Nav: waterNav, Status: status, Body: b})
}

func (v *visit) feedLine(view *desk.FeedView, f *desk.FeedRow) (feedLine, error) {
	entry, err := v.entry()
	line := feedLine{FeedRow: f, Name: capital(f.What) + ", " + f.BedName, Path: plantingPath(f.Planting), Now: f.Due <= view.Today,
		Hidden: []hiddenField{{"entry", entry}, {"planting", f.Planting}, {"l", plainNumber(f.Litres)}}}
	args := words.Args{"l": f.Litres, "cans": f.Cans, "ml": f.MLPerCan, "n": f.EveryD, "due": f.Due, "why": words.P("web.feed_why_"+f.Why, nil)}
	key := "web.feed_line_later"
	if line.Now {
		key = "web.feed_line"
	}
	if !view.Wanted {
		key = "web.feed_line_plain"
	}
	line.Says = v.say(key, args)
	if f.Last != nil {
		line.Says += " " + v.say("web.feed_last", words.Args{"on": *f.Last})
	}
	return line, err
}

// feedPosted keeps what the label says.
func feedPosted(v *visit) error {
	base, err := v.base()
	if err != nil {
		return err
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	typed := v.sent("label", "feed_ml_l")
	kept, err := v.office.Save(v.author(), "holding", h.ID, typed, base)
	if faults := listOf(err); faults != nil {
		return v.showFeed(typedForm{"label", typed, faults}, http.StatusUnprocessableEntity)
	}
	if err != nil {
		return err
	}
	v.kept(kept, "/water/feed")
	return nil
}

// feedGivenPosted records that a planting was fed with its watering.
func feedGivenPosted(v *visit) error {
	now, err := v.office.Today()
	if err != nil {
		return err
	}
	if v.field("planting") == "" {
		return formUnreadable()
	}
	kept, err := v.office.Save(v.author(), "records", "", map[string]string{"what": "fed", "planting": v.field("planting"), "date": now.String(), "value": v.field("l"), "unit": "L"}, 0)
	if err != nil {
		return err
	}
	v.kept(kept, "/water/feed")
	return nil
}
