package desk

import (
	"encoding/json"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/protect"
	"garner/internal/words"
)

// BedCover is a cover over the bed for a time.
type BedCover struct {
	place.CoverSpell
	Version int64
	Past    bool           // it came off before today
	Crops   []CoverCrop    // what stands under it
	Short   []words.Phrase // what is not there to lay it
}

// CoverCrop is a planting under a cover.
type CoverCrop struct {
	ID, Name string
	Does     *words.Phrase  // what the cover does for it; nil: not known yet
	Pests    []words.Phrase // what it keeps off, and does not
}

// CoverNeed is how a planting does with a cover and without it.
type CoverNeed struct {
	With, Without  float64 // share of the years in which something comes of it
	SoonerD        float64 // days that it is ready sooner under the cover; 0 when one of them never is
	WithKg, MoreKg float64 // what it gives in the middle year, and what of that the cover adds
}

// bedCovers tells of the covers over the bed and of what lies open.
func (o *Office) bedCovers(v *BedView, w *bedWork) error {
	h := w.a.holding
	spells := place.CoversOf(h.Covers, w.bed.ID)
	guards, err := protect.Guards(protect.Bed{Book: w.a.setting.Book, Covers: spells, Plantings: w.own, Records: h.Records, South: w.south, Over: w.over}, v.Today)
	if err != nil {
		return err
	}
	stock, err := protect.Count(h.Gear, h.Covers, h.Beds, v.Today)
	if err != nil {
		return err
	}
	for _, s := range spells {
		c := BedCover{CoverSpell: s, Past: s.Off.IsSet() && s.Off <= v.Today}
		if _, version, err := o.keeper.Row("covers", s.ID); err == nil {
			c.Version = version
		}
		needs := o.coverNeeds(w, s.ID)
		for i := range guards {
			if g := &guards[i]; slices.Contains(g.Under, s.ID) {
				c.Crops = append(c.Crops, w.under(g, needs))
			}
		}
		for _, short := range stock.Short {
			if short.Spell == s.ID {
				c.Short = append(c.Short, short.Phrase)
			}
		}
		v.Covers = append(v.Covers, c)
	}
	for i := range guards {
		if g := &guards[i]; len(g.Under) == 0 && len(g.Phrases) > 0 {
			p := w.n.plantings[g.Planting]
			v.Bare = append(v.Bare, BedSaying{g.Planting, w.n.use(p.Crop, p.Use), g.From, g.Phrases[0]})
		}
	}
	return nil
}

// under says what a cover does for a planting.
func (w *bedWork) under(g *protect.Guard, needs map[string]CoverNeed) CoverCrop {
	p := w.n.plantings[g.Planting]
	c := CoverCrop{ID: g.Planting, Name: w.n.use(p.Crop, p.Use), Pests: g.Phrases}
	if need, ok := needs[g.Planting]; ok {
		says := needWords(need)
		c.Does = &says
	}
	return c
}

// The differences from which a cover is told to do something.
const (
	needOdds  = 0.1
	needDays  = 3
	needKg    = 0.3
	needShare = 0.1
)

func needWords(n CoverNeed) words.Phrase {
	switch {
	case n.With-n.Without >= needOdds:
		return words.P("desk.cover_need_odds", words.Args{"with": n.With, "without": n.Without})
	case n.Without-n.With >= needOdds:
		return words.P("desk.cover_harms", words.Args{"with": n.With, "without": n.Without})
	case n.MoreKg >= needKg && n.MoreKg >= needShare*n.WithKg:
		return words.P("desk.cover_more", words.Args{"kg": n.MoreKg})
	case n.SoonerD >= needDays:
		return words.P("desk.cover_sooner", words.Args{"days": math.Round(n.SoonerD)})
	case n.SoonerD <= -needDays:
		return words.P("desk.cover_later", words.Args{"days": math.Round(-n.SoonerD)})
	}
	return words.P("desk.cover_no_need", nil)
}

// CoverNeeds compares the plantings of a cover's bed with the cover and without
// it, by id. It waits for the table.
func (o *Office) CoverNeeds(spell string) (map[string]CoverNeed, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(a.holding.Covers, func(c place.CoverSpell) bool { return c.ID == spell })
	if at < 0 {
		return nil, noRow("covers", spell)
	}
	if _, err := o.table(a); err != nil {
		return nil, err
	}
	w := bedWork{a: a, n: newNamer(a)}
	if err := w.find(a.holding.Covers[at].Bed); err != nil {
		return nil, err
	}
	return o.coverNeeds(&w, spell), nil
}

// coverNeeds compares the plantings of a bed with a cover and without it, when
// the table is at hand; nil when it is not.
func (o *Office) coverNeeds(w *bedWork, spell string) map[string]CoverNeed {
	key := w.a.key("cover need 2 " + spell)
	if text, ok, err := o.keeper.Result(key); err == nil && ok {
		needs := map[string]CoverNeed{}
		if json.Unmarshal(text, &needs) == nil {
			return needs
		}
	}
	if o.cold() {
		return nil
	}
	with, err := o.table(w.a)
	if err != nil {
		return nil
	}
	without, err := o.tableWithout(w.a, spell)
	if err != nil {
		return nil
	}
	needs := map[string]CoverNeed{}
	for i := range with.Plantings {
		f, g := &with.Plantings[i], &without.Plantings[i]
		if f.Bed == w.bed.ID && f.Planting == g.Planting {
			needs[f.Planting] = needOf(w.n.line(with, f, nil), w.n.line(without, g, nil))
		}
	}
	if text, err := json.Marshal(needs); err == nil {
		_ = o.keeper.Keep(key, text) // what cannot be kept is computed again
	}
	return needs
}

func needOf(with, without PlantingLine) CoverNeed {
	n := CoverNeed{With: 1 - with.Fails, Without: 1 - without.Fails, WithKg: with.YieldKg[1], MoreKg: with.YieldKg[1] - without.YieldKg[1]}
	if with.Ready.P50.IsSet() && without.Ready.P50.IsSet() {
		n.SoonerD = float64(without.Ready.P50 - with.Ready.P50)
	}
	return n
}

// tableWithout is the table without one cover. Only its bed is grown anew.
func (o *Office) tableWithout(a *asked, spell string) (*outlook.Table, error) {
	own, setting := *a.holding, a.setting
	own.Covers = slices.DeleteFunc(slices.Clone(own.Covers), func(c place.CoverSpell) bool { return c.ID == spell })
	setting.Holding = &own
	o.computing.Lock()
	defer o.computing.Unlock()
	return outlook.Compute(setting, o.memory)
}

// LiesOn tells whether the cover lies on a day.
func (c *BedCover) LiesOn(day cal.Date) bool {
	return c.On <= day && (!c.Off.IsSet() || day < c.Off)
}

// House tells whether the cover stays where it is, such as a tunnel: it has no
// film that is taken off for a while.
func (c *BedCover) House() bool {
	return c.Kind == cover.Glasshouse || c.Kind == cover.Indoors
}
