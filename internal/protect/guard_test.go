package protect_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/protect"
	"garner/internal/words"
)

func planted(id, crop string, from, to cal.Date) plan.Planting {
	p := plan.New(id, "p")
	p.Bed, p.Crop, p.Date, p.ClearBy = "1", crop, from, to
	return p
}

func bed(t testing.TB) protect.Bed {
	t.Helper()
	b, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	return protect.Bed{Book: b}
}

func guards(t testing.TB, b protect.Bed) []protect.Guard {
	t.Helper()
	g, err := protect.Guards(b, cal.Of(2027, 1, 1))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func text(g protect.Guard) string {
	var lines []string
	for _, p := range g.Phrases {
		lines = append(lines, words.English().Text(p))
	}
	return strings.Join(lines, " ")
}

// About 0.8 mm keeps out flea beetle, 1.3 mm root flies, 7 mm butterflies and
// 20 mm pigeons (common practice, no source).
func TestMeshKeepsOutWhatIsWider(t *testing.T) {
	for _, w := range []struct {
		mm            float64
		kept, through []string
	}{
		{0.8, []string{"flea-beetle", "cabbage-root-fly", "cabbage-white", "pigeon"}, nil},
		{1.3, []string{"cabbage-root-fly", "cabbage-white", "pigeon"}, []string{"flea-beetle"}},
		{7, []string{"cabbage-white", "pigeon"}, []string{"flea-beetle", "cabbage-root-fly"}},
		{20, []string{"pigeon"}, []string{"flea-beetle", "cabbage-root-fly", "cabbage-white"}},
	} {
		b := bed(t)
		b.Plantings = []plan.Planting{planted("r", "radish", cal.Of(2027, 4, 1), cal.Of(2027, 5, 15))}
		b.Covers = []place.CoverSpell{{ID: "m", Bed: "1", Spell: cover.Spell{Kind: cover.Mesh, On: cal.Of(2027, 4, 1), Off: cal.None, MeshMM: w.mm}}}
		g := guards(t, b)[0]
		if !slices.Equal(g.Kept, w.kept) || !slices.Equal(g.Through, w.through) {
			t.Errorf("%v mm: kept %v, through %v", w.mm, g.Kept, g.Through)
		}
	}
}

func TestUselessOverGroundWhereThePestWintered(t *testing.T) {
	b := bed(t)
	b.Plantings = []plan.Planting{planted("p", "parsnip", cal.Of(2026, 4, 1), cal.Of(2027, 2, 1)), planted("c", "carrot", cal.Of(2027, 5, 1), cal.Of(2027, 10, 1))}
	b.Covers = []place.CoverSpell{spell("m", "1", cover.Mesh, cal.Of(2027, 5, 1), cal.Of(2027, 10, 1))}
	carrots := guards(t, b)[1]
	if !slices.Equal(carrots.Wintered, []string{"carrot-fly"}) || slices.Contains(carrots.Kept, "carrot-fly") || !strings.Contains(text(carrots), "shut them in with the carrots") {
		t.Errorf("after parsnips: %+v", carrots)
	}
	b.Plantings[0].Date, b.Plantings[0].ClearBy = cal.Of(2027, 3, 1), cal.Of(2027, 9, 1)
	if carrots = guards(t, b)[1]; len(carrots.Wintered) != 0 {
		t.Errorf("parsnips of the same spring: %+v", carrots)
	}
	b.Plantings[0].Date, b.Plantings[0].ClearBy = cal.Of(2026, 4, 1), cal.Of(2027, 2, 1)
	b.Plantings[0].Crop = "leek"
	if carrots = guards(t, b)[1]; !slices.Equal(carrots.Kept, []string{"carrot-fly"}) {
		t.Errorf("after leeks: %+v", carrots)
	}
}

func TestACoverForAPartOfTheTimeIsToldAsSuch(t *testing.T) {
	b := bed(t)
	b.Plantings = []plan.Planting{planted("r", "radish", cal.Of(2027, 4, 8), cal.Of(2027, 6, 1))}
	b.Covers = []place.CoverSpell{spell("m", "1", cover.Mesh, cal.Of(2027, 5, 27), cal.Of(2027, 10, 5))}
	if g := guards(t, b)[0]; len(g.Kept) != 0 || !slices.Contains(g.Part, "cabbage-root-fly") || !strings.Contains(text(g), "for a part of their time") {
		t.Errorf("five days of fifty: %+v", g)
	}
	b.Plantings[0].ClearBy = cal.Of(2028, 3, 1)
	if g := guards(t, b)[0]; len(g.Part) != 0 || len(g.Kept) == 0 {
		t.Errorf("most of the summer: %+v", g)
	}
}

// Squashes and courgettes need bees (common practice, no source).
func TestOffForPollination(t *testing.T) {
	b := bed(t)
	b.Plantings = []plan.Planting{planted("c", "courgette", cal.Of(2027, 5, 20), cal.Of(2027, 10, 1))}
	b.Covers = []place.CoverSpell{spell("m", "1", cover.Mesh, cal.Of(2027, 5, 20), cal.Of(2027, 10, 1))}
	if g := guards(t, b)[0]; !g.Flower || !strings.Contains(text(g), "Take the mesh off the courgettes when they flower") {
		t.Errorf("%+v", g)
	}
	b.Covers[0].Off = cal.Of(2027, 6, 20)
	if g := guards(t, b)[0]; g.Flower {
		t.Errorf("off before it flowers: %+v", g)
	}
	b.Covers[0].Off, b.Covers[0].MeshMM = cal.None, 20
	if g := guards(t, b)[0]; g.Flower {
		t.Errorf("bees pass a net: %+v", g)
	}
}

func TestNothingIsToldOfHouses(t *testing.T) {
	b := bed(t)
	b.Plantings = []plan.Planting{planted("l", "rocket", cal.Of(2027, 2, 1), cal.Of(2027, 4, 15))}
	b.Covers = []place.CoverSpell{spell("t", "1", cover.Tunnel, cal.Of(2024, 3, 1), cal.None)}
	if g := guards(t, b)[0]; len(g.Phrases) != 0 || !slices.Equal(g.Under, []string{"t"}) {
		t.Errorf("in a tunnel: %+v", g)
	}
	b.Covers = nil
	if g := guards(t, b)[0]; !strings.Contains(text(g), "Nothing keeps flea beetles, cabbage root fly") {
		t.Errorf("in the open: %s", text(g))
	}
}

// Finer mesh never keeps out less.
func TestFinerMeshKeepsOutNoLess(t *testing.T) {
	base := bed(t)
	var ids []string
	for _, c := range base.Book.Crops() {
		ids = append(ids, c.ID)
	}
	rapid.Check(t, func(r *rapid.T) {
		b := base
		b.Plantings = []plan.Planting{planted("x", rapid.SampledFrom(ids).Draw(r, "crop"), cal.Of(2027, 4, 1), cal.Of(2027, 9, 1))}
		kept := func(mm float64) []string {
			b.Covers = []place.CoverSpell{{ID: "m", Bed: "1", Spell: cover.Spell{Kind: cover.Mesh, On: cal.Of(2027, 4, 1), Off: cal.None, MeshMM: mm}}}
			return guards(t, b)[0].Kept
		}
		fine := rapid.Float64Range(0.1, 25).Draw(r, "fine")
		wide := fine + rapid.Float64Range(0, 25).Draw(r, "wider")
		for _, pest := range kept(wide) {
			if !slices.Contains(kept(fine), pest) {
				r.Fatalf("%v mm keeps out %s, %v mm does not", wide, pest, fine)
			}
		}
	})
}
