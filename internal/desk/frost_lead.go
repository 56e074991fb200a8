package desk

import (
	"garner/internal/frost"
	"garner/internal/words"
)

// frostLead is what is first to be told: tonight, else the next night at risk, else when
// the last or the first frost is to be expected.
func frostLead(r *FrostResult) []words.Phrase {
	var out []words.Phrase
	for i := range r.Sites {
		out = append(out, r.Sites[i].Says[0])
	}
	worst, atRisk := worstTonight(r.Beds)
	switch {
	case len(r.Beds) == 0:
		out = append(out, words.P("desk.frost_lead_bare", nil))
	case atRisk > 0:
		out = append(out, words.P("desk.frost_lead_tonight", words.Args{"n": atRisk, "bed": r.Beds[worst].Name, "crops": r.Beds[worst].hurtTonight(), "odds": r.Beds[worst].Nights[0].Odds}))
	default:
		out = append(out, leadLater(r))
	}
	return out
}

// worstTonight is the bed with the greatest odds tonight, and how many are at risk.
func worstTonight(beds []FrostBed) (worst, atRisk int) {
	for i := range beds {
		if beds[i].Nights[0].Odds >= frost.Least {
			atRisk++
		}
		if beds[i].Nights[0].Odds > beds[worst].Nights[0].Odds {
			worst = i
		}
	}
	return worst, atRisk
}

// leadLater tells of the first night at risk after tonight, or that there is none.
func leadLater(r *FrostResult) words.Phrase {
	for i := range r.Beds[0].Nights {
		for k := range r.Beds {
			if night := &r.Beds[k].Nights[i]; night.Odds >= frost.Least {
				return words.P("desk.frost_lead_later", words.Args{"evening": night.Evening, "bed": r.Beds[k].Name, "odds": night.Odds})
			}
		}
	}
	return words.P("desk.frost_lead_safe", words.Args{"n": len(r.Beds[0].Nights)})
}
