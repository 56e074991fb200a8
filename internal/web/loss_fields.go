package web

import (
	"slices"

	"garner/internal/desk"
	"garner/internal/words"
)

// lossShares are the parts of a planting that are told with one tap.
var lossShares = []option{{"1", "web.loss_all"}, {"0.75", "web.loss_three_quarters"}, {"0.5", "web.loss_half"}, {"0.25", "web.loss_quarter"}}

// fillLoss gives the form its fields, and says what to mind.
func (v *visit) fillLoss(b *lossBody, view *desk.LossView, typed lossTyped) error {
	b.Date = v.lossField("date", kindDate, typed, true)
	if b.Kind == lossMove {
		b.Fields = []fieldBody{v.lossField("bed", kindChoice, typed, true), v.lossField("area_m2", kindNumber, typed, true)}
		b.Fields[1].Unit = v.say("web.unit_m2", nil)
		if view.MovesBadly {
			b.Warn = v.say("web.loss_moves_badly", nil)
		}
		rooms, err := v.office.Rooms(view.Bed)
		b.Fields[0].Options = v.roomOptions(rooms)
		return err
	}
	for _, s := range lossShares {
		b.Shares = append(b.Shares, option{s.Value, v.say(s.Name, nil)})
	}
	b.Plants = v.lossField("plants", kindNumber, typed, false)
	b.Plants.Hint = v.say("web.hint_loss_plants", words.Args{"plants": view.Plants})
	b.Causes = []option{{"", v.say("web.loss_why_unknown", nil)}}
	for _, c := range view.Causes {
		b.Causes = append(b.Causes, option{c.ID, v.sentence(c.Name)})
	}
	if b.Kind == lossFailing {
		b.Fields = []fieldBody{v.lossField("kg", kindNumber, typed, false), v.lossField("store", kindChoice, typed, false),
			v.lossField("plants_kept", kindNumber, typed, false)}
		b.Fields[0].Unit = v.say("web.unit_kg", nil)
		b.Fields[1].Options = []option{{"", v.say("web.loss_no_store", nil)}}
		for _, s := range view.Stores {
			b.Fields[1].Options = append(b.Fields[1].Options, option{s.ID, s.Name})
		}
	}
	b.Mind = v.lossMinds(b.Kind, view)
	return nil
}

// lossField is a field with its label and hint, and what was typed.
func (v *visit) lossField(name, kind string, typed lossTyped, must bool) fieldBody {
	f := fieldBody{Name: name, Label: v.named("web.label_loss_", name), Kind: kind, Value: typed[name], Must: must}
	if key := "web.hint_loss_" + name; name != "plants" && v.words.Has(key) {
		f.Hint = v.say(key, nil)
	}
	return f
}

// roomOptions name the beds with their free ground, those with room first.
func (v *visit) roomOptions(rooms []desk.BedRoom) []option {
	slices.SortStableFunc(rooms, func(a, b desk.BedRoom) int { return byNumbers(a.Name, b.Name) })
	slices.SortStableFunc(rooms, func(a, b desk.BedRoom) int { return boolOrder(a.FreeM2 >= leastRoomM2, b.FreeM2 >= leastRoomM2) })
	var out []option
	for _, r := range rooms {
		key := "web.loss_bed_full"
		if r.FreeM2 >= leastRoomM2 {
			key = "web.loss_bed_room"
		}
		out = append(out, option{r.ID, v.say(key, words.Args{"bed": r.Name, "area": r.FreeM2})})
	}
	return out
}

// leastRoomM2 is ground on which something can stand [m2].
const leastRoomM2 = 0.1

// boolOrder puts what is true first.
func boolOrder(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// lossMinds are the cautions that go with a loss.
func (v *visit) lossMinds(kind string, view *desk.LossView) []lossMind {
	var out []lossMind
	for _, of := range view.Cautions {
		m := lossMind{Title: v.sentence(of.Cause)}
		for _, c := range of.Cautions {
			m.Lines = append(m.Lines, lossLine{v.sentence(c.Text), c.Source})
		}
		out = append(out, m)
	}
	if kind == lossFailing && len(view.Notes) > 0 {
		m := lossMind{}
		for _, text := range view.Notes {
			m.Lines = append(m.Lines, lossLine{Text: text})
		}
		out = append(out, m)
	}
	return out
}

// lossWays are the links from a planting's page, none while it is not in the
// ground or is no more.
func (v *visit) lossWays(id string) ([]lossWay, error) {
	view, err := v.office.LossView(id)
	if err != nil || view.Gone.IsSet() || view.Cleared || view.Began > view.Today {
		return nil, err
	}
	var out []lossWay
	for _, way := range []string{lossLost, lossFailing, lossMove} {
		out = append(out, lossWay{Name: v.named("web.loss_way_", way), Path: plantingPath(id) + "/" + way})
	}
	return out, nil
}
