package web

import (
	"garner/internal/desk"
	"garner/internal/words"
)

// askedBody is what the air asks of the beds of a site in a month.
type askedBody struct {
	Head, Spared string // Spared: "" where nothing takes any light
	Rows         []askedRow
}

// askedRow is one bed, for a week of the month.
type askedRow struct {
	Name, Path string
	MM         float64
	Litres     float64
	OpenLitres float64
	Less       float64 // share of OpenLitres that the shade spares, 0-1
}

// leastSpared is the least share of the water that is told to be spared.
const leastSpared = 0.01

// askedBody tells what the air asks of the beds; nil where the weather does not
// tell.
func (v *visit) askedBody(view *desk.ShadeView) *askedBody {
	b := &askedBody{Head: v.say("web.asked_head", words.Args{"month": v.words.Format().Month(view.Month)})}
	sum, open := 0.0, 0.0
	for i := range view.Beds {
		bed := &view.Beds[i]
		if bed.Water == nil {
			continue
		}
		at := view.Month - 1
		r := askedRow{Name: bed.Name, Path: bedPath(bed.ID), Litres: bed.Water.WeekL[at], OpenLitres: bed.Water.OpenL[at],
			Less: bed.Water.Spared(view.Month)}
		if area := bed.AreaM2(); area > 0 {
			r.MM = r.Litres / area
		}
		b.Rows = append(b.Rows, r)
		sum, open = sum+r.Litres, open+r.OpenLitres
	}
	if len(b.Rows) == 0 {
		return nil
	}
	if open-sum >= leastSpared*open && open > 0 {
		b.Spared = v.say("web.asked_spared", words.Args{"spared": open - sum, "open": open})
	}
	return b
}

// bedAsks tells what the air asks of a bed in the month in which it asks most; ""
// where the weather does not tell.
func (v *visit) bedAsks(w *desk.BedWater) (text string, month int) {
	if w == nil {
		return "", 0
	}
	month = w.Peak()
	own, open := w.WeekL[month-1], w.OpenL[month-1]
	args := words.Args{"month": v.words.Format().Month(month), "litres": own, "open": open}
	if w.Spared(month) < leastSpared {
		return v.say("web.bed_asks_open", args), month
	}
	return v.say("web.bed_asks", args), month
}
