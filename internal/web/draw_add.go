package web

import (
	"math"
	"slices"
	"strconv"

	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// newThing is what a thing begins as when it is added: sizes a person then
// changes. They are our own judgement of what is common.
type newThing struct {
	name                         string // of the choice, and of the kind's text
	table, kind, shape           string
	length, width, height, under float64 // [m]
}

var newThings = []newThing{
	{name: "bed", table: "beds", kind: "bed", length: 3, width: 1.2},
	{name: "border", table: "beds", kind: "border", length: 4, width: 0.8},
	{name: "pot", table: "beds", kind: "container", shape: "round", length: 0.5, width: 0.5},
	{name: "frame", table: "beds", kind: "frame", length: 1.8, width: 0.9},
	{name: "tunnel", table: "beds", kind: "tunnel", length: 6, width: 1.2},
	{name: "path", table: "features", kind: "path", length: 5, width: 0.6},
	{name: "wall", table: "features", kind: "wall", length: 5, width: 0.25, height: 1.8},
	{name: "fence", table: "features", kind: "fence", length: 5, width: 0.1, height: 1.5},
	{name: "hedge", table: "features", kind: "hedge", length: 5, width: 0.8, height: 1.6},
	{name: "building", table: "features", kind: "building", length: 3, width: 2, height: 2.4},
	{name: "deciduous", table: "features", kind: "deciduous tree", length: 3, width: 3, height: 4, under: 1.2},
	{name: "evergreen", table: "features", kind: "evergreen tree", length: 2, width: 2, height: 4},
}

// drawnAdd asks what to add.
type drawnAdd struct {
	Path    string
	Hidden  []hiddenField
	Choices []option
	Faults  []words.Phrase
}

func (s *drawnSite) adding() (drawnAdd, error) {
	entry, err := s.entry()
	a := drawnAdd{Path: drawPath + "/add" + s.at.query(), Hidden: []hiddenField{{"entry", entry}}}
	for _, n := range newThings {
		a.Choices = append(a.Choices, option{n.name, s.say("web.draw_new_"+n.name, nil)})
	}
	return a, err
}

// drawAdd puts a new thing on the drawing, where there is room for it, and
// chooses it.
func drawAdd(v *visit) error {
	at := v.drawnAt()
	h, site, err := v.siteDrawn(&at)
	if err != nil {
		return err
	}
	which := slices.IndexFunc(newThings, func(n newThing) bool { return n.name == v.field("what") })
	if which < 0 {
		return formUnreadable()
	}
	kind := newThings[which]
	kept, err := v.office.Save(v.author(), kind.table, "", v.newCells(h, site, kind), 0)
	if faults := listOf(err); faults != nil {
		return v.showDrawing(at, nil, phrasesOf(faults))
	}
	if err != nil {
		return err
	}
	if kept != nil && len(kept.Changes) > 0 {
		at.pick = kind.table + "/" + kept.Changes[0].ID
	}
	v.kept(kept, at.path())
	return nil
}

// newCells are the cells of a new thing.
func (v *visit) newCells(h *holding.Holding, site place.Site, n newThing) map[string]string {
	write := func(m float64) string { return strconv.FormatFloat(math.Round(m*100)/100, 'f', -1, 64) }
	length, width := n.length, n.width
	if site.PlanWidthM > 0 && site.PlanDepthM > 0 { // a small plan has small things
		length, width = math.Min(length, site.PlanWidthM/2), math.Min(width, site.PlanDepthM/2)
	}
	at := freeSpot(h, site.ID, length, width)
	cells := map[string]string{"site": site.ID, "kind": n.kind, "length_m": write(length), "width_m": write(width), "x_m": write(at.XM), "y_m": write(at.YM)}
	if cells["name"] = v.field("name"); cells["name"] == "" {
		cells["name"] = v.newName(h, n)
	}
	if n.table == "beds" {
		cells["shape"], cells["order"] = n.shape, strconv.Itoa(lastOrder(h)+1)
		return cells
	}
	if n.height > 0 {
		cells["height_m"] = write(n.height)
	}
	if n.under > 0 {
		cells["base_m"] = write(n.under)
	}
	return cells
}

// newName names a new thing by the first number after those of its kind that no
// other has.
func (v *visit) newName(h *holding.Holding, n newThing) string {
	taken := map[string]bool{}
	for i := range h.Beds {
		taken[h.Beds[i].Name] = true
	}
	for i := range h.Features {
		taken[h.Features[i].Name] = true
	}
	first, name := nextNumber(h, n), ""
	for number := first; number <= first+len(taken); number++ {
		if name = v.say("web.draw_named_"+n.name, words.Args{"n": number}); !taken[name] {
			break
		}
	}
	return name
}

// nextNumber numbers a new thing after those of its kind.
func nextNumber(h *holding.Holding, n newThing) int {
	count := 1
	for _, b := range h.Beds {
		if n.table == "beds" && b.Kind == n.kind {
			count++
		}
	}
	for _, f := range h.Features {
		if n.table == "features" && string(f.Kind) == n.kind {
			count++
		}
	}
	return count
}

func lastOrder(h *holding.Holding) int {
	last := 0
	for _, b := range h.Beds {
		last = max(last, b.Order)
	}
	return last
}
