package web

import (
	"strconv"
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/words"
)

// historyBody is the page of everything that was written.
type historyBody struct {
	Days  []historyDay
	Older int // how many entries the next longer page shows; 0: these are all
}

// historyDay is what was written on one day.
type historyDay struct {
	Day     cal.Date
	Entries []historyEntry
}

// historyEntry is one entry.
type historyEntry struct {
	ID     string
	What   words.Phrase
	Time   string // of the day
	Who    string
	Device string
	Taken  bool // it was taken back
	First  bool // it brought the holding itself, and stays
}

// entriesShown is how many entries a page of the history shows more than the one
// before it.
const entriesShown = 50

// history lists what was written, the newest first.
func history(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(v.query("n"))
	if err != nil || n < entriesShown {
		n = entriesShown
	}
	entries, err := v.office.Entries(n + 1)
	if err != nil {
		return err
	}
	var b historyBody
	if len(entries) > n {
		entries, b.Older = entries[:n], n+entriesShown
	}
	zone, err := time.LoadLocation(h.Zone)
	if err != nil {
		zone = time.UTC
	}
	for i := range entries {
		b.add(&entries[i], zone)
	}
	return v.show(page{Name: "history", Nav: "history", Body: b})
}

func (b *historyBody) add(e *desk.KeptEntry, zone *time.Location) {
	at, err := time.Parse(time.RFC3339, e.At)
	day, clock := cal.None, ""
	if err == nil {
		at = at.In(zone)
		year, month, dayOfMonth := at.Date()
		day, clock = cal.Of(year, int(month), dayOfMonth), at.Format("15:04")
	}
	if n := len(b.Days); n == 0 || b.Days[n-1].Day != day {
		b.Days = append(b.Days, historyDay{Day: day})
	}
	last := &b.Days[len(b.Days)-1]
	last.Entries = append(last.Entries, historyEntry{ID: e.ID, What: e.What, Time: clock, Who: e.Who, Device: e.Device, Taken: e.UndoneBy != "", First: beganWith(e)})
}

// beganWith tells whether an entry brought the holding itself. Taking that back
// would leave nothing on which to take back the taking back.
func beganWith(e *desk.KeptEntry) bool {
	for _, c := range e.Changes {
		if c.Table == "holding" && c.Before == nil && c.After != nil {
			return true
		}
	}
	return false
}

// undo takes an entry back. Pressed twice it takes back once.
func undo(v *visit) error {
	id, back := v.field("taken"), v.back("/history")
	e, err := v.office.Entry(id)
	switch {
	case err != nil:
		return err
	case e == nil:
		return fault.New(fault.NotFound, "web.no_entry", nil)
	case beganWith(e):
		return fault.New(fault.Conflict, "web.undo_first", nil)
	case e.UndoneBy != "":
		v.kept(&desk.KeptEntry{Entry: journal.Entry{ID: e.UndoneBy}}, back)
		return nil
	}
	kept, err := v.office.Undo(v.author(), id)
	if err != nil {
		return err
	}
	v.kept(kept, back)
	return nil
}
