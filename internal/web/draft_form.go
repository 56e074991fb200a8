package web

import (
	"cmp"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// How long a page's draft is searched for when nothing else is asked, and at most [s].
const (
	usualDraftSeconds = 10
	mostDraftSeconds  = 600
)

// blankForbids is how many more crops can be forbidden each time that it is asked.
const blankForbids = 2

// draftTyped is what the form held, as typed.
type draftTyped struct {
	seconds, hours string
	pins           []string
	forbids        []desk.DraftCrop
}

// draftAsk is the form that asks for a draft.
type draftAsk struct {
	Again   bool
	Fields  []fieldBody
	Faults  []words.Phrase // of no field: wishes that cannot be
	Hidden  []hiddenField
	Wrong   int
	Pins    []draftPin
	Forbids []draftForbid
}

// draftPin is a planting that can be told to stay.
type draftPin struct {
	desk.DraftPin
	On bool
}

// draftForbid is one crop that is not to come into a bed.
type draftForbid struct {
	N          int
	Crop, Bed  string
	Crops, All []option
}

// typedDraft reads the form.
func typedDraft(form url.Values) draftTyped {
	t := draftTyped{seconds: strings.TrimSpace(form.Get("seconds")), hours: strings.TrimSpace(form.Get("hours")), pins: form["pin"]}
	crops, beds := form["crop"], form["bed"]
	for i, crop := range crops {
		if crop != "" && i < len(beds) {
			t.forbids = append(t.forbids, desk.DraftCrop{Crop: crop, Bed: beds[i]})
		}
	}
	return t
}

// draftTypedOf is the form with the wishes that are kept.
func draftTypedOf(seconds float64, wishes []plan.Wish) draftTyped {
	t := draftTyped{seconds: strconv.FormatFloat(seconds, 'f', -1, 64)}
	for _, w := range wishes {
		switch w.Kind {
		case plan.Pin:
			t.pins = append(t.pins, w.Planting)
		case plan.Forbid:
			t.forbids = append(t.forbids, desk.DraftCrop{Crop: w.Crop, Bed: w.Bed})
		case plan.Hours:
			t.hours = strconv.FormatFloat(w.Hours, 'f', -1, 64)
		}
	}
	return t
}

// asked is what the form asks for, with all that is wrong with it.
func (t *draftTyped) asked() (o desk.DraftOptions, wishes []plan.Wish, faults fault.List) {
	o.Seed = draftSeed
	for _, id := range t.pins {
		wishes = append(wishes, plan.Wish{Kind: plan.Pin, Planting: id})
	}
	for _, f := range t.forbids {
		wishes = append(wishes, plan.Wish{Kind: plan.Forbid, Crop: f.Crop, Bed: f.Bed})
	}
	seconds, err := strconv.ParseFloat(strings.Replace(t.seconds, ",", ".", 1), 64)
	if err != nil || !(seconds > 0 && seconds <= mostDraftSeconds) {
		faults = append(faults, fault.New(fault.OutOfRange, "web.draft_seconds", words.Args{"given": t.seconds, "most": mostDraftSeconds}).In(fault.Place{Column: "seconds"}))
	}
	o.Seconds = seconds
	if t.hours != "" {
		hours, err := strconv.ParseFloat(strings.Replace(t.hours, ",", ".", 1), 64)
		if err != nil || !(hours >= 0 && hours <= mostHours) {
			faults = append(faults, fault.New(fault.OutOfRange, "web.draft_hours", words.Args{"given": t.hours, "most": mostHours}).In(fault.Place{Column: "hours"}))
		}
		wishes = append(wishes, plan.Wish{Kind: plan.Hours, Hours: hours})
	}
	return o, wishes, faults
}

// draftSeed is the seed of the pages' drafts.
const draftSeed = 1

// mostHours is all the hours there are in a week.
const mostHours = 168

// draftAsk shows the form with what was typed and what is wrong with it.
func (v *visit) draftAsk(t draftTyped, faults fault.List) (*draftAsk, error) {
	a := &draftAsk{Wrong: len(faults)}
	for _, wrong := range faults {
		if wrong.At.Column != "seconds" && wrong.At.Column != "hours" {
			a.Faults = append(a.Faults, wrong.Phrase)
		}
	}
	entry, err := v.entry()
	if err != nil {
		return nil, err
	}
	a.Hidden = []hiddenField{{"entry", entry}}
	for _, f := range []struct{ name, value string }{{"seconds", t.seconds}, {"hours", t.hours}} {
		field := fieldBody{Name: f.name, Label: v.named("web.draft_field_", f.name), Hint: v.named("web.draft_hint_", f.name), Unit: v.named("web.draft_unit_", f.name),
			Kind: "number", Value: f.value, Must: f.name == "seconds"}
		for _, wrong := range faults {
			if wrong.At.Column == f.name {
				field.Faults = append(field.Faults, wrong.Phrase)
			}
		}
		a.Fields = append(a.Fields, field)
	}
	pins, err := v.office.DraftPins()
	if err != nil {
		return nil, err
	}
	for _, p := range pins {
		if p.Date.IsSet() {
			p.Name = capital(p.Name)
		}
		a.Pins = append(a.Pins, draftPin{p, slices.Contains(t.pins, p.Planting)})
	}
	return a, v.draftForbids(a, t.forbids)
}

// draftForbids are the crops that are forbidden, with room for more.
func (v *visit) draftForbids(a *draftAsk, forbids []desk.DraftCrop) error {
	crops, err := v.draftCrops()
	if err != nil {
		return err
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	beds := []option{{"", v.say("web.draft_any_bed", nil)}}
	for _, b := range h.Beds {
		beds = append(beds, option{b.ID, b.Name})
	}
	for i := range len(forbids) + blankForbids {
		f := draftForbid{N: i + 1, Crops: crops, All: beds}
		if i < len(forbids) {
			f.Crop, f.Bed = forbids[i].Crop, forbids[i].Bed
		}
		a.Forbids = append(a.Forbids, f)
	}
	return nil
}

// draftCrops are the crops of the book that give food, by their names.
func (v *visit) draftCrops() ([]option, error) {
	choices, err := desk.Choices()
	out := []option{{"", v.say("web.draft_no_crop", nil)}}
	seen := map[string]bool{}
	for _, c := range choices {
		if c.Feeds && !seen[c.Crop] {
			seen[c.Crop] = true
			out = append(out, option{c.Crop, capital(c.Name)})
		}
	}
	slices.SortFunc(out[1:], func(a, b option) int { return cmp.Compare(a.Name, b.Name) })
	return out, err
}
