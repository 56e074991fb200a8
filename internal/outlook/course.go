package outlook

import (
	"garner/internal/cal"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/season"
)

// Course is how one planting goes day by day under one future.
type Course struct {
	Planting string
	First    cal.Date
	Days     []CourseDay
}

// CourseDay is the close of a day.
type CourseDay struct {
	Stage   growth.Stage
	Leaf    float64 // leaf area index
	KgM2    float64 // fresh weight that stands to be picked
	PARMJ   float64 // radiation plants can use at the top of the bed [MJ/m2]
	MeanC   float64
	Picked  float64 // came ripe today [kg/m2]
	Develop float64 // stage of development, 0-1
	Light   float64 // share of PARMJ that its neighbours' leaves let through to its own, 0-1
	Left    float64 // share of the planting that is not lost, 0-1
}

// Courses follows the plantings of one bed day by day under one future. The
// table must have been computed, so that the weather is at hand.
func (t *Table) Courses(bed string, future int) []Course {
	var out []Course
	for _, b := range t.beds {
		if b.id == bed {
			out = append(out, b.courses(t, future)...)
		}
	}
	return out
}

// BedName names all that the courses of a bed depend on, beside the future.
func (t *Table) BedName(bed string) (num.Digest, bool) {
	d, known := num.NewDigester("parts"), false
	for _, b := range t.beds {
		if b.id == bed {
			d.Digest(b.digest)
			known = true
		}
	}
	return d.Sum(), known
}

func (b *bedWork) courses(t *Table, future int) []Course {
	out := make([]Course, len(b.plantings))
	air, err := b.air(future)
	if err != nil {
		return nil
	}
	b.rerun(t, air, &b.bed, future, &season.Runner{}, func(i, day int, a *growth.Air, s *growth.Plants, l season.Light) {
		c := &out[i]
		if len(c.Days) == 0 {
			c.First = b.site.sky.First + cal.Date(day)
		}
		p := b.uses[i].params
		c.Days = append(c.Days, CourseDay{Stage: s.Stage, Leaf: s.Leaf, KgM2: s.FreshKgM2(p), PARMJ: a.PARMJ,
			MeanC: a.MeanC, Picked: s.YieldedKgM2(p), Develop: s.Development, Light: l.Top,
			Left: b.bed.Plantings[i].Left(b.site.sky.First + cal.Date(day))})
	})
	for i := range out {
		out[i].Planting = b.plantings[i].ID
	}
	return out
}
