package desk

import (
	"slices"

	"garner/internal/frost"
	"garner/internal/words"
)

// frostLead is what is first to be told: tonight, else the next night at risk, else when
// the last or the first frost is to be expected.
func frostLead(r *FrostResult) []words.Phrase {
	var out []words.Phrase
	for _, alike := range r.AlikeSites() {
		out = append(out, sitesTonight(alike, r.MinimumC))
		if r.MinimumC != nil {
			break // it is told of all
		}
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

// AlikeSites are the sites, those with the same nights together: they go by one weather.
func (r *FrostResult) AlikeSites() [][]*FrostSite {
	var out [][]*FrostSite
next:
	for i := range r.Sites {
		s := &r.Sites[i]
		for k := range out {
			if slices.Equal(out[k][0].Nights, s.Nights) && slices.Equal(out[k][0].Weeks, s.Weeks) {
				out[k] = append(out[k], s)
				continue next
			}
		}
		out = append(out, []*FrostSite{s})
	}
	return out
}

// SiteNames are the names of sites.
func SiteNames(sites []*FrostSite) []string {
	names := make([]string, len(sites))
	for i, s := range sites {
		names[i] = s.Name
	}
	return names
}

// sitesTonight tells tonight's minimum in the open: told, or its middle and spread.
func sitesTonight(sites []*FrostSite, told *float64) words.Phrase {
	tonight := &sites[0].Nights[0]
	args := words.Args{"sites": SiteNames(sites), "c": wholeC(tonight.C.Middle()), "low": wholeC(tonight.C[1]), "high": wholeC(tonight.C[8]), "frost": tonight.Frost}
	switch {
	case told != nil:
		args["c"] = *told
		return words.P("desk.frost_site_told", args)
	case tonight.Forecast:
		return words.P("desk.frost_site_forecast", args)
	}
	return words.P("desk.frost_site_drawn", args)
}
