package web

import (
	"net/http"
	"strconv"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// foundBody is the page of what weather files hold, before they are kept.
type foundBody struct {
	Token   string
	Entry   string
	Gone    bool
	Files   []foundFile
	Sites   []option
	Fit     bool // there is something to keep
	Faulty  bool // rows would be left out
	LeftOut int
	Faults  []words.Phrase
	Maps    []mapForm
}

// foundFile is one file.
type foundFile struct {
	Name  string
	Says  []string
	Parts []foundPart
}

// foundPart is a list of what was noticed in a file.
type foundPart struct {
	Title string // a key
	Lines []string
	More  int
}

// mostFoundLines is how many lines of each kind are shown at once.
const mostFoundLines = 60

// weatherFound shows what was found.
func weatherFound(v *visit) error {
	return v.showFound(v.found.get(v.r.PathValue("token")), nil, nil)
}

// showFound shows files that wait, with what keeps them from being kept.
func (v *visit) showFound(f *foundFiles, faults fault.List, typed *mapForm) error {
	b := &foundBody{Gone: f == nil, Faults: phrasesOf(faults)}
	var err error
	if b.Entry, err = v.entry(); err != nil {
		return err
	}
	status := http.StatusOK
	if f == nil {
		status = http.StatusNotFound
	} else if err := v.fillFound(b, f, typed); err != nil {
		return err
	}
	if len(faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	v.w.Header().Set("Cache-Control", "no-store")
	return v.show(page{Name: "weather_found", Nav: "weather", Status: status, Body: b})
}

func (v *visit) fillFound(b *foundBody, f *foundFiles, typed *mapForm) error {
	b.Token, b.Fit = f.Token, true
	for i, found := range f.Found {
		b.Files = append(b.Files, v.foundFile(found))
		b.Fit = b.Fit && !found.Unfit()
		b.Faulty = b.Faulty || found.Faulty()
		b.LeftOut += len(found.Refused) + len(found.Doubtful)
		if _, waits := f.raw[i]; waits {
			form := newMapForm(f.Token, i, found)
			if typed != nil && typed.File == i {
				form = *typed
			}
			b.Maps = append(b.Maps, v.completed(form, found.Headings))
		}
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	for _, s := range h.Sites {
		b.Sites = append(b.Sites, option{Value: s.ID, Name: s.Name})
	}
	return nil
}

func (v *visit) foundFile(w *desk.WeatherFound) foundFile {
	out := foundFile{Name: w.File}
	for _, p := range w.Says() {
		out.Says = append(out.Says, v.sentence(p))
	}
	for _, part := range []struct {
		title string
		list  fault.List
	}{{"web.weather_unfit", w.Wrong}, {"web.weather_refused", w.Refused}, {"web.weather_doubtful", w.Doubtful}, {"web.weather_noticed", w.Warnings}} {
		if len(part.list) == 0 {
			continue
		}
		p := foundPart{Title: part.title}
		for i, e := range part.list {
			if i == mostFoundLines {
				p.More = len(part.list) - i
				break
			}
			p.Lines = append(p.Lines, v.placedFault(e))
		}
		out.Parts = append(out.Parts, p)
	}
	return out
}

// keepWeather keeps the files that wait.
func keepWeather(v *visit) error {
	f := v.found.get(v.field("token"))
	if f == nil {
		return v.showFound(nil, nil, nil)
	}
	e, err := v.office.TakeWeather(v.author(), f.Found, desk.WeatherTake{Site: v.field("site"), KeepGood: v.field("keep") == "good"})
	if err != nil {
		if faults := listOf(err); faults != nil {
			return v.showFound(f, faults, nil)
		}
		return err
	}
	v.kept(e, weatherFilesPath)
	return nil
}

// mapColumns keeps a column map and reads the files that wait anew.
func mapColumns(v *visit) error {
	f := v.found.get(v.field("token"))
	at, err := strconv.Atoi(v.field("file"))
	if f == nil || err != nil || at < 0 || at >= len(f.Found) || f.Found[at].Headings == nil {
		return v.showFound(nil, nil, nil)
	}
	form := v.postedMap(f.Token, at)
	cells, faults := form.cells(f.Found[at].Headings)
	if len(faults) > 0 {
		return v.showFound(f, faults, &form)
	}
	if _, err := v.office.Save(v.author(), "column_maps", "", cells, 0); err != nil {
		if faults := listOf(err); faults != nil {
			return v.showFound(f, faults, &form)
		}
		return err
	}
	again, err := v.readAgain(f)
	if err != nil {
		return err
	}
	v.found.put(again)
	v.moveTo(foundPath(again.Token))
	return nil
}
