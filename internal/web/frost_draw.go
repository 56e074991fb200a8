package web

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// frostSite draws the nights at sites of one weather.
func (v *visit) frostSite(view *desk.FrostResult, alike []*desk.FrostSite) frostSite {
	s := alike[0]
	out := frostSite{Name: v.say("web.frost_names", words.Args{"names": desk.SiteNames(alike)}), Says: v.sentence(sharpened(s.Says, view.Today)), Nights: s.Nights, Weeks: s.Weeks}
	n := draw.Nights{Unit: "°C", After: v.say("web.frost_by_week", nil),
		Label: v.say("web.frost_site_label", words.Args{"site": out.Name, "nights": len(s.Nights), "weeks": len(s.Weeks)})}
	for _, x := range s.Nights {
		n.Each, n.Names = append(n.Each, x.C), append(n.Names, dayOfMonth(x.Evening))
	}
	for i, x := range s.Weeks {
		name, month := "", x.First.Month()
		begins := i == 0 || s.Weeks[i-1].First.Month() != month
		if begins && i+1 < len(s.Weeks) && s.Weeks[i+1].First.Month() == month { // one week has no room for it
			name = v.words.Format().ShortMonth(month)
		}
		n.Weeks, n.Week = append(n.Weeks, x.C), append(n.Week, name)
	}
	out.Draw = draw.Night(n)
	return out
}

// mostLevels is how many temperatures that hurt are drawn for a bed.
const mostLevels = 3

// frostBed tells a bed at risk, with its nights drawn against what they hurt.
func (v *visit) frostBed(b *desk.FrostBed, today cal.Date) frostBed {
	out := frostBed{Name: b.Name, Path: bedPath(b.Bed), Do: v.frostSays(b.Do, today), Says: v.frostSays(b.Says, today), Nights: b.Nights, Tonight: len(b.Do) > 0}
	n := draw.Nights{Unit: "°C", Label: v.say("web.frost_bed_label", words.Args{"bed": b.Name, "nights": len(b.Nights)})}
	out.Under = v.coverOver(b.Under)
	for _, p := range b.Plants {
		out.Plants = append(out.Plants, strings.Join(v.frostSays(p.Says, today), " "))
	}
	n.Kills = killLevels(b.Plants)
	for _, x := range b.Nights {
		n.Each, n.Names = append(n.Each, x.C), append(n.Names, dayOfMonth(x.Evening))
	}
	out.Draw = draw.Night(n)
	return out
}

func dayOfMonth(d cal.Date) string {
	_, _, day := d.YMD()
	return strconv.Itoa(day)
}

// killLevels are the temperatures that hurt the tenderest of some plantings, each name once.
func killLevels(plants []desk.FrostPlant) []draw.KillLevel {
	var out []draw.KillLevel
	for _, p := range plants {
		known := slices.ContainsFunc(out, func(k draw.KillLevel) bool { return k.Name == p.Name })
		if p.Exposed && !known {
			out = append(out, draw.KillLevel{C: p.FirstC, Name: p.Name})
		}
	}
	slices.SortStableFunc(out, func(x, y draw.KillLevel) int { return cmp.Compare(y.C, x.C) })
	return out[:min(len(out), mostLevels)]
}
