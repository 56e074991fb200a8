package jobs

import "slices"

// bars tells whether a site does not allow something.
func (d *deriver) bars(site string, what Barred) bool {
	i, ok := d.sites[site]
	return ok && slices.Contains(split(d.Holding.Sites[i].NotAllowed), string(what))
}

// allowed are tools with those that a site does not allow replaced, and how many times
// as long the work takes with them.
func (d *deriver) allowed(tools []string, site string) (out []string, times float64) {
	times = 1
	for _, tool := range tools {
		t := d.tools[tool]
		for tool != "" && t.barred != "" && d.bars(site, t.barred) {
			tool = t.instead
			t = d.tools[tool]
			times *= t.times
		}
		if tool != "" {
			out = append(out, tool)
		}
	}
	return out, max(times, 0.1)
}
