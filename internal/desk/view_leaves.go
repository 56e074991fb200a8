package desk

import (
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// courseYears is how many futures a planting's mean leaf is drawn from.
const courseYears = 10

// leaves gives the mean leaf cover of a vegetable's plantings by step, 0-1. Only
// beds that something has changed in are followed anew.
func (o *Office) leaves(a *asked, t *outlook.Table, vegetable string) map[string][]float32 {
	o.computing.Lock()
	defer o.computing.Unlock()
	n := newNamer(a)
	out := map[string][]float32{}
	seen := map[string]bool{}
	for i := range t.Plantings {
		f := &t.Plantings[i]
		if seen[f.Bed] || n.vegetableOf(f.Crop, f.Use) != vegetable {
			continue
		}
		seen[f.Bed] = true
		for planting, leaf := range o.bedLeaves(a, t, n, f.Bed) {
			out[planting] = leaf
		}
	}
	return out
}

// bedLeaves is the mean leaf cover of all plantings of a bed.
func (o *Office) bedLeaves(a *asked, t *outlook.Table, n *namer, bed string) map[string][]float32 {
	of, known := t.BedName(bed)
	if !known {
		return nil
	}
	d := num.NewDigester("leaves")
	d.Digest(of)
	for i := range t.Plantings {
		if f := &t.Plantings[i]; f.Bed == bed { // one that was moved here grows as the one it was
			d.Text(f.Planting)
		}
	}
	d.Int(int64(t.From))
	d.Int(int64(t.Weeks))
	d.Int(int64(t.Years))
	name := d.Sum()
	if leaves, known := o.views.leaves.get(name); known {
		return leaves
	}
	leaves := map[string][]float32{}
	years := min(courseYears, t.Years)
	for y := range years {
		for _, c := range t.Courses(bed, y*t.Years/years) {
			addLeaf(leaves, t, &c, a.setting.Book, n, years)
		}
	}
	o.views.leaves.keep(name, leaves)
	return leaves
}

func addLeaf(out map[string][]float32, t *outlook.Table, c *outlook.Course, b *crop.Book, n *namer, years int) {
	leaf := out[c.Planting]
	if leaf == nil {
		leaf = make([]float32, t.Weeks*outlook.StepsAWeek)
		out[c.Planting] = leaf
	}
	k := extinction(b, n.plantings[c.Planting])
	for s := range leaf {
		day := int(t.From-c.First) + int(float64(s)*Step)
		if day >= 0 && day < len(c.Days) {
			leaf[s] += float32(c.Days[day].Left*growth.Intercepted(k, c.Days[day].Leaf)) / float32(years)
		}
	}
}

func extinction(b *crop.Book, p plan.Planting) float64 {
	if c, ok := b.Crop(p.Crop); ok {
		if u, err := c.Use(p.Use); err == nil {
			return u.Extinction
		}
	}
	return 0.5
}
