package web

import (
	"net/http"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// feedBody is the page of feed, with the water and dry.
type feedBody struct {
	Ways   waterWays
	View   *desk.FeedView
	Lead   []string
	All    []feedAll
	Hidden []hiddenField // of the form that records all that is due
	Rows   []feedLine
	Label  *smallForm
	Faults []words.Phrase
}

// feedAll is a button that records all that is due as fed one way.
type feedAll struct {
	How  string // the button's value
	Says string
	Main bool
}

// feedPage shows who is fed when, and with how much.
func feedPage(v *visit) error { return v.showFeed(typedForm{}) }

// labelForm and givenFeeds name the forms of the page.
const (
	labelForm  = "label"
	givenFeeds = "given"
)

func (v *visit) showFeed(typed typedForm) error {
	view, err := v.office.FeedView()
	if err != nil {
		return err
	}
	b := &feedBody{Ways: v.waterWays("feed"), View: view, Lead: []string{v.feedLead(view)}}
	if typed.id == givenFeeds {
		for _, e := range typed.faults {
			b.Faults = append(b.Faults, e.Phrase)
		}
	}
	for i := range view.Turns {
		line, err := v.feedLine(view, &view.Turns[i])
		if err != nil {
			return err
		}
		b.Rows = append(b.Rows, line)
	}
	if err := v.feedsAll(b); err != nil {
		return err
	}
	if b.Label, err = v.feedLabel(view, typed); err != nil {
		return err
	}
	p := page{Name: "feed", Nav: waterNav, Body: b}
	if len(typed.faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p)
}

// feedLead tells what is due now.
func (v *visit) feedLead(view *desk.FeedView) string {
	key := "web.feed_due"
	switch {
	case !view.Wanted:
		key = "web.feed_not_wanted"
	case view.DueNowL <= 0:
		key = "web.feed_none_due"
	case view.Liquid && view.Dry:
		key = "web.feed_due_either"
	case view.Dry:
		key = "web.feed_due_dry"
	}
	return v.say(key, words.Args{"l": view.DueNowL, "ml": view.DueML, "g": view.DueG})
}

// feedsAll offers to record all that is due at once, where there is more than one.
func (v *visit) feedsAll(b *feedBody) error {
	entry, err := v.entry()
	if err != nil {
		return err
	}
	b.Hidden = []hiddenField{{"entry", entry}}
	n := 0
	for i := range b.Rows {
		if b.Rows[i].Now {
			n++
			b.Hidden = append(b.Hidden, hiddenField{"planting", b.Rows[i].Planting})
		}
	}
	if n < 2 {
		return nil
	}
	args := words.Args{"n": n, "l": b.View.DueNowL, "g": b.View.DueG}
	if b.View.Liquid {
		b.All = append(b.All, feedAll{"liquid", v.say("web.feed_all", args), true})
	}
	if b.View.Dry {
		b.All = append(b.All, feedAll{feedDry, v.say("web.feed_all_dry", args), !b.View.Liquid})
	}
	return nil
}

// feedLabel is the form in which the doses of the labels are told.
func (v *visit) feedLabel(view *desk.FeedView, typed typedForm) (*smallForm, error) {
	row, err := v.office.Row("holding", view.Holding)
	if err != nil {
		return nil, err
	}
	return v.small(labelForm, "/water/feed", typed, []fieldBody{
		{Name: "feed_ml_l", Label: v.say("web.feed_label", nil), Kind: kindNumber, Unit: v.say("web.unit_ml/L", nil), Value: row.Cells["feed_ml_l"], Hint: v.say("web.feed_label_hint", nil)},
		{Name: "feed_g_m2", Label: v.say("web.feed_label_dry", nil), Kind: kindNumber, Unit: v.say("web.unit_g/m2", nil), Value: row.Cells["feed_g_m2"], Hint: v.say("web.feed_label_dry_hint", nil)},
	}, hiddenField{"base", number(row.Version)})
}

// feedPosted keeps what the labels say.
func feedPosted(v *visit) error {
	base, err := v.base()
	if err != nil {
		return err
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	typed := v.sent(labelForm, "feed_ml_l", "feed_g_m2")
	kept, err := v.office.Save(v.author(), "holding", h.ID, typed, base)
	if faults := listOf(err); faults != nil {
		return v.showFeed(typedForm{labelForm, typed, faults})
	}
	if err != nil {
		return err
	}
	v.kept(kept, "/water/feed")
	return nil
}

// feedDry is the value of a button that records dry feed.
const feedDry = "dry"

// feedGivenPosted records that plantings were fed.
func feedGivenPosted(v *visit) error {
	if v.field("planting") == "" {
		return formUnreadable()
	}
	kept, err := v.office.Feed(v.author(), desk.FeedGiven{Plantings: v.r.PostForm["planting"], Dry: v.field("how") == feedDry})
	if faults := listOf(err); faults != nil {
		return v.showFeed(typedForm{givenFeeds, nil, fault.List(faults)})
	}
	if err != nil {
		return err
	}
	v.kept(kept, "/water/feed")
	return nil
}
