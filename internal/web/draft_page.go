package web

import (
	"errors"
	"net/http"
	"strconv"

	"garner/internal/desk"
	"garner/internal/words"
)

// draftPath is the page of a drafted year.
const draftPath = "/draft"

// draftBody is the page of a year that is drafted.
type draftBody struct {
	Lead    []string
	Coming  bool // it is being drafted
	Share   int  // of the time that is over [%]
	Wrong   []string
	NoWants bool // nothing is wanted yet, so there is nothing to draft for
	Result  *draftResult
	Ask     *draftAsk
}

// draftResult is what was drafted.
type draftResult struct {
	Notes   []string
	Beds    []draftBed
	Hidden  []hiddenField
	Compare string // address of it beside the plan it stands over; empty: it is not kept
	Empty   bool
}

// draftBed is what is to come into a bed, in order of time.
type draftBed struct {
	Name string
	Rows []draftLine
}

// draftLine is one planting.
type draftLine struct {
	desk.DraftRow
	Title, How, Why string
}

// draftPage shows the draft behind the pages as it stands, with the form that asks
// for another.
func draftPage(v *visit) error {
	b := &draftBody{}
	d := v.office.Drafting()
	seconds := float64(usualDraftSeconds)
	switch {
	case d == nil:
		b.Lead = []string{v.say("web.draft_lead", nil)}
	case !d.Done:
		b.Coming, b.Share, b.Lead = true, int(100*d.Share), v.draftUnderWay(d)
		return v.showPart(page{Name: "draft", Nav: "plans", Body: b})
	case d.Err != nil:
		seconds, b.Lead = d.Asked.Seconds, []string{v.say("web.draft_failed", nil)}
		b.Wrong = v.draftWrong(d.Err)
	default:
		seconds = d.Asked.Seconds
		if err := v.drafted(b, d); err != nil {
			return err
		}
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	if len(h.Wants) == 0 && d == nil { // a year is drafted for what is wanted
		b.NoWants, b.Lead = true, []string{v.say("web.draft_no_wants", nil)}
		return v.showPart(page{Name: "draft", Nav: "plans", Body: b})
	}
	ask, err := v.draftAsk(draftTypedOf(seconds, h.Wishes), nil)
	if err != nil {
		return err
	}
	b.Ask, ask.Again = ask, d != nil
	return v.showPart(page{Name: "draft", Nav: "plans", Body: b})
}

// draftUnderWay says how far a draft has come.
func (v *visit) draftUnderWay(d *desk.Drafting) []string {
	switch {
	case !d.Searching:
		return []string{v.say("web.draft_growing", nil)}
	case d.Stopped || d.Share >= 1:
		return []string{v.say("web.draft_laying", nil)}
	}
	return []string{v.say("web.draft_searching", nil), v.sentence(desk.Better(d.Best.Objective, d.Best.Bound))}
}

// draftWrong says why nothing could be drafted.
func (v *visit) draftWrong(err error) []string {
	var out []string
	for _, p := range phrasesOf(err) {
		out = append(out, v.sentence(p))
	}
	return out
}

// drafted fills the page with what was drafted.
func (v *visit) drafted(b *draftBody, d *desk.Drafting) error {
	view := d.View
	b.Lead = []string{v.say("web.draft_done", words.Args{"n": len(view.Rows), "kept": view.Kept, "weeks": view.Weeks, "from": view.From, "futures": view.Futures}),
		v.say("web.draft_share", words.Args{"now": view.ShareNow, "then": view.ShareThen}),
		v.say("web.draft_short", words.Args{"now": view.ShortNow, "then": view.ShortThen}), v.sentence(desk.Better(view.Objective, view.Bound))}
	entry, err := v.entry()
	if err != nil {
		return err
	}
	r := &draftResult{Empty: len(view.Rows) == 0, Hidden: []hiddenField{{"entry", entry}}}
	for _, n := range view.Notes {
		r.Notes = append(r.Notes, v.sentence(n))
	}
	for i := range view.Rows {
		row := &view.Rows[i]
		if n := len(r.Beds); n == 0 || r.Beds[n-1].Name != row.BedName {
			r.Beds = append(r.Beds, draftBed{Name: row.BedName})
		}
		bed := &r.Beds[len(r.Beds)-1]
		why := v.sentence(row.Says)
		if row.Under.Key != "" {
			why += " " + v.sentence(row.Under)
		}
		bed.Rows = append(bed.Rows, draftLine{DraftRow: *row, Title: capital(row.Name), How: v.named("web.draft_how_", row.Method), Why: why})
	}
	if d.Kept != "" && d.Base != "" {
		r.Compare = comparePath(d.Base, d.Kept)
	}
	b.Result = r
	return nil
}

// startDraft keeps what is wished and begins a draft, or shows what is wrong with what
// was asked.
func startDraft(v *visit) error {
	typed := typedDraft(v.r.PostForm)
	asked, wishes, faults := typed.asked()
	var kept *desk.KeptEntry
	if len(faults) == 0 {
		var err error
		if kept, err = v.office.KeepWishes(v.author(), wishes); err != nil && !errors.As(err, &faults) {
			return err
		}
	}
	if len(faults) == 0 {
		if err := v.office.StartDraft(asked); err != nil {
			return err
		}
		v.kept(kept, draftPath)
		return nil
	}
	ask, err := v.draftAsk(typed, faults)
	if err != nil {
		return err
	}
	b := &draftBody{Ask: ask, Lead: []string{v.say("web.draft_lead", nil)}}
	return v.show(page{Name: "draft", Nav: "plans", Status: http.StatusUnprocessableEntity, Body: b})
}

// stopDraft ends the search with the best so far.
func stopDraft(v *visit) error {
	v.office.StopDraft()
	v.moveTo(draftPath)
	return nil
}

// halfYear is how far on the year lies that a draft is called by [d].
const halfYear = 182

// keepDraft writes what was drafted as a draft.
func keepDraft(v *visit) error {
	d := v.office.Drafting()
	year := ""
	if d != nil && d.View != nil {
		year = strconv.Itoa((d.View.From + halfYear).Year()) // drafted in December, it is of the next
	}
	kept, _, err := v.office.KeepDraft(v.author(), v.say("web.draft_name", words.Args{"year": year}))
	if err != nil {
		return err
	}
	v.kept(kept, draftPath)
	return nil
}
