package outlook

// Plantings of a bed that stand under or between each other share its light and
// must be stepped together; the others are strangers to each other. A bed is
// therefore computed in parts, each with a name of its own, so that a change to
// one planting leaves what does not touch it as it was.

// parts splits a bed into its groups of plantings that share light, in the order
// of their first plantings. All of them keep the bed's own weather.
func (w *bedWork) parts() []*bedWork {
	root := make([]int, len(w.plantings))
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			i = root[i]
		}
		return i
	}
	for i := range w.bed.Plantings {
		if k := w.bed.Plantings[i].Shares; k >= 0 {
			a, b := find(i), find(k)
			root[max(a, b)] = min(a, b)
		}
	}
	var out []*bedWork
	part := map[int]*bedWork{}
	at := make([]int, len(w.plantings)) // a planting's place in its part
	for i := range w.plantings {
		p := part[find(i)]
		if p == nil {
			p = w.emptyPart()
			part[find(i)] = p
			out = append(out, p)
		}
		at[i] = len(p.plantings)
		p.take(w, i)
	}
	for i := range w.plantings {
		if k := w.bed.Plantings[i].Shares; k >= 0 {
			part[find(i)].bed.Plantings[at[i]].Shares = at[k]
		}
	}
	return out
}

// emptyPart is a part of the bed without plantings yet.
func (w *bedWork) emptyPart() *bedWork {
	p := &bedWork{id: w.id, site: w.site, place: w.place, from: w.from, shade: w.shade}
	p.bed.Ground = w.bed.Ground
	return p
}

// take copies a planting of the bed into the part.
func (p *bedWork) take(w *bedWork, i int) {
	p.plantings = append(p.plantings, w.plantings[i])
	p.uses = append(p.uses, w.uses[i])
	p.rough = append(p.rough, w.rough[i])
	p.bed.Plantings = append(p.bed.Plantings, w.bed.Plantings[i])
	if len(w.bed.Plantings[i].Stays) > 0 {
		p.former = w.former // its stays point into the bed's list
	}
}
