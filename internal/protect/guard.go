package protect

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// Bed is a bed with its covers and crops.
type Bed struct {
	Book      *crop.Book
	Covers    []place.CoverSpell // of the bed
	Plantings []plan.Planting    // of the bed
	Records   []record.Record
	South     bool // it lies south of the equator

	// Over tells when a planting is forecast to be over; None: not known. It may
	// be nil.
	Over func(planting string) cal.Date
}

// Guard is what stands between a planting and its pests.
type Guard struct {
	Planting string
	From, To cal.Date // its time in the ground
	Under    []string // ids of the cover spells over it, in order
	Kept     []string // pests that a cover keeps out
	Part     []string // pests that it keeps out for a part of the time that they fly
	Through  []string // pests that its gaps let in
	Open     []string // pests that nothing keeps out
	Wintered []string // pests kept out that may have wintered in the ground
	Flower   bool     // a cover keeps pollinators out
	Phrases  []words.Phrase
}

// Guards tells of every planting of a bed that stands or comes, in order of date.
// The error is of the package's own data.
func Guards(b Bed, today cal.Date) ([]Guard, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	times := b.times()
	var out []Guard
	for i := range times {
		if times[i].to > today {
			out = append(out, f.guard(&b, &times[i], times))
		}
	}
	return out, nil
}

// stay is a planting's time in the ground.
type stay struct {
	id       string
	crop     *crop.Crop
	from, to cal.Date
}

// times are the times of the bed's plantings, in order of date.
func (b *Bed) times() []stay {
	var out []stay
	for i := range b.Plantings {
		p := &b.Plantings[i]
		if c, ok := b.Book.Crop(p.Crop); ok {
			out = append(out, stay{p.ID, c, p.Date, b.endOf(p)})
		}
	}
	slices.SortStableFunc(out, func(a, b stay) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.id, b.id)) })
	return out
}

// endOf is when a planting leaves the ground: as recorded, as planned, as
// forecast, or after a season.
func (b *Bed) endOf(p *plan.Planting) cal.Date {
	for _, r := range b.Records {
		if r.What == record.Cleared && r.Planting == p.ID {
			return r.Date
		}
	}
	if p.ClearBy.IsSet() {
		return p.ClearBy
	}
	if b.Over != nil {
		if over := b.Over(p.ID); over.IsSet() {
			return over
		}
	}
	if c, ok := b.Book.Crop(p.Crop); ok {
		if u, err := c.Use(p.Use); err == nil && u.Pattern == crop.Perennial {
			return forever
		}
	}
	return p.Date + aSeason
}

const (
	aSeason = 150               // how long a planting without an end is taken to stand [d]
	forever = cal.Date(1 << 30) // of what stands year after year
	aYear   = 365               // days of a planting that are looked at for the time a cover lies
	late    = 150               // days before midwinter on which pests still feed and go down to winter
	autumn  = 9                 // month from which a planting stands through the winter to come
	soon    = 14                // sown so close together [d] that neither is before the other
)

// guard tells of one planting.
func (f *facts) guard(b *Bed, t *stay, all []stay) Guard {
	g := Guard{Planting: t.id, From: t.from, To: t.to}
	over := b.over(t)
	for _, s := range over {
		g.Under = append(g.Under, s.ID)
	}
	for i := range f.pests {
		if p := &f.pests[i]; p.Strikes(t.crop) {
			g.meet(p, over, p.Winters && hosted(p, t, all, b.South), b.South)
		}
	}
	barrier := lasting(over, t)
	g.Flower = barrier != nil && slices.Contains(f.pollinated, t.crop.ID)
	f.tell(&g, t, barrier)
	return g
}

// over are the spells that lie over a planting for some time, in order.
func (b *Bed) over(t *stay) []place.CoverSpell {
	var out []place.CoverSpell
	for _, s := range inOrder(b.Covers) {
		if s.Kind != cover.Open && s.On < t.to && (!s.Off.IsSet() || s.Off > t.from) {
			out = append(out, s)
		}
	}
	return out
}

// meet puts a pest where it belongs.
func (g *Guard) meet(p *Pest, over []place.CoverSpell, wintered, south bool) {
	var tight []place.CoverSpell
	barriers := 0
	for _, s := range over {
		mm, keeps := s.Barrier()
		if keeps {
			barriers++
		}
		if keeps && mm <= p.GapMM+1e-9 {
			tight = append(tight, s)
		}
	}
	switch {
	case len(tight) > 0 && wintered:
		g.Wintered = append(g.Wintered, p.ID)
	case len(tight) > 0 && g.shut(tight, south) < mostly:
		g.Part = append(g.Part, p.ID)
	case len(tight) > 0:
		g.Kept = append(g.Kept, p.ID)
	case barriers > 0:
		g.Through = append(g.Through, p.ID)
	case len(over) == 0:
		g.Open = append(g.Open, p.ID)
	}
}

// mostly is the share of the time that pests fly for which a cover must lie to
// keep them out. judgement
const mostly = 0.7

// shut is the share of the time for which covers lie over a planting, of the days
// on which pests fly, or of all its days when they fly on none.
func (g *Guard) shut(covers []place.CoverSpell, south bool) float64 {
	flown, shutFlown, all, shut := 0, 0, 0, 0
	for day := g.From; day < min(g.To, g.From+aYear); day++ {
		lies := slices.ContainsFunc(covers, func(s place.CoverSpell) bool { return s.On <= day && (!s.Off.IsSet() || day < s.Off) })
		all++
		if lies {
			shut++
		}
		if flies(day, south) {
			flown++
			if lies {
				shutFlown++
			}
		}
	}
	switch {
	case flown > 0:
		return float64(shutFlown) / float64(flown)
	case all > 0:
		return float64(shut) / float64(all)
	}
	return 1
}

// flies tells whether pests fly on a day: mid April to mid October in the north,
// half a year later in the south. judgement
func flies(day cal.Date, south bool) bool {
	if south {
		day += 182
	}
	n := day.DayOfYear()
	return n >= 105 && n < 288
}

// hosted tells whether a host of the pest was in the ground of the bed before the
// winter that a planting follows or stands through.
func hosted(p *Pest, t *stay, all []stay, south bool) bool {
	winter := wintersOn(t.from, south)
	return slices.ContainsFunc(all, func(o stay) bool {
		return o.id != t.id && o.from < min(winter, t.from-soon) && o.to > winter-late && p.Strikes(o.crop)
	})
}

// wintersOn is the middle of the winter that counts for a planting: the one
// before it, or the one to come when it goes in in autumn.
func wintersOn(from cal.Date, south bool) cal.Date {
	shift := cal.Date(0)
	if south {
		shift = 182
	}
	year, month, _ := (from - shift).YMD()
	if month >= autumn {
		year++
	}
	return cal.Of(year, 1, 1) + shift
}

// lasting is the barrier that keeps bees from a planting for a good while after
// it went in; nil when there is none. Young plants may stand under one.
func lasting(over []place.CoverSpell, t *stay) *place.CoverSpell {
	for i := range over {
		mm, keeps := over[i].Barrier()
		if keeps && mm < beesMM && (!over[i].Off.IsSet() || over[i].Off > t.from+flowering) {
			return &over[i]
		}
	}
	return nil
}

const (
	beesMM    = 7  // gaps that let bees through [mm]. judgement
	flowering = 42 // days from planting to the first flowers. judgement
)
