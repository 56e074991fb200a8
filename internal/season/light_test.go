package season_test

import (
	"math"
	"testing"

	"garner/internal/season"
	"garner/internal/sun"
)

// Beam and diffuse are put together by the day's own diffuse share (the daily
// correlation of Erbs et al. 1982), so a wall takes more of a bright day than of
// a dull one; what the plan does not show comes on top.
func TestLightOfADayPastAWall(t *testing.T) {
	sky := season.NewSky(north, first, span)
	shade := &season.Shade{}
	for d := range shade.Beam {
		shade.Beam[d], shade.Diffuse[d] = 0.3, 0.8
	}
	g := season.Ground{Light: 0.9, Shade: shade}
	for _, day := range []int{20, 171, 354} {
		above := sky.ExtraterrestrialMJ[day]
		dull, bright := g.LightOn(sky, day, 0.1*above), g.LightOn(sky, day, 0.72*above)
		if !(dull > bright+0.2) {
			t.Errorf("day %d: %v of a dull day, %v of a bright one", day, dull, bright)
		}
		share := sun.DiffuseShare(0.4, sun.SunsetAngle(north.LatitudeDeg, (first.DayOfYear()+day-1)%365+1))
		if got, want := g.LightOn(sky, day, 0.4*above), 0.9*(share*0.8+(1-share)*0.3); math.Abs(got-want) > 1e-9 {
			t.Errorf("day %d: %v of the light, want %v", day, got, want)
		}
	}
	g.Shade = nil
	if got := g.LightOn(sky, 100, 9); got != 0.9 {
		t.Errorf("in the open %v", got)
	}
}
