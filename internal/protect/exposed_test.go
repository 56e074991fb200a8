package protect_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/protect"
)

func exposed(t testing.TB, b protect.Bed, planting, pest string) protect.Exposed {
	t.Helper()
	all, err := protect.Exposures(b, pest)
	if err != nil {
		t.Fatal(err)
	}
	return all[planting]
}

func TestCarrotsLieOpenUntilTheMeshGoesOn(t *testing.T) {
	from, to := cal.Of(2027, 4, 1), cal.Of(2027, 10, 1)
	b := bed(t)
	b.Plantings = []plan.Planting{planted("c", "carrot", from, to)}
	if got := exposed(t, b, "c", "carrot-fly"); !slices.Equal(got.Open, []protect.Span{{From: from, To: to}}) || got.GapMM != 1.3 {
		t.Errorf("in the open: %+v", got)
	}
	on, off := cal.Of(2027, 5, 1), cal.Of(2027, 7, 1)
	mesh := func(mm float64) []place.CoverSpell {
		return []place.CoverSpell{{ID: "m", Bed: "1", Spell: cover.Spell{Kind: cover.Mesh, On: on, Off: off, MeshMM: mm}}}
	}
	b.Covers = mesh(1.3)
	if got := exposed(t, b, "c", "carrot-fly"); !slices.Equal(got.Open, []protect.Span{{From: from, To: on}, {From: off, To: to}}) {
		t.Errorf("under mesh for two months: %+v", got)
	}
	b.Covers = mesh(7)
	if got := exposed(t, b, "c", "carrot-fly"); len(got.Open) != 1 || len(got.Shut) != 0 {
		t.Errorf("flies pass a net: %+v", got)
	}
	if got := exposed(t, b, "c", "lettuce-aphid"); len(got.Open) != 1 || got.GapMM != 0 {
		t.Errorf("a pest that no cover is known for: %+v", got)
	}
	b.Plantings = append(b.Plantings, planted("p", "parsnip", cal.Of(2026, 4, 1), cal.Of(2027, 2, 1)))
	if got := exposed(t, b, "c", "carrot-fly"); !got.Wintered {
		t.Errorf("after parsnips: %+v", got)
	}
}

// What is open and what is shut make up the time in the ground.
func TestOpenAndShutMakeUpTheStay(t *testing.T) {
	base := bed(t)
	from, to := cal.Of(2027, 3, 1), cal.Of(2027, 11, 1)
	rapid.Check(t, func(r *rapid.T) {
		b := base
		b.Plantings = []plan.Planting{planted("c", "cabbage", from, to)}
		shut := map[cal.Date]bool{}
		for range rapid.IntRange(0, 3).Draw(r, "covers") {
			on := from + cal.Date(rapid.IntRange(-40, 260).Draw(r, "on"))
			s := cover.Spell{Kind: cover.Mesh, On: on, Off: on + cal.Date(rapid.IntRange(1, 120).Draw(r, "days")), MeshMM: 1}
			b.Covers = append(b.Covers, place.CoverSpell{ID: "m", Bed: "1", Spell: s})
			for d := s.On; d < s.Off; d++ {
				shut[d] = true
			}
		}
		open := map[cal.Date]bool{}
		all, err := protect.Exposures(b, "cabbage-root-fly")
		if err != nil {
			r.Fatal(err)
		}
		for _, s := range all["c"].Open {
			for d := s.From; d < s.To; d++ {
				open[d] = true
			}
		}
		for d := from; d < to; d++ {
			if open[d] == shut[d] {
				r.Fatalf("%s: open %v, shut %v", d, open[d], shut[d])
			}
		}
	})
}
