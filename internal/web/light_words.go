package web

import (
	"garner/internal/desk"
	"garner/internal/words"
)

// How many things are told to take light, and how many beds of each.
const (
	mostTakersSaid = 4
	mostBedsSaid   = 2
)

// lightWords tell the lightest and darkest bed, what takes the most light from
// which, and what throws no shade as it is told.
func (v *visit) lightWords(view *desk.ShadeView) []string {
	var out []string
	month := v.words.Format().Month(view.Month)
	if len(view.Beds) == 0 {
		out = append(out, v.say("web.light_no_beds", words.Args{"site": view.Site.Name}))
	} else {
		out = append(out, v.rangeWords(view, month))
		out = append(out, v.takenWords(view, month)...)
	}
	for _, wrong := range view.Wrong {
		out = append(out, v.words.Text(wrong.Phrase))
	}
	return out
}

// rangeWords tell how much light the beds get.
func (v *visit) rangeWords(view *desk.ShadeView, month string) string {
	least, most := &view.Beds[0], &view.Beds[0]
	at := view.Month - 1
	for i := range view.Beds {
		b := &view.Beds[i]
		if b.Light[at] < least.Light[at] {
			least = b
		}
		if b.Light[at] > most.Light[at] {
			most = b
		}
	}
	f := v.words.Format()
	args := words.Args{"month": month, "least": f.Percent(least.Light[at]), "darkest": least.Name, "most": f.Percent(most.Light[at]), "lightest": most.Name}
	if f.Percent(least.Light[at]) == f.Percent(most.Light[at]) {
		return v.say("web.light_alike", args)
	}
	return v.say("web.light_range", args)
}

// takenWords tell of each thing how much light it takes from the beds it takes
// the most from.
func (v *visit) takenWords(view *desk.ShadeView, month string) []string {
	var order []string
	of := map[string][]desk.Taken{}
	for _, t := range view.Taken {
		if len(of[t.Feature]) == 0 {
			order = append(order, t.Feature)
		}
		of[t.Feature] = append(of[t.Feature], t)
	}
	if len(order) == 0 {
		return []string{v.say("web.light_nothing_taken", words.Args{"month": month})}
	}
	f := v.words.Format()
	var out []string
	for _, name := range order[:min(len(order), mostTakersSaid)] {
		all := of[name]
		beds := make([]string, 0, mostBedsSaid)
		for _, t := range all[:min(len(all), mostBedsSaid)] {
			if f.Percent(t.Share) == f.Percent(all[0].Share) {
				beds = append(beds, t.Bed)
			}
		}
		out = append(out, v.say("web.light_taken", words.Args{"feature": name, "share": f.Percent(all[0].Share), "beds": beds}))
	}
	return out
}

// meanLight is the mean of twelve months.
func meanLight(light [12]float64) float64 {
	sum := 0.0
	for _, share := range light {
		sum += share / 12
	}
	return sum
}
