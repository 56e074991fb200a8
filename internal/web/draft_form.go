package web

import (
	"cmp"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
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
	Faults  []words.Phrase // of no field: none
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

// draftTypedOf is the form as it asked before.
func draftTypedOf(o desk.DraftOptions) draftTyped {
	t := draftTyped{seconds: strconv.FormatFloat(o.Seconds, 'f', -1, 64), pins: o.Pins, forbids: o.Forbids}
	if o.Hours != nil {
		t.hours = strconv.FormatFloat(*o.Hours, 'f', -1, 64)
	}
	return t
}

// options is what the form asks for, with all that is wrong with it.
func (t *draftTyped) options() (desk.DraftOptions, fault.List) {
	o := desk.DraftOptions{Seed: 1, Pins: t.pins, Forbids: t.forbids}
	var faults fault.List
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
		o.Hours = &hours
	}
	return o, faults
}

// mostHours is all the hours there are in a week.
const mostHours = 168

// draftAsk shows the form with what was typed and what is wrong with it.
func (v *visit) draftAsk(t draftTyped, faults fault.List) (*draftAsk, error) {
	a := &draftAsk{Wrong: len(faults)}
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
		p.Name = capital(p.Name)
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

// draftCrops are the crops of the book that give food, by what the first use of each
// is called.
func (v *visit) draftCrops() ([]option, error) {
	choices, err := desk.Choices()
	out := []option{{"", v.say("web.draft_no_crop", nil)}}
	seen := map[string]bool{}
	for _, c := range choices {
		if c.Feeds && !seen[c.Crop] {
			seen[c.Crop] = true
			out = append(out, option{c.Crop, capital(c.Label)})
		}
	}
	slices.SortFunc(out[1:], func(a, b option) int { return cmp.Compare(a.Name, b.Name) })
	return out, err
}
