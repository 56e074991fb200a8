package web

import (
	"time"

	"garner/internal/words"
)

// rowsBody is a plain list of rows that are changed each on its page.
type rowsBody struct {
	Title, Says, AddKey, None string // keys
	Path                      string
	Rows                      []rowLine
	More                      []rowsPart // what hangs on it
	Coming                    bool       // what can be grown is being worked out
	Kitchen                   *rowLine   // the hours for preserving; nil: told elsewhere
}

// rowsPart is another list on the page, with its own heading.
type rowsPart struct {
	Title, Says, AddKey string // keys
	Path                string
	Rows                []rowLine
}

// rowLine is a row in such a list.
type rowLine struct {
	Name  string
	Path  string
	Holds string // the page of what lies in it; empty: none
	Says  words.Phrase
	Notes []words.Phrase // what is wrong with it though it may stand
}

// wants lists what the household eats.
func wants(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := rowsBody{Title: "web.wants_title", Says: "web.wants_says", AddKey: "web.wants_add", None: "web.wants_none", Path: "/wants"}
	notes, there, err := v.office.WantNotesWithin(barrenPatience)
	if err != nil {
		return err
	}
	b.Coming = !there
	for _, w := range h.Wants {
		b.Rows = append(b.Rows, rowLine{Name: capital(wantedName(h, w.Vegetable, w.Group)), Path: rowPath(&wantForm, w.ID) + "/edit", Says: wantWords(&w), Notes: notes.Wants[w.ID]})
	}
	b.More = append(b.More, groupParts(h, notes.Members)...)
	b.More = append(b.More, rowsPart{Title: "web.visits_title", Says: "web.visits_note", AddKey: "web.visits_add", Path: "/visits", Rows: visitLines(h)})
	b.More = append(b.More, rowsPart{Title: "web.left_title", Says: "web.left_note", AddKey: "web.left_add", Path: "/gaps_left", Rows: leftLines(h, "")})
	b.More = append(b.More, rowsPart{Title: "web.purchases_title", Says: "web.purchases_note", AddKey: "web.purchases_add", Path: "/purchases", Rows: purchaseLines(h)})
	return v.showPart(page{Name: "rows", Nav: "wants", Body: b})
}

// barrenPatience is how long a page waits to learn what the beds can grow.
const barrenPatience = 700 * time.Millisecond

// stores lists the places where food keeps.
func stores(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := rowsBody{Title: "web.stores_title", Says: "web.stores_says", AddKey: "web.stores_add", None: "web.stores_none", Path: "/stores", Kitchen: kitchenLine(h)}
	for _, s := range h.Stores {
		b.Rows = append(b.Rows, rowLine{Name: s.Name, Path: rowPath(&storeForm, s.ID) + "/edit", Holds: storePath(s.ID), Says: words.P("web.store_says", words.Args{
			"method": v.named("desk.value_stores.method.", s.Method), "kg": s.Holds(), "winter": s.WinterC, "summer": s.SummerC})})
	}
	return v.show(page{Name: "rows", Nav: "stores", Body: b})
}
