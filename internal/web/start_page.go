package web

import (
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"garner/internal/fault"
	"garner/internal/gazetteer"
	"garner/internal/words"
)

// The steps of the first run.
const (
	stepPlace = iota + 1
	stepTable
	stepGround
	stepCheck
	stepBegin // no page: the holding is written
)

// startBody is the page of the first run.
type startBody struct {
	Step   int
	Steps  []startStep
	Entry  string
	Sample bool // a sample can be looked at
	Form   startForm
	Hidden []hiddenField
	Faults []words.Phrase
	Places placesBody
	Offers []offerLine
	startRead
}

// startStep is one step by number and title.
type startStep struct {
	N     int
	Title string // a key
}

var startSteps = []startStep{{stepPlace, "web.start_step_place"}, {stepTable, "web.start_step_table"},
	{stepGround, "web.start_step_ground"}, {stepCheck, "web.start_step_check"}}

// placesBody is the list of places that answer what was looked for.
type placesBody struct {
	Query   string
	List    []gazetteer.Match
	Spelled bool // found by the nearest spelling
	Chosen  string
}

// mostPlaces is how many places are offered at once.
const mostPlaces = 8

// startPage shows the first step.
func startPage(v *visit) error {
	if there, err := v.hasHolding(); err != nil || there {
		if err == nil {
			v.moveTo("/")
		}
		return err
	}
	return v.showStart(stepPlace, newStartForm(v.zone()), nil)
}

// startPosted takes the form of a step and shows the one asked for. Going on is
// refused while what was told cannot be used; going back never is.
func startPosted(v *visit) error {
	if there, err := v.hasHolding(); err != nil || there {
		if err == nil {
			v.moveTo("/")
		}
		return err
	}
	form := v.startForm()
	from, to := stepOf(v.field("step")), stepOf(v.field("go"))
	for step := stepPlace; step < to; step++ {
		if faults := v.checkStep(step, &form); len(faults) > 0 {
			return v.showStart(step, form, faults)
		}
	}
	if to < stepBegin || from < stepCheck {
		return v.showStart(min(to, stepCheck), form, nil)
	}
	if err := v.begin(&form); err != nil {
		if faults := listOf(err); faults != nil {
			return v.showStart(stepCheck, form, faults)
		}
		return err
	}
	v.moveTo("/")
	return nil
}

// stepOf reads a step; anything else is the first.
func stepOf(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < stepPlace || n > stepBegin {
		return stepPlace
	}
	return n
}

// zone is the time zone of this machine, for browsers without script.
func (v *visit) zone() string {
	if name := time.Local.String(); name != "Local" {
		return name
	}
	return "UTC"
}

// showStart shows a step with what is known so far; the answers of other steps
// go along unseen.
func (v *visit) showStart(step int, form startForm, faults fault.List) error {
	entry := v.field("entry")
	if entry == "" {
		var err error
		if entry, err = v.entry(); err != nil {
			return err
		}
	}
	b := startBody{Step: step, Steps: startSteps, Entry: entry, Sample: v.sample != nil, Form: form, Hidden: form.hidden(step), Faults: phrasesOf(faults)}
	var err error
	switch step {
	case stepPlace:
		b.Places = placesFor(form.Query, form.Place)
	case stepTable:
		b.Offers, err = v.offers(&form)
	case stepCheck:
		b.startRead, err = v.readStart(&form)
	}
	if err != nil {
		return err
	}
	status := http.StatusOK
	if len(faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	v.w.Header().Set("Cache-Control", "no-store")
	return v.show(page{Name: "start", Status: status, Body: b})
}

// placesFor looks places up; the first that answers by its name is chosen.
func placesFor(query, chosen string) placesBody {
	b := placesBody{Query: strings.TrimSpace(query), Chosen: chosen}
	if b.Query != "" {
		b.List = gazetteer.Search(b.Query, mostPlaces)
	}
	if place, known := gazetteer.Find(chosen); known && !slices.ContainsFunc(b.List, func(m gazetteer.Match) bool { return m.ID == chosen }) && b.Query == "" {
		b.List = []gazetteer.Match{{Place: place}}
	}
	for _, m := range b.List {
		b.Spelled = b.Spelled || m.Spelled
	}
	if len(b.List) > 0 && !slices.ContainsFunc(b.List, func(m gazetteer.Match) bool { return m.ID == chosen }) {
		b.Chosen = b.List[0].ID
	}
	return b
}

// startPlaces answers with the list of places alone, for a page that looks them
// up while one types.
func startPlaces(v *visit) error {
	body, err := v.pages.renderNamed("start", "places", placesFor(v.query("q"), ""))
	if err != nil {
		return err
	}
	send(v.w, v.r, http.StatusOK, "text/html; charset=utf-8", body)
	return nil
}

// startSample begins with a copy of the demo household.
func startSample(v *visit) error {
	if v.sample == nil {
		return fault.New(fault.NotFound, "web.no_sample", nil)
	}
	there, err := v.hasHolding()
	if err == nil && !there {
		err = v.sample(v.author(), "")
	}
	if err != nil {
		return err
	}
	v.moveTo("/")
	return nil
}
