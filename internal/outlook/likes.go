package outlook

import (
	"garner/internal/holding"
	"garner/internal/larder"
)

// wantedGroups are a household's groups of vegetables that stand in for each other
// and of which something is wanted, with their members.
func wantedGroups(h *holding.Holding) []larder.Group {
	wanted := map[string]bool{}
	for i := range h.Wants {
		wanted[h.Wants[i].Group] = true
	}
	var out []larder.Group
	for _, g := range larder.Gather(h.Groups, h.Members) {
		if wanted[g.ID] && len(g.Members) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// rows name the rows of the group's table: its vegetables, then those that stand in
// for each other by the name of their group.
func (w *groupWork) rows() []string {
	out := append([]string(nil), w.vegetables...)
	for i := range w.setting.Groups {
		out = append(out, w.setting.Groups[i].Name)
	}
	return out
}

// likedIn are the wanted groups whose members are in a group of vegetables.
func (j *job) likedIn(in map[string]bool) (groups []larder.Group, ids map[string]bool) {
	ids = map[string]bool{}
	for _, g := range j.likes {
		if in[g.Members[0].Vegetable] {
			groups = append(groups, g)
			ids[g.ID] = true
		}
	}
	return groups, ids
}

// rowName is the name of the row that a want is told in.
func (j *job) rowName(w *larder.Want) string {
	for i := range j.likes {
		if w.Group == j.likes[i].ID {
			return j.likes[i].Name
		}
	}
	return w.Vegetable
}

// importanceOf is how much is held to the k-th row of a group's table.
func (j *job) importanceOf(w *groupWork, k int) larder.Importance {
	if g := k - len(w.vegetables); g >= 0 {
		return larder.ImportanceOf(j.wants, "", w.setting.Groups[g].ID)
	}
	return larder.ImportanceOf(j.wants, w.vegetables[k], "")
}
