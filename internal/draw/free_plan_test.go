package draw

import (
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/place"
	"garner/internal/space"
)

func exampleFreePlan() (*desk.SpaceView, *desk.SiteSpace) {
	long := place.Bed{ID: "a", Site: "s", Name: "Long <bed>", LengthM: 6, WidthM: 1.2, At: place.Spot{XM: 5, YM: 5}}
	barrel := place.Bed{ID: "b", Site: "s", Name: "Barrel", LengthM: 0.6, WidthM: 0.6, Shape: place.Round, At: place.Spot{XM: 9, YM: 2}}
	upright := place.Bed{ID: "c", Site: "s", Name: "Border", LengthM: 5, WidthM: 0.6, At: place.Spot{XM: 1, YM: 4, TurnDeg: 90}}
	v := &desk.SpaceView{Beds: []desk.BedSpace{{Bed: long}, {Bed: barrel}, {Bed: upright}, {Bed: place.Bed{ID: "d", Site: "other"}}}}
	free := func(b place.Bed, at, share float64) {
		v.Free = append(v.Free, desk.FreeSpace{Gap: space.Gap{Bed: b.ID, At: at, Share: share}, Corners: b.Part(at, share)})
	}
	free(long, 0.5, 0.5)
	free(long, 0, 0.02)
	free(upright, 0, 1)
	free(barrel, 0, 1)
	return v, &desk.SiteSpace{Site: place.Site{ID: "s", PlanWidthM: 10, PlanDepthM: 8},
		Features: []place.Feature{{Kind: place.Wall, LengthM: 4, WidthM: 0.3, At: place.Spot{XM: 5, YM: 8}}}}
}

// Free ground is dashed on its bed, to scale, and says so where the word has room.
func TestFreePlanShowsFreeGround(t *testing.T) {
	v, site := exampleFreePlan()
	drawn := FreePlan(v, site, FreePlanOptions{WidthPX: 400, HeightPX: 400, Label: `plan of "a"`, Free: "free", Metres: px})
	for part, want := range map[string]int{
		`class="free-plan-bed"`: 3, `class="free-plan-feature"`: 1, `class="free-plan-free"`: 4,
		`class="free mid"`: 2, `rotate(-90`: 1, "Long &lt;bed&gt;": 1, `aria-label="plan of &#34;a&#34;"`: 1,
	} {
		if got := strings.Count(drawn, part); got != want {
			t.Errorf("%s is drawn %d times, want %d", part, got, want)
		}
	}
	// 6 m by 1.2 m in the middle at 40 px/m: its right half begins at 200 px.
	if !strings.Contains(drawn, "M200 ") {
		t.Errorf("the right half of the long bed does not begin in the middle:\n%s", drawn)
	}
}

func TestNoPlanOfASiteThatIsNotDrawn(t *testing.T) {
	v, site := exampleFreePlan()
	site.PlanWidthM = 0
	if got := FreePlan(v, site, FreePlanOptions{WidthPX: 400, HeightPX: 400}); got != "" {
		t.Errorf("drawn: %s", got)
	}
}
