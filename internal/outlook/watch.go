package outlook

import (
	"garner/internal/growth"
	"garner/internal/season"
)

// watch steps the plantings of a bed through one future, as laid or as changed,
// and shows every planting at the close of every day.
func (b *bedWork) watch(t *Table, bed *season.Bed, future int, each func(planting, day int, a *growth.Air, s *growth.Plants, l season.Light)) error {
	_, err := b.rerun(t, bed, future, &season.Runner{}, each)
	return err
}

// rerun steps the plantings of a bed through one future, as laid or as changed.
func (b *bedWork) rerun(t *Table, bed *season.Bed, future int, runner *season.Runner, each func(planting, day int, a *growth.Air, s *growth.Plants, l season.Light)) ([]season.Outcome, error) {
	beside, err := weatherBeside(b.site, &b.bed.Ground, b.start, future)
	if err != nil {
		return nil, err
	}
	runner.Elsewhere = runner.Elsewhere[:0]
	for i := range b.former {
		o := &b.former[i]
		other, err := weatherBeside(o.site, &o.ground, o.start, future)
		if err != nil {
			return nil, err
		}
		runner.Elsewhere = append(runner.Elsewhere, other)
	}
	runner.Watch = nil
	if each != nil {
		runner.Watch = func(i, day int, s *growth.Plants, l season.Light) { each(i, day, &beside.Air[day], s, l) }
	}
	return runner.Run(b.site.sky, beside, bed, b.draws(t.Seed, future, nil)), nil
}

func weatherBeside(site *siteWork, ground *season.Ground, start, future int) (*season.Bedside, error) {
	if err := site.years.prepare(); err != nil {
		return nil, err
	}
	site.years.fill(future)
	beside := &season.Bedside{}
	return beside, beside.Build(site.sky, site.years.days[future], *ground, start)
}
