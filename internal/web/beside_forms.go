package web

import (
	"net/url"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
	"garner/internal/words"
)

// askedBeside reads what is asked about the upper crop. What cannot be read is
// told beside its field, and the usual day is taken.
func askedBeside(v *visit, wrong map[string]words.Phrase) desk.PairAsked {
	q := desk.PairAsked{StripOn: cal.None, ClearOn: cal.None}
	day := func(name string) cal.Date {
		text := strings.TrimSpace(v.query(name))
		if text == "" {
			return cal.None
		}
		d, err := cal.Parse(text)
		if err != nil {
			wrong[name] = words.P("plan.value_date", words.Args{"field": name, "given": text})
			return cal.None
		}
		return d
	}
	q.StripOn, q.ClearOn = day("strip"), day("clear")
	if text := strings.TrimSpace(v.query("share")); text != "" {
		percent, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
		if err != nil || !(percent >= leastStripped && percent <= mostStripped) {
			wrong["share"] = words.P("web.beside_share_wrong", words.Args{"given": text, "least": leastStripped, "most": mostStripped})
		} else {
			q.StripShare = percent / 100
		}
	}
	return q
}

// What share of its leaf can be taken off a plant that is to live [%].
const (
	leastStripped = 5
	mostStripped  = 90
)

// stripOffer tells what taking off the upper's lower leaves gives.
func (v *visit) stripOffer(p *desk.PairPart, path string, tried []plan.Change) besideOffer {
	if p.Stripped == nil {
		return besideOffer{}
	}
	set := func(tried []plan.Change, field, value string) []plan.Change {
		return withChange(tried, plan.Change{Action: "set", Planting: p.Upper.ID, Field: field, Value: value})
	}
	with := set(set(tried, "strip_on", p.StripOn.String()), "strip_share", plainNumber(p.StripShare))
	return besideOffer{Asked: true, ID: p.Upper.ID, On: p.StripOn.String(), Share: plainNumber(100 * p.StripShare),
		Say: v.offerWords("strip_say", p, p.Stripped, p.StripShare), Try: withTried(path, with)}
}

// clearOffer tells what clearing the upper by a day gives.
func (v *visit) clearOffer(p *desk.PairPart, path string, tried []plan.Change) besideOffer {
	if p.Cleared == nil {
		return besideOffer{}
	}
	with := withChange(tried, plan.Change{Action: "set", Planting: p.Upper.ID, Field: "clear_by", Value: p.ClearOn.String()})
	return besideOffer{Asked: true, ID: p.Upper.ID, On: p.ClearOn.String(),
		Say: v.offerWords("clear_say", p, p.Cleared, 0), Try: withTried(path, with)}
}

// related adds what the form declares of a planting: that it stands under or
// between another, follows it, or has ground of its own.
func (g *grown) related(id string, query url.Values, tried []plan.Change, wrong map[string]words.Phrase) []plan.Change {
	relation, to := query.Get("relation"), query.Get("to")
	if relation == "" {
		to = ""
	}
	if relation != "" && (to == "" || g.plantings[to] == nil || to == id) {
		wrong["to"] = words.P("web.beside_to_wrong", nil)
		return tried
	}
	for _, c := range []plan.Change{{Field: "relation", Value: relation}, {Field: "to", Value: to}} {
		var probe plan.Planting
		if err := plan.SetField(&probe, c.Field, c.Value); err != nil {
			wrong["to"] = err.Phrase
			return tried
		}
		c.Action, c.Planting = "set", id
		tried = withChange(tried, c)
	}
	return tried
}

// besideTried puts the pair as it stands beside it as tried.
func (v *visit) besideTried(view *desk.PairView, g *grown, path string, tried []plan.Change) (*triedBody, error) {
	b, err := v.triedPanel(g, path, tried, nil)
	if err != nil {
		return nil, err
	}
	was, err := v.office.PairView(view.ID, nil, desk.PairAsked{StripOn: cal.None, ClearOn: cal.None})
	if err != nil {
		was = &desk.PairView{} // the planting itself is only being tried
	}
	for i := range view.Pairs {
		now := &view.Pairs[i]
		for k := range was.Pairs {
			if then := &was.Pairs[k]; then.Upper.ID == now.Upper.ID && then.Lower.ID == now.Lower.ID {
				v.comparePairs(b, then, now)
			}
		}
	}
	return b, nil
}

func (v *visit) comparePairs(b *triedBody, then, now *desk.PairPart) {
	kg := v.words.Format().Kilograms
	b.row(capital(now.Lower.Name), then.Lower.Kg, now.Lower.Kg, kg)
	b.row(capital(now.Upper.Name), then.Upper.Kg, now.Upper.Kg, kg)
	b.row(v.say("web.beside_beds", nil), then.Ratio, now.Ratio, func(x float64) string { return v.words.Format().Number(x, 2) })
}

// besideChange tells a change of how a planting stands to another, or of its
// leaves or spacing; ok is false for other fields.
func (g *grown) besideChange(p *plan.Planting, field string, args words.Args) (words.Phrase, bool) {
	switch field {
	case "strip_on":
		args["on"] = planned(p.StripOn, g.today)
		return words.P("web.beside_tried_strip_on", args), p.StripOn.IsSet()
	case "strip_share":
		args["share"] = p.StripShare
		return words.P("web.beside_tried_strip_share", args), true
	case "relation":
		if p.Relation == plan.Alone {
			return words.P("web.beside_tried_alone", args), true
		}
		args["relation"] = words.P("desk.value_plantings.relation."+string(p.Relation), nil)
		return words.P("web.beside_tried_relation", args), true
	case "to":
		args["to"] = g.shortName(p.To)
		return words.P("web.beside_tried_to", args), p.To != ""
	case "in_row_m":
		args["apart"] = p.InRowM
		return words.P("web.beside_tried_in_row", args), p.InRowM > 0
	case "between_row_m":
		args["apart"] = p.BetweenRowM
		return words.P("web.beside_tried_between_row", args), p.BetweenRowM > 0
	}
	return words.Phrase{}, false
}

// sharesGround tells whether a planting stands under or between another, or
// another so by it.
func (g *grown) sharesGround(id string) bool {
	for _, p := range g.plantings {
		if (p.Relation == plan.Under || p.Relation == plan.Between) && (p.ID == id || p.To == id) {
			return true
		}
	}
	return false
}
