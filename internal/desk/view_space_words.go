package desk

import (
	"slices"
	"sort"

	"garner/internal/cal"
	"garner/internal/space"
	"garner/internal/words"
)

// freeSpace tells a gap in words.
func (n *namer) freeSpace(g space.Gap, from, today cal.Date) FreeSpace {
	bed := n.beds[g.Bed]
	f := FreeSpace{Gap: g, BedName: n.bed(g.Bed), When: freeFrom(&g, from, today), Ends: n.freeUntil(&g)}
	if bed.At.IsSet() {
		f.Corners = bed.Part(g.At, g.Share)
	}
	return f
}

// freeFrom says from when in a period ground is free, and how sure that is.
func freeFrom(g *space.Gap, from, today cal.Date) words.Phrase {
	middle := words.Sharp(g.From.P50, today)
	early, late := words.Sharp(g.From.P10, today), words.Sharp(g.From.P90, today)
	switch {
	case g.From.P50 <= today && g.From.Sure():
		return words.P("desk.free_now", nil)
	case g.From.Sure():
		return words.P("desk.free_sure", words.Args{"middle": g.From.P50})
	case g.From.P90 == g.From.P50 && g.From.P10 == from:
		return words.P("desk.free_by", words.Args{"middle": g.From.P50})
	case g.From.P90 == g.From.P50:
		return words.P("desk.free_latest", words.Args{"middle": g.From.P50, "early": early})
	case !g.From.P90.IsSet():
		return words.P("desk.free_perhaps", words.Args{"middle": middle, "chance": g.Odds})
	case g.From.P90-g.From.P10 < sharpDays:
		return words.P("desk.free_about", words.Args{"middle": middle, "chance": g.Odds})
	case g.From.P50 == from:
		return words.P("desk.free_already", words.Args{"chance": g.Odds, "late": late})
	case g.From.P10 == from && g.From.P90-g.From.P50 < sharpDays:
		return words.P("desk.free_about", words.Args{"middle": middle, "chance": g.Odds})
	case g.From.P10 == from:
		return words.P("desk.free_late", words.Args{"middle": middle, "late": late})
	}
	return words.P("desk.free_spread", words.Args{"middle": middle, "early": early, "late": late})
}

// sharpDays is the spread under which early and late are not told apart [d].
const sharpDays = 7

// freeUntil says until when ground is free.
func (n *namer) freeUntil(g *space.Gap) words.Phrase {
	if g.Open {
		return words.P("desk.free_open", nil)
	}
	return words.P("desk.free_until", words.Args{"until": g.Until, "next": n.several(g.Next)})
}

// several names plantings by what they are, each name once.
func (n *namer) several(ids []string) []string {
	var out []string
	for _, id := range ids {
		name := n.use(n.plantings[id].Crop, n.plantings[id].Use)
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// overlap tells what does not fit, and how to mend it.
func (n *namer) overlap(o space.Overlap, b *space.Bed) OverlapView {
	v := OverlapView{Overlap: o, BedName: n.bed(o.Bed)}
	name := n.several([]string{o.Planting})
	var others []string
	for _, id := range o.Plantings {
		if id != o.Planting {
			others = append(others, id)
		}
	}
	args := words.Args{"bed": v.BedName, "planting": name, "others": n.several(others), "from": o.From, "until": o.Until,
		"over": o.OverM2, "chance": o.Odds, "day": o.Mend, "area": n.plantings[o.Planting].AreaM2, "has": b.AreaM2}
	switch o.Wrong {
	case space.TooLarge:
		v.Says, v.Mend = words.P("desk.wrong_large", args), words.P("desk.mend_large", args)
	case space.NoPartner:
		v.Says, v.Mend = words.P("desk.wrong_partner", args), words.P("desk.mend_partner", args)
	case space.TooEarly:
		v.Says, v.Mend = words.P("desk.wrong_early", args), words.P("desk.mend_early", args)
	default:
		v.Says, v.Mend = words.P("desk.wrong_full", args), words.P("desk.mend_full", args)
	}
	switch {
	case o.Mend.IsSet():
	case o.Wrong == space.OverFull:
		v.Mend = words.P("desk.mend_no_day", args)
	case o.Wrong == space.TooEarly:
		v.Mend = words.P("desk.mend_early_no_day", args)
	}
	return v
}

// sort puts what was gathered bed by bed in order of time.
func (v *SpaceView) sort() {
	sort.SliceStable(v.Free, func(i, k int) bool { return v.Free[i].From.P50 < v.Free[k].From.P50 })
	sort.SliceStable(v.Wrong, func(i, k int) bool { return v.Wrong[i].From < v.Wrong[k].From })
}
