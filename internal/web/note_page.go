package web

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// noteBody is the page for somebody who looks after the garden and does not know it.
type noteBody struct {
	Title  string
	Back   string
	Come   string // on which days, and how many places
	Can    string
	Rain   string
	Tables []noteTable
	Pick   []string
	Leave  []string
	Doors  []string
	Untold []untoldSite
}

// noteTable are some of the days, side by side: as many as a sheet is wide.
type noteTable struct {
	Days  []noteDay
	Sites []noteSite
}

type noteDay struct{ Weekday, Day string }

type noteSite struct {
	Name string
	Wide int // columns of the table
	Rows []noteRow
}

type noteRow struct {
	Name, Sort string
	Give       []string
}

// noteDays is how many days stand side by side on a sheet.
const noteDays = 14

// notePage shows the helper's note.
func notePage(v *visit) error {
	o, every, err := v.awayAsked()
	if err != nil {
		return err
	}
	view, err := v.office.AwayView(o, every)
	if err != nil {
		return err
	}
	return v.show(page{Name: "note", Nav: waterNav, Body: v.noteBody(view)})
}

func (v *visit) noteBody(view *desk.AwayView) *noteBody {
	say := func(key string, args words.Args) string { return v.sentence(sharpened(words.P(key, args), view.Today)) }
	round := &view.Rest.Round
	b := &noteBody{Title: say("web.note_title", words.Args{"leave": view.Away.Leave, "back": view.Away.Back}),
		Back: awayQuery("/water/away", view), Can: say("web.note_can", words.Args{"l": view.CanL}), Rain: say("web.note_rain", nil)}
	switch {
	case len(round.Days) == 0:
		b.Come = say("web.note_no_round", nil)
	case round.EveryD == 1:
		b.Come = say("web.note_daily", words.Args{"first": round.Days[0], "last": round.Days[len(round.Days)-1]})
	default:
		b.Come = say("web.note_every", words.Args{"n": round.EveryD, "first": round.Days[0], "last": round.Days[len(round.Days)-1]})
	}
	for from := 0; from < len(round.Days) && len(round.Stops) > 0; from += noteDays {
		b.Tables = append(b.Tables, v.noteTable(view, from, min(from+noteDays, len(round.Days))))
	}
	b.Pick, b.Untold = v.notePicks(view), v.untold
	for _, p := range view.Rest.Waits {
		b.Leave = append(b.Leave, capital(p.Name))
	}
	for _, d := range view.Rest.Doors {
		b.Doors = append(b.Doors, v.doorSays(&d))
	}
	return b
}

// notePicks tells what is picked, what is picked as often together.
func (v *visit) notePicks(view *desk.AwayView) []string {
	var order []int
	names, first := map[int][]string{}, map[int]cal.Date{}
	for _, p := range view.Rest.Picks {
		if len(p.Days) == 0 {
			continue
		}
		if names[p.EveryD] == nil {
			order, first[p.EveryD] = append(order, p.EveryD), p.Days[0]
		}
		names[p.EveryD] = append(names[p.EveryD], p.Name)
		first[p.EveryD] = min(first[p.EveryD], p.Days[0])
	}
	slices.Sort(order)
	var out []string
	for _, every := range order {
		key := "web.note_pick"
		if every == 0 {
			key = "web.note_pick_once"
		}
		out = append(out, v.sentence(sharpened(words.P(key, words.Args{"names": strings.Join(names[every], "; "), "n": every, "on": first[every]}), view.Today)))
	}
	return out
}

// noteTable is the round on some of its days, along the route; a place that is given
// nothing on them is left out.
func (v *visit) noteTable(view *desk.AwayView, from, to int) noteTable {
	round := &view.Rest.Round
	t := noteTable{}
	for _, d := range round.Days[from:to] {
		t.Days = append(t.Days, noteDay{v.weekday(d), strconv.Itoa(dayOf(d).Day)})
	}
	for _, s := range view.Sites {
		site := noteSite{Name: s.Name, Wide: to - from + 1}
		for i := range round.Stops {
			stop := &round.Stops[i]
			if stop.Site != s.ID {
				continue
			}
			row, any := noteRow{Name: stop.Name}, false
			if stop.Kind != "bed" {
				row.Sort = v.say("web.water_kind_"+stop.Kind, nil)
			}
			for _, litres := range stop.Litres[from:to] {
				any = any || litres > 0
				row.Give = append(row.Give, v.noteGive(litres, view.CanL))
			}
			if any {
				site.Rows = append(site.Rows, row)
			}
		}
		if len(site.Rows) > 0 {
			t.Sites = append(t.Sites, site)
		}
	}
	return t
}

// noteGive is what a cell of the round says: cans, few litres as litres.
func (v *visit) noteGive(litres, canL float64) string {
	switch {
	case litres <= 0:
		return ""
	case smallGift(litres, canL):
		return v.words.Format().Litres(litres)
	}
	return v.words.Format().Plain(desk.CansOf(litres, canL))
}

// weekday names the day of the week in short.
func (v *visit) weekday(d cal.Date) string {
	return v.say("web.note_weekday_"+strconv.Itoa(d.Weekday()), nil)
}
