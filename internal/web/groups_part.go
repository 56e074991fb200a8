package web

import (
	"cmp"
	"slices"

	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/words"
)

// groupForm is a group of vegetables that stand in for each other.
var groupForm = rowForm{table: "groups", nav: "wants", after: to("/wants"), fields: []fieldForm{{name: "name", wide: true}}}

// memberForm is a vegetable of a group.
var memberForm = rowForm{
	table: "members", nav: "wants", after: to("/wants"),
	fields: []fieldForm{{name: "group", wide: true}, {name: "vegetable", wide: true, choices: vegetableChoices}, {name: "preference"}},
}

// wantedName is what a want or a gap is of: a vegetable, or a group by its name.
func wantedName(h *holding.Holding, vegetable, group string) string {
	for _, g := range h.Groups {
		if g.ID == group {
			return g.Name
		}
	}
	return vegetable
}

// groupParts are the lists of groups and of their members.
func groupParts(h *holding.Holding, notes map[string][]words.Phrase) []rowsPart {
	groups := rowsPart{Title: "web.groups_title", Says: "web.groups_note", AddKey: "web.groups_add", Path: "/groups"}
	members := rowsPart{Title: "web.members_title", Says: "web.members_note", AddKey: "web.members_add", Path: "/members"}
	for _, g := range larder.Gather(h.Groups, h.Members) {
		says := words.P("web.group_bare", nil)
		if names := liked(&g); len(names) > 0 {
			says = words.P("web.group_says", words.Args{"vegetables": names})
		}
		groups.Rows = append(groups.Rows, rowLine{Name: capital(g.Name), Path: rowPath(&groupForm, g.ID) + "/edit", Says: says})
	}
	for _, m := range h.Members {
		says := words.P("web.member_says", words.Args{"group": wantedName(h, m.Group, m.Group), "preference": m.Preference})
		members.Rows = append(members.Rows, rowLine{Name: capital(m.Vegetable), Path: rowPath(&memberForm, m.ID) + "/edit", Says: says, Notes: notes[m.ID]})
	}
	if len(groups.Rows) == 0 {
		return []rowsPart{groups}
	}
	return []rowsPart{groups, members}
}

// liked names the vegetables of a group, the best liked first.
func liked(g *larder.Group) []string {
	list := slices.Clone(g.Members)
	slices.SortStableFunc(list, func(a, b larder.Member) int { return cmp.Compare(a.Preference, b.Preference) })
	var out []string
	for _, m := range list {
		out = append(out, m.Vegetable)
	}
	return out
}
