package desk

import (
	"slices"

	"garner/internal/carry"
	"garner/internal/words"
)

// name puts next year into names and words.
func (v *CarryView) name(n *namer) {
	moved, shifted := 0, 0
	for _, s := range v.Sowings {
		v.Lines = append(v.Lines, CarryLine{s, n.use(s.Crop, s.Use), n.bed(s.Bed), n.bed(s.FromBed)})
		if s.Bed != s.FromBed {
			moved++
		}
		if s.LaterD != 0 {
			shifted++
		}
	}
	v.Lead = v.lead(moved, shifted)
	for _, t := range v.Troubles {
		v.Wrong = append(v.Wrong, v.trouble(n, t))
	}
	for _, id := range v.Left {
		v.Out = append(v.Out, CarryLeft{id, n.planting(id)})
	}
}

// lead says how much is carried, in sentences.
func (v *CarryView) lead(moved, shifted int) []words.Phrase {
	args := words.Args{"n": len(v.Sowings), "year": v.Named, "next": v.Next, "moved": moved}
	var out []words.Phrase
	switch {
	case len(v.Sowings) == 0:
		out = append(out, words.P("desk.carry_nothing", args))
	case moved == 0:
		out = append(out, words.P("desk.carry_lead", args))
	default:
		out = append(out, words.P("desk.carry_lead_moved", args))
	}
	if shifted > 0 {
		out = append(out, words.P("desk.carry_shifted", words.Args{"n": shifted}))
	}
	if n := len(v.Planned); n > 0 {
		out = append(out, words.P("desk.carry_planned", words.Args{"n": n, "next": v.Next}))
	}
	return out
}

func (v *CarryView) trouble(n *namer, t carry.Trouble) CarryTrouble {
	out := CarryTrouble{Trouble: t, Sowing: t.Planting != ""}
	for _, bed := range t.Others {
		out.Beds = append(out.Beds, n.bed(bed))
	}
	args := words.Args{"bed": n.bed(t.Bed), "share": t.Share}
	if i := slices.IndexFunc(v.Sowings, func(s carry.Carried) bool { return s.ID == t.Carried }); i >= 0 {
		args["name"], args["date"] = n.use(v.Sowings[i].Crop, v.Sowings[i].Use), v.Sowings[i].Date
	}
	switch t.Kind {
	case carry.TooSoon:
		args["why"] = t.Clash.Phrase
		out.Says = words.P("desk.carry_too_soon", args)
	case carry.NoRoom:
		out.Says = words.P("desk.carry_no_room", args)
	case carry.Lost:
		out.Says = words.P("desk.carry_lost", args)
	case carry.Failed:
		out.Says = words.P("desk.carry_failed", args)
	case carry.Covered:
		out.Says = words.P("desk.carry_covered", args)
	}
	return out
}
