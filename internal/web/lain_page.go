package web

import (
	"cmp"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// lainBody is the page on which what lies in a store already is told.
type lainBody struct {
	NoStore bool
	Back    string
	Hidden  []hiddenField
	Fields  []fieldBody
	Wrong   int
	Faults  []words.Phrase // those of no field
}

// lainFields are what the form sends.
var lainFields = []string{"store", "grown", "kg", "unit", "stored"}

// The units in which it is told how much lies there.
const (
	unitKg     = "kg"
	unitPieces = "pieces"
)

// lainPath is where what lies in a store already is told.
func lainPath(store string) string {
	return "/larder/already?" + url.Values{"store": {store}}.Encode()
}

// lainPage shows the form, with the store it was opened from.
func lainPage(v *visit) error {
	return v.showLain(lossTyped{"store": v.query("store"), "unit": unitKg}, nil)
}

// lainPosted writes what lies there, or shows the form again with all that is wrong.
func lainPosted(v *visit) error {
	typed := lossTyped{}
	for _, name := range lainFields {
		typed[name] = strings.TrimSpace(v.field(name))
	}
	kept, err := v.office.LayIn(v.author(), typed.lain())
	if err == nil {
		v.kept(kept, storePath(typed["store"]))
		return nil
	}
	if faults := listOf(err); faults != nil {
		return v.showLain(typed, faults)
	}
	return err
}

// lain reads the form. What cannot be read is left out, and missed at the desk with all
// else that is wrong.
func (t lossTyped) lain() desk.Lain {
	l := desk.Lain{Store: t["store"], Pieces: t["unit"] == unitPieces, Since: cal.None}
	l.Crop, l.Use, _ = strings.Cut(t["grown"], "/")
	if amount, err := strconv.ParseFloat(strings.Replace(t["kg"], ",", ".", 1), 64); err == nil {
		l.Amount = amount
	}
	if day, err := cal.Parse(t["stored"]); err == nil {
		l.Since = day
	}
	return l
}

func (v *visit) showLain(typed lossTyped, faults fault.List) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := &lainBody{Wrong: len(faults), Back: "/larder", NoStore: len(h.Stores) == 0}
	if len(h.Stores) == 1 && typed["store"] == "" {
		typed["store"] = h.Stores[0].ID
	}
	must := func(name, kind string) fieldBody { return v.toldField("lain", name, kind, typed, true) }
	grown, store, unit := must("grown", kindChoice), must("store", kindChoice), must("unit", kindChoice)
	grown.Wide, store.Wide = true, true
	if grown.Options, err = v.eatenChoices(); err != nil {
		return err
	}
	for _, s := range h.Stores {
		store.Options = append(store.Options, option{s.ID, s.Name})
		if s.ID == typed["store"] {
			b.Back = storePath(s.ID)
		}
	}
	unit.Options = []option{{unitKg, v.say("web.unit_kg", nil)}, {unitPieces, v.say("web.lain_piece", nil)}}
	b.Fields = []fieldBody{grown, must("kg", kindNumber), unit, must("stored", kindDate), store}
	b.Faults = placed(b.Fields, faults)
	if b.Hidden, err = v.entryOf(); err != nil {
		return err
	}
	return v.show(page{Name: "lain", Nav: "larder", Status: statusOf(faults), Body: b})
}

// eatenChoices are all crops and uses that give food, as crop/use, and a crop of several
// uses by itself.
func (v *visit) eatenChoices() ([]option, error) {
	choices, err := desk.Choices()
	var out []option
	for i, g := range choices {
		if i+1 < len(choices) && choices[i+1].Crop == g.Crop && (i == 0 || choices[i-1].Crop != g.Crop) {
			out = append(out, option{g.Crop + "/", v.say("web.lain_any", words.Args{"crop": capital(g.Plural)})})
		}
		if g.Feeds {
			out = append(out, option{g.Crop + "/" + g.Use, capital(g.Label)})
		}
	}
	slices.SortStableFunc(out, func(a, b option) int { return cmp.Compare(a.Name, b.Name) })
	return out, err
}
