package climate

import (
	"testing"

	"garner/internal/sun"
)

// mirrored shifts normals by half a year.
func mirrored(n Normals) (out Normals) {
	for i := range n {
		out[(i+6)%12] = n[i]
		out[(i+6)%12].RadiationMJ = Maybe{} // the sun's distance differs by half-years
	}
	return out
}

func (s station) mirrored() sun.Location {
	l := s.location
	l.LatitudeDeg = -l.LatitudeDeg
	return l
}

// In the south the frost year is the calendar year, and frosts lie in its
// middle.
func TestSouthernFrostsLieInTheMiddleOfTheYear(t *testing.T) {
	years := thousandYears(t, "southern Lebanon", func() (*Generator, error) {
		return NewGenerator(mirrored(lebanonNormals(t)), lebanon.mirrored())
	})
	f := FrostsOf(years.record, FrostC, lebanon.mirrored().LatitudeDeg)
	if m := f.FirstAutumn.P50.Month; m < 2 || m > 6 {
		t.Errorf("first frost %v", f.FirstAutumn.P50)
	}
	if m := f.LastSpring.P50.Month; m < 8 || m > 12 {
		t.Errorf("last frost %v", f.LastSpring.P50)
	}
}
