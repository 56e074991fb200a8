package desk

import (
	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// LossView is a planting of which something went wrong, for the forms that tell
// it.
type LossView struct {
	Planting   string
	Name       string // what it is, with its variety and bed
	Crop, Use  string
	Bed        string
	Store      string // that it is meant for; empty: none
	Today      cal.Date
	Began      cal.Date
	Gone       cal.Date // nothing of it is left from this day on; None: something is
	Left       float64  // share that still stands today
	AreaM2     float64  // ground that it holds today
	Plants     float64  // that were set out
	Causes     []CauseView
	Cautions   []LossCautions
	Stores     []StoreRoom // in which it keeps
	MovesBadly bool        // it is only ever sown where it grows
	Notes      []string    // cautions of the crop itself
}

// LossCautions are what to mind when a planting is lost to a cause.
type LossCautions struct {
	Cause    words.Phrase
	Cautions []CautionView
}

// StoreRoom is a store in which something keeps.
type StoreRoom struct {
	ID, Name string
	Prepare  []words.Phrase // how it is made ready for it
}

// BedRoom is a bed with the ground in it that is free today.
type BedRoom struct {
	ID, Name       string
	AreaM2, FreeM2 float64
}

// LossView returns what the forms of a loss are made of.
func (o *Office) LossView(planting string) (*LossView, error) {
	w, err := o.about(planting)
	if err != nil {
		return nil, err
	}
	left := record.Left(w.losses, w.today)
	v := &LossView{Planting: planting, Crop: w.planting.Crop, Use: w.planting.Use, Bed: w.planting.Bed, Store: w.planting.Store, Today: w.today, Began: w.began(),
		Gone: w.gone(), Left: left, AreaM2: w.planting.AreaM2 * left, Plants: w.planting.AreaM2 * w.plantsPerM2(),
		Causes: causesOf(w.crop), MovesBadly: w.movesBadly()}
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	v.Name = newNamer(a).planting(planting)
	for _, c := range v.Causes {
		list, err := cautionsOf(w.book, w.crop, c.ID)
		if err != nil {
			return nil, err
		}
		if len(list) > 0 {
			v.Cautions = append(v.Cautions, LossCautions{c.Name, list})
		}
	}
	for _, s := range w.holding.Stores {
		if w.keeps(s.ID) {
			way, _ := w.way(s.ID)
			v.Stores = append(v.Stores, StoreRoom{s.ID, s.Name, preparingOf(w.book, w.planting.Crop, &way)})
		}
	}
	for _, key := range lossNotes {
		for _, own := range w.crop.Cautions {
			if caution, ok := w.book.Caution(key); ok && own == key {
				v.Notes = append(v.Notes, caution.Text)
			}
		}
	}
	return v, nil
}

// InTheGround tells whether a planting is in the ground today, by the plan and the
// records.
func (o *Office) InTheGround(planting string) (bool, error) {
	w, err := o.about(planting)
	if err != nil {
		return false, err
	}
	cleared := w.planting.ClearBy.IsSet() && w.planting.ClearBy <= w.today
	return !cleared && !w.gone().IsSet() && w.began() <= w.today, nil
}

// lossNotes are the cautions of a crop that matter when it is picked before its
// time.
var lossNotes = []string{"green-tomato", "potato-green", "potato-foliage"}

// Rooms lists the beds other than one, with the ground that is free in them for
// the next weeks, in the middle year.
func (o *Office) Rooms(other string) ([]BedRoom, error) {
	a, ground, err := o.askSpace(nil)
	if err != nil {
		return nil, err
	}
	var out []BedRoom
	for _, b := range a.holding.Beds {
		if b.ID == other {
			continue
		}
		room := BedRoom{ID: b.ID, Name: b.Name, AreaM2: b.AreaM2()}
		if its := ground.Bed(b.ID); its != nil {
			room.FreeM2 = its.RoomM2(a.setting.Today, a.setting.Today+roomDays)
		}
		out = append(out, room)
	}
	return out, nil
}

// roomDays is for how long ground must be free to take a moved planting [d].
const roomDays = 28 // judgement: time to root again

// lossesTold says what was recorded as lost of a planting, and to what.
func lossesTold(a *asked, p *plan.Planting) []words.Phrase {
	var out []words.Phrase
	for _, l := range lossesOf(a.holding, a.setting.Book, p) {
		args := words.Args{"date": l.On, "share": l.Share}
		switch {
		case l.Moved:
			out = append(out, words.P("desk.why_moved", args))
		case l.Share >= 1:
			out = append(out, words.P("desk.why_lost_all", args))
		default:
			out = append(out, words.P("desk.why_lost_share", args))
		}
	}
	return out
}
