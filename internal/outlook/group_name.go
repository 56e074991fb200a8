package outlook

import (
	"fmt"

	"garner/internal/larder"
	"garner/internal/num"
)

// name hashes what the group's years depend on.
func (w *groupWork) name(j *job) {
	d := num.NewDigester("larder")
	d.Int(int64(j.From))
	d.Int(int64(j.Days()))
	d.Int(int64(j.Years))
	d.Int(int64(j.Seed))
	d.Text(fmt.Sprint(w.setting.Northern))
	for _, v := range w.vegetables {
		d.Text(v)
	}
	for _, v := range w.setting.Wants {
		d.Text(v.Vegetable)
		if v.Group != "" {
			d.Text("of " + v.Group)
		}
		d.Float(v.KgPerWeek)
		for _, n := range []int{v.From.Month, v.From.Day, v.To.Month, v.To.Day} {
			d.Int(int64(n))
		}
		if v.Importance != "" || v.BuyKgPerWeek != 0 {
			d.Text("held to " + string(v.Importance))
			d.Float(v.BuyKgPerWeek)
		}
	}
	for _, g := range w.setting.Groups {
		d.Text("group " + g.ID + "/" + g.Name)
		for _, m := range g.Members {
			d.Text(m.Vegetable)
			d.Int(int64(m.Preference))
		}
	}
	for _, v := range w.setting.Visits {
		d.Text("visit")
		d.Int(int64(v.From))
		d.Int(int64(v.To))
		d.Float(v.Eaters)
		d.Float(w.setting.Eaters)
	}
	for _, l := range w.setting.Left {
		d.Text("left " + l.Vegetable + "/" + l.Group)
		d.Int(int64(l.From))
		d.Int(int64(l.To))
	}
	for _, p := range w.setting.Purchases {
		d.Text("bought " + p.Vegetable + "/" + p.Group)
		d.Int(int64(p.From))
		d.Int(int64(p.To))
		d.Float(p.KgPerWeek)
	}
	for _, s := range w.setting.Stores {
		d.Text(s.ID + "/" + s.Method)
		d.Float(s.WinterC)
		d.Float(s.SummerC)
		d.Float(s.Holds())
		if s.Humidity != larder.HumidityAsMethod {
			d.Text(string(s.Humidity))
		}
	}
	for _, b := range w.setting.Batches {
		d.Text(b.ID + "/" + b.Store + "/" + b.Crop + "/" + b.Use)
		d.Float(b.Kg)
		d.Int(int64(b.Stored))
		if b.Seen {
			d.Text("counted")
			d.Int(int64(b.Counted))
		}
	}
	for _, m := range w.members {
		d.Digest(m.bed.digest)
		d.Int(int64(m.index))
		d.Text(m.bed.plantings[m.index].Store)
		if m.stores != j.From {
			d.Int(int64(m.stores))
		}
		if m.booked {
			d.Text("booked")
		}
		if m.share != 1 {
			d.Float(m.share)
		}
	}
	digestClaims(d, w.setting.Claims)
	if w.setting.KitchenHours > 0 {
		d.Float(w.setting.KitchenHours)
	}
	w.digest = d.Sum()
}
