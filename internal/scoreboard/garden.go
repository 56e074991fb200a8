package scoreboard

import (
	"io/fs"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/printed"
	"garner/internal/season"
	"garner/internal/sun"
	"garner/internal/window"
)

// gardenYears is how many years of plantings a garden of the board sees.
const gardenYears = 15

// gardenFirst is the first day of a garden's weather; two more years run out
// what stands the winter.
var gardenFirst = cal.Of(2001, 1, 1)

// garden is a place under years of generated weather.
type garden struct {
	sky    *season.Sky
	days   []climate.Day
	beds   map[bedKind]*season.Bedside
	runner season.Runner
}

type bedKind struct {
	cover cover.Kind
	light float64
}

func newGarden(at sun.Location, normals climate.Normals) (*garden, error) {
	generator, err := climate.NewGenerator(normals, at)
	if err != nil {
		return nil, err
	}
	span := int(cal.Of(gardenFirst.Year()+gardenYears+2, 1, 1) - gardenFirst)
	return &garden{sky: season.NewSky(at, gardenFirst, span), days: generator.Days(window.UsualSeed, 0, 0, gardenFirst, span),
		beds: map[bedKind]*season.Bedside{}}, nil
}

// bed is the garden's ground under a cover and in a share of the light.
func (g *garden) bed(kind cover.Kind, light float64) (*season.Bedside, error) {
	key := bedKind{kind, light}
	if b, ok := g.beds[key]; ok {
		return b, nil
	}
	ground := season.Ground{Light: light}
	if kind != cover.Open {
		ground.Spells = []cover.Spell{{Kind: kind, On: gardenFirst, Off: cal.None}}
	}
	b := &season.Bedside{}
	if err := b.Build(g.sky, g.days, ground, 0); err != nil {
		return nil, err
	}
	g.beds[key] = b
	return b, nil
}

// sowing is a use put in every year on one day of the year.
type sowing struct {
	use   *crop.Use
	start growth.Start
	on    cal.MonthDay
	cover cover.Kind
	light float64
	old   int // years old, of a perennial
}

// everyYear grows a sowing in each year. each is shown the date it went in and
// how it fared; watch may be nil, and is shown the plants of every day.
func (g *garden) everyYear(s sowing, watch func(year int, date cal.Date, p *growth.Plants), each func(date cal.Date, o season.Outcome)) error {
	b, err := g.bed(s.cover, s.light)
	if err != nil {
		return err
	}
	params := growth.Prepare(s.use, s.start, g.sky.Northern())
	for y := range gardenYears {
		date := s.on.In(gardenFirst.Year() + y)
		p := season.Planting{Parameters: params, Date: date, AreaM2: 1, ClearBy: cal.None, Soil: 1, YearsOld: s.old}
		var day func(int, *growth.Plants)
		if watch != nil {
			day = func(i int, plants *growth.Plants) { watch(y, gardenFirst+cal.Date(i), plants) }
		}
		each(date, g.runner.Follow(g.sky, b, &p, growth.Fair(s.use), day))
	}
	return nil
}

// england is the garden of the practice checks: Oxford's normals.
func (m *maker) england() (*garden, error) {
	if m.home != nil {
		return m.home, nil
	}
	dates, err := printed.Published()
	if err != nil {
		return nil, err
	}
	for _, r := range dates.Regions {
		if r.ID == "UK-S" {
			m.home, err = newGarden(r.Location, r.Normals)
			return m.home, err
		}
	}
	return nil, fs.ErrNotExist
}
