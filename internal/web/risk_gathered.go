package web

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// riskItem is one disease or pest over all sites.
type riskItem struct {
	Name, Path string
	Sites      []riskSite
	Rules      []riskLine
	Folded     bool   // the plantings are named in what it says; the list of them is folded
	Tell       string // form of a sighting
}

// riskSite is how a disease or pest stands at a site, or at several alike.
type riskSite struct {
	Says  []string
	Name  string // empty where the holding has one site
	Hosts []riskBed
	More  int // hosts that are not named
	Seen  []riskSeen
}

// riskNames are the diseases and pests of which there is only their name to tell.
type riskNames struct {
	Key   string // its title is web.risk_group_ and it
	Names []riskName
}

// riskName is one of them, and where or from when.
type riskName struct{ Name, Path, More string }

// riskGroupOf is the group in which an item is shown.
func riskGroupOf(i *desk.RiskItem) string {
	switch {
	case i.State == desk.AtRiskQuiet:
		return "quiet"
	case i.State == desk.AtRiskDark:
		return "dark"
	case i.State == desk.AtRiskLater && !i.Pest:
		return "waits"
	case i.State == desk.AtRiskLater:
		return "later"
	}
	return "now"
}

// riskOnlyNamed are the groups of which only names are told.
var riskOnlyNamed = []string{"waits", "quiet", "dark"}

// riskGathered puts what is told of one disease or pest at several sites into one entry,
// where it is nearest, and the names of the rest into lines.
func (v *visit) riskGathered(view *desk.RiskView) (groups []riskGroup, lines []riskNames) {
	told := map[string]bool{}
	for i := range view.Items {
		item := &view.Items[i]
		if key := riskGroupOf(item); !told[item.Problem] && !slices.Contains(riskOnlyNamed, key) {
			told[item.Problem] = true
			if n := len(groups); n == 0 || groups[n-1].Key != key {
				groups = append(groups, riskGroup{Key: key})
			}
			g := &groups[len(groups)-1]
			g.Items = append(g.Items, v.riskItem(view.At(item.Problem), view.Today))
		}
	}
	for _, key := range riskOnlyNamed {
		line := riskNames{Key: key}
		named := map[string]bool{}
		for i := range view.Items {
			item := &view.Items[i]
			if told[item.Problem] || named[item.Problem] || riskGroupOf(item) != key {
				continue
			}
			named[item.Problem] = true
			line.Names = append(line.Names, v.riskName(view.At(item.Problem), key, view.Today))
		}
		if len(line.Names) > 0 {
			lines = append(lines, line)
		}
	}
	return groups, lines
}

// riskName names a disease or pest, with the sites where not all of its sites are alike
// and with the day from which its crops stand.
func (v *visit) riskName(items []*desk.RiskItem, key string, today cal.Date) riskName {
	var more []words.Phrase
	var first cal.Date
	var sites []string
	for _, i := range items {
		if riskGroupOf(i) != key {
			continue
		}
		if sites = append(sites, i.SiteName); len(i.Hosts) > 0 && (first == 0 || i.Hosts[0].From < first) {
			first = i.Hosts[0].From
		}
	}
	if key == "waits" {
		more = append(more, words.P("web.risk_from", words.Args{"date": first}))
	}
	if len(sites) < len(items) {
		more = append(more, words.P("web.risk_sites", words.Args{"sites": sites}))
	}
	out := riskName{Name: v.words.Text(items[0].Name), Path: rulePath(items[0].Rules[0].Rule.ID)}
	if len(more) > 0 {
		out.More = v.words.Text(sharpened(words.P("web.risk_more", words.Args{"more": more}), today))
	}
	return out
}

// riskItem is the entry of what is told of one disease or pest by site.
func (v *visit) riskItem(items []*desk.RiskItem, today cal.Date) riskItem {
	first := items[0]
	out := riskItem{Name: v.sentence(first.Name), Path: rulePath(first.Rules[0].Rule.ID), Tell: sightingPath(first.Problem, "", ""), Folded: first.Pest}
	for _, i := range items {
		s := riskSite{Name: i.SiteName}
		for k, p := range i.Says {
			if k == 0 && i.SiteName != "" {
				p = words.P("web.risk_at_site", words.Args{"site": i.SiteName, "says": p})
			}
			s.Says = append(s.Says, v.told(p, today))
		}
		s.Hosts, s.More = v.riskBeds(i.Hosts, today)
		for k := range i.Seen {
			s.Seen = append(s.Seen, v.seenLine(&i.Seen[k], today))
		}
		out.Sites = append(out.Sites, s)
	}
	for k := range first.Rules {
		r := first.Rules[k].Rule
		out.Rules = append(out.Rules, riskLine{v.words.Text(r.Name()), rulePath(r.ID), v.ruleOver(items, r.ID, today)})
	}
	return out
}

// ruleOver says how one rule stands at all sites, once where it is alike.
func (v *visit) ruleOver(items []*desk.RiskItem, rule string, today cal.Date) string {
	var says, sites []string
	for _, i := range items {
		at := slices.IndexFunc(i.Rules, func(r desk.RiskRule) bool { return r.Rule.ID == rule })
		if at < 0 {
			continue
		}
		text := v.ruleState(&i.Rules[at], today)
		if !slices.Contains(says, text) {
			says, sites = append(says, text), append(sites, i.SiteName)
		}
	}
	if len(says) == 1 {
		return says[0]
	}
	var parts []words.Phrase
	for k := range says {
		parts = append(parts, words.P("web.risk_rule_at_site", words.Args{"site": sites[k], "says": says[k]}))
	}
	return v.say("web.risk_rule_sites", words.Args{"sites": parts})
}
