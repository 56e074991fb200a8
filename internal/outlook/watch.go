package outlook

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/season"
	"garner/internal/words"
)

// Variant is plantings that share light with something changed, stepped again through
// futures that a table has.
type Variant struct {
	// Change alters one planting; nil: nothing is changed.
	Change func(id string, p *season.Planting)
	// See is shown every planting at the close of every day; nil: nobody looks.
	See func(*Sight)
}

// Sight is one planting at the close of one day under one future.
type Sight struct {
	Future   int
	Planting string
	Date     cal.Date
	Stage    growth.Stage
	Leaf     float64      // leaf area index
	Cover    float64      // share of the light on its own ground that its leaf would take alone
	Light    season.Light // of what comes to the bed
}

// Leave lets a planting out, as if it had never been put in.
func Leave(p *season.Planting) { p.Date = cal.Date(1 << 30) }

// Variants steps a planting, with all that share its light, through the first
// futures of a table, once for each variant. The luck of every planting is that of
// the table. Fates come by variant, then in the order of the bed's plantings.
func (t *Table) Variants(planting string, futures int, variants []Variant) ([][]Fate, error) {
	if b := t.partOf(planting); b != nil {
		return b.variants(t, min(futures, t.Years), variants)
	}
	return nil, fault.New(fault.NotFound, "outlook.planting_outside", words.Args{"planting": planting})
}

// PartName names all that a planting's course depends on, beside the future: what
// shares its light, and the bed's own weather.
func (t *Table) PartName(planting string) (num.Digest, bool) {
	if b := t.partOf(planting); b != nil {
		return b.digest, true
	}
	return num.Digest{}, false
}

// partOf is the part of a bed that holds a planting; nil outside of the table.
func (t *Table) partOf(planting string) *bedWork {
	for _, b := range t.beds {
		for i := range b.plantings {
			if b.plantings[i].ID == planting {
				return b
			}
		}
	}
	return nil
}

func (b *bedWork) variants(t *Table, futures int, variants []Variant) ([][]Fate, error) {
	out := make([][]Fate, len(variants))
	beds := make([]season.Bed, len(variants))
	for k, v := range variants {
		beds[k] = b.bed
		beds[k].Plantings = append([]season.Planting(nil), b.bed.Plantings...)
		for i := range b.plantings {
			out[k] = append(out[k], Fate{Planting: b.plantings[i].ID, Bed: b.id, Crop: b.uses[i].use.Crop, Use: b.uses[i].use.Name, First: b.site.sky.First})
			if v.Change != nil {
				v.Change(b.plantings[i].ID, &beds[k].Plantings[i])
			}
		}
	}
	var runner season.Runner
	for f := range futures {
		air, err := b.air(f)
		if err != nil {
			return nil, err
		}
		for k := range variants {
			outcomes := b.rerun(t, air, &beds[k], f, &runner, b.sees(f, variants[k].See))
			for i := range outcomes {
				out[k][i].Years = append(out[k][i].Years, &outcomes[i])
			}
		}
	}
	return out, nil
}

// sees turns the day loop's view of a planting into a sight.
func (b *bedWork) sees(future int, see func(*Sight)) daily {
	if see == nil {
		return nil
	}
	return func(i, day int, _ *growth.Air, s *growth.Plants, l season.Light) {
		see(&Sight{Future: future, Planting: b.plantings[i].ID, Date: b.site.sky.First + cal.Date(day), Stage: s.Stage,
			Leaf: s.Leaf, Cover: growth.Intercepted(b.uses[i].use.Extinction, s.Leaf), Light: l})
	}
}

// daily is shown a planting at the close of a day, with the day's air.
type daily func(planting, day int, a *growth.Air, s *growth.Plants, l season.Light)

// airs is the own weather of a bed and of those its plantings were moved from.
type airs struct {
	here      *season.Bedside
	elsewhere []*season.Bedside
}

func (b *bedWork) air(future int) (a airs, err error) {
	if a.here, err = weatherBeside(b.site, &b.bed.Ground, b.start, future); err != nil {
		return a, err
	}
	for i := range b.former {
		o := &b.former[i]
		other, err := weatherBeside(o.site, &o.ground, o.start, future)
		if err != nil {
			return a, err
		}
		a.elsewhere = append(a.elsewhere, other)
	}
	return a, nil
}

// of is the weather of the bed in which a planting stands on a day.
func (a *airs) of(p *season.Planting, on cal.Date) *season.Bedside {
	for _, s := range p.Stays {
		if on < s.Until {
			return a.elsewhere[s.Elsewhere]
		}
	}
	return a.here
}

func weatherBeside(site *siteWork, ground *season.Ground, start, future int) (*season.Bedside, error) {
	if err := site.years.prepare(); err != nil {
		return nil, err
	}
	beside := &season.Bedside{}
	return beside, beside.Build(site.sky, site.years.of(future), *ground, start)
}

// rerun steps the plantings of a bed through one future, as laid or as changed.
func (b *bedWork) rerun(t *Table, a airs, bed *season.Bed, future int, runner *season.Runner, each daily) []season.Outcome {
	runner.Elsewhere, runner.Watch = a.elsewhere, nil
	if each != nil {
		runner.Watch = func(i, day int, s *growth.Plants, l season.Light) {
			each(i, day, &a.of(&bed.Plantings[i], b.site.sky.First+cal.Date(day)).Air[day], s, l)
		}
	}
	return runner.Run(b.site.sky, a.here, bed, b.draws(t.Seed, future, nil))
}
