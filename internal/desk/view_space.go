package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/space"
	"garner/internal/words"
)

// SpaceQuery asks for the ground of a site or bed in a period.
type SpaceQuery struct {
	Site, Bed string   // empty: all
	From      cal.Date // None: today; what is past cannot be sown
	Until     cal.Date // day after the last; None: as long as the table
}

// SpaceView is who holds the ground, what comes free in a period, and what does not
// fit.
type SpaceView struct {
	Today, From, Until cal.Date
	Version            int64
	Sites              []SiteSpace   // that hold these beds, in the order of the holding
	Beds               []BedSpace    // in the order of the holding
	Free               []FreeSpace   // of all these beds, in order of time
	Wrong              []OverlapView // of all these beds, in order of time
}

// SiteSpace is a site with what stands round its beds.
type SiteSpace struct {
	place.Site
	Features []place.Feature
}

// BedSpace is one bed with what holds its ground.
type BedSpace struct {
	place.Bed
	TurnRoundD int
	Holds      []HoldView // in the order of their days
}

// HoldView is a planting's ground, with its name.
type HoldView struct {
	space.Hold
	Name string // what it is: "maincrop carrots"
}

// FreeSpace is ground that comes free.
type FreeSpace struct {
	space.Gap
	BedName string
	When    words.Phrase  // from when, and how sure
	Ends    words.Phrase  // until when, and what comes then
	Corners []place.Point // where it lies on the site's plan
}

// OverlapView is what does not fit, and how to mend it.
type OverlapView struct {
	space.Overlap
	BedName    string
	Says, Mend words.Phrase
}

// SpaceView returns the ground of a site or bed, as it stands or with changes tried.
func (o *Office) SpaceView(q SpaceQuery, try []plan.Change) (*SpaceView, error) {
	a, g, err := o.askSpace(try)
	if err != nil {
		return nil, err
	}
	return spaceView(a, g, q)
}

// askSpace lays out the holding with changes tried.
func (o *Office) askSpace(try []plan.Change) (*asked, *space.Ground, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, nil, err
	}
	g, err := o.space(a)
	return a, g, err
}

// space lays out what was asked, or returns the layout when it is at hand.
func (o *Office) space(a *asked) (*space.Ground, error) {
	if g, known := o.views.spaces.get(a.answer(spaceForm).Sum()); known {
		return g, nil
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	return o.spaceOf(a, t)
}

// spaceAtHand is space for who does not wait for a cold run: nil until a table was
// computed, which is begun.
func (o *Office) spaceAtHand(a *asked) (*space.Ground, error) {
	if o.cold() {
		o.warm(a)
		return nil, nil
	}
	return o.space(a)
}

const spaceForm = "space"

// spaceOf is space for who has the table already.
func (o *Office) spaceOf(a *asked, t *outlook.Table) (*space.Ground, error) {
	key := a.answer(spaceForm).Sum()
	if g, known := o.views.spaces.get(key); known {
		return g, nil
	}
	g, err := space.Of(t, a.holding, a.setting.Book, a.setting.Today)
	if err != nil {
		return nil, err
	}
	o.views.spaces.keep(key, g)
	return g, nil
}

// spaceView gathers a layout for the pages.
func spaceView(a *asked, g *space.Ground, q SpaceQuery) (*SpaceView, error) {
	v := &SpaceView{Today: g.Today, From: q.From, Until: q.Until, Version: a.version}
	if !told(v.From) || v.From < g.Today {
		v.From = g.Today
	}
	if !told(v.Until) || v.Until > g.Until {
		v.Until = g.Until
	}
	n := newNamer(a)
	if _, known := n.beds[q.Bed]; q.Bed != "" && !known {
		return nil, fault.New(fault.NotFound, "desk.row_unknown", words.Args{"kind": words.P("desk.kind_beds", nil), "id": q.Bed})
	}
	for i := range g.Beds {
		b := &g.Beds[i]
		if q.Bed != "" && q.Bed != b.ID || q.Site != "" && q.Site != b.Site {
			continue
		}
		v.add(n, b)
	}
	v.sort()
	v.addSites(a.holding)
	return v, nil
}

// told tells whether a day was given: neither none nor left out.
func told(d cal.Date) bool { return d.IsSet() && d != 0 }

// addSites adds the sites of the beds.
func (v *SpaceView) addSites(h *holding.Holding) {
	for _, site := range h.Sites {
		if !slices.ContainsFunc(v.Beds, func(b BedSpace) bool { return b.Site == site.ID }) {
			continue
		}
		s := SiteSpace{Site: site}
		for _, f := range h.Features {
			if f.Site == site.ID {
				s.Features = append(s.Features, f)
			}
		}
		v.Sites = append(v.Sites, s)
	}
}

func (v *SpaceView) add(n *namer, b *space.Bed) {
	s := BedSpace{Bed: n.beds[b.ID], TurnRoundD: b.TurnRoundD}
	for _, h := range b.Holds {
		s.Holds = append(s.Holds, HoldView{h, n.use(h.Crop, h.Use)})
	}
	v.Beds = append(v.Beds, s)
	for _, g := range b.Gaps(v.From, v.Until) {
		v.Free = append(v.Free, n.freeSpace(g, v.From, v.Today))
	}
	for _, o := range b.Overlaps() {
		v.Wrong = append(v.Wrong, n.overlap(o, b))
	}
}
