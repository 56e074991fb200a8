package protect_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/place"
	"garner/internal/protect"
	"garner/internal/words"
)

func spell(id, bed string, kind cover.Kind, on, off cal.Date) place.CoverSpell {
	return place.CoverSpell{ID: id, Bed: bed, Spell: cover.Spell{Kind: kind, On: on, Off: off}}
}

// rows are beds of 15 by 1.2 m.
func rows() []place.Bed {
	var out []place.Bed
	for _, id := range []string{"1", "2", "3", "4"} {
		out = append(out, place.Bed{ID: id, Name: "Row " + id, LengthM: 15, WidthM: 1.2})
	}
	return out
}

func count(t testing.TB, gear []place.Gear, spells []place.CoverSpell) *protect.Stock {
	t.Helper()
	s, err := protect.Count(gear, spells, rows(), cal.Of(2027, 1, 1))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func said(s protect.Shortage) string { return words.English().Text(s.Phrase) }

func TestAPlanMayNotUseMoreThanThereIs(t *testing.T) {
	mesh := []place.Gear{{ID: "mesh", Kind: "mesh", MeshMM: 1.3, Pieces: 2, LengthM: 16, WidthM: 2.6}}
	spells := []place.CoverSpell{
		spell("a", "1", cover.Mesh, cal.Of(2027, 5, 27), cal.Of(2027, 10, 5)),
		spell("b", "2", cover.Mesh, cal.Of(2027, 6, 1), cal.Of(2027, 10, 5)),
		spell("c", "3", cover.Mesh, cal.Of(2027, 7, 12), cal.Of(2027, 11, 12)),
		spell("d", "4", cover.Mesh, cal.Of(2027, 10, 5), cal.None),
	}
	s := count(t, mesh, spells)
	if len(s.Short) != 1 || s.Short[0].Bed != "3" || s.Short[0].Out != 2 || s.Short[0].Short != 1 {
		t.Fatalf("%+v", s.Short)
	}
	if got, want := said(s.Short[0]), "From 12 July 2027, two pieces of mesh are out and one more is wanted for Row 3."; got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if s := count(t, nil, spells); len(s.Short) != 0 {
		t.Errorf("a kind that is not listed is counted: %+v", s.Short)
	}
}

func TestPiecesMustFit(t *testing.T) {
	on, off := cal.Of(2027, 4, 1), cal.Of(2027, 5, 1)
	for name, w := range map[string]struct {
		gear   place.Gear
		spell  place.CoverSpell
		pieces int // 0: short
	}{
		"long enough":   {place.Gear{Kind: "fleece", Pieces: 1, LengthM: 15.4, WidthM: 1.5}, spell("s", "1", cover.Fleece, on, off), 1},
		"too narrow":    {place.Gear{Kind: "fleece", Pieces: 9, LengthM: 30, WidthM: 1.2}, spell("s", "1", cover.Fleece, on, off), 0},
		"two in a row":  {place.Gear{Kind: "fleece", Pieces: 2, LengthM: 8, WidthM: 2.1}, spell("s", "1", cover.Fleece, on, off), 2},
		"one too short": {place.Gear{Kind: "fleece", Pieces: 1, LengthM: 8, WidthM: 2.1}, spell("s", "1", cover.Fleece, on, off), 0},
		"over hoops":    {place.Gear{Kind: "film", Pieces: 1, LengthM: 17, WidthM: 2.1}, spell("s", "1", cover.LowTunnel, on, off), 0}, // half a circle over 1.2 m is 1.9 m, and 0.4 to bury
		"holes too wide": {place.Gear{Kind: "mesh", MeshMM: 1.3, Pieces: 1, LengthM: 16, WidthM: 2.6},
			place.CoverSpell{ID: "s", Bed: "1", Spell: cover.Spell{Kind: cover.Mesh, On: on, Off: off, MeshMM: 0.8}}, 0},
		"a net for mesh of wide holes": {place.Gear{Kind: "net", Pieces: 1, LengthM: 16, WidthM: 4},
			place.CoverSpell{ID: "s", Bed: "1", Spell: cover.Spell{Kind: cover.Mesh, On: on, Off: off, MeshMM: 20}}, 1},
		"cloches end to end": {place.Gear{Kind: "cloche", Pieces: 60, LengthM: 0.5, WidthM: 0.6}, spell("s", "1", cover.Cloche, on, off), 60},
		"too few cloches":    {place.Gear{Kind: "cloche", Pieces: 59, LengthM: 0.5, WidthM: 0.6}, spell("s", "1", cover.Cloche, on, off), 0},
	} {
		w.gear.ID = "g"
		s := count(t, []place.Gear{w.gear}, []place.CoverSpell{w.spell})
		used := 0
		for _, u := range s.Uses {
			used += u.Pieces
		}
		if used != w.pieces || (w.pieces == 0) != (len(s.Short) == 1) {
			t.Errorf("%s: %d pieces, short %+v", name, used, s.Short)
		}
	}
}

// Hoops a metre apart under film (common practice, no source): 16 over 15 m.
func TestHoopsAreCounted(t *testing.T) {
	gear := []place.Gear{{ID: "hoops", Kind: "hoop", Pieces: 30}}
	spells := []place.CoverSpell{spell("a", "1", cover.LowTunnel, cal.Of(2027, 3, 1), cal.Of(2027, 5, 1)), spell("b", "2", cover.LowTunnel, cal.Of(2027, 4, 1), cal.Of(2027, 5, 1))}
	s := count(t, gear, spells)
	if len(s.Short) != 1 || s.Short[0].Short != 2 || !strings.Contains(said(s.Short[0]), "16 hoops are out and two more are wanted for Row 2") {
		t.Errorf("%+v", s.Short)
	}
}

// On no day is more out than there is, more gear never leaves more short, and
// every spell has its pieces or is told to be short.
func TestTheStockIsNeverOverdrawn(t *testing.T) {
	kinds := []cover.Kind{cover.Mesh, cover.Fleece, cover.LowTunnel, cover.Tunnel}
	rapid.Check(t, func(r *rapid.T) {
		gear := []place.Gear{{ID: "m", Kind: "mesh", Pieces: rapid.IntRange(0, 4).Draw(r, "mesh"), LengthM: 16, WidthM: 2.6},
			{ID: "f", Kind: "fleece", Pieces: rapid.IntRange(0, 6).Draw(r, "fleece"), LengthM: 8, WidthM: 2.1},
			{ID: "h", Kind: "hoop", Pieces: rapid.IntRange(0, 60).Draw(r, "hoops")}}
		var spells []place.CoverSpell
		for i := range rapid.IntRange(1, 8).Draw(r, "spells") {
			on := cal.Of(2027, 1, 1) + cal.Date(rapid.IntRange(0, 300).Draw(r, "on"))
			spells = append(spells, spell(string(rune('a'+i)), rapid.SampledFrom([]string{"1", "2", "3", "4"}).Draw(r, "bed"), rapid.SampledFrom(kinds).Draw(r, "kind"),
				on, on+cal.Date(rapid.IntRange(1, 200).Draw(r, "days"))))
		}
		s := count(t, gear, spells)
		for day := cal.Of(2027, 1, 1); day < cal.Of(2028, 6, 1); day++ {
			out := map[string]int{}
			for _, u := range s.Uses {
				if u.On <= day && day < u.Off {
					out[u.Gear] += u.Pieces
				}
			}
			for _, g := range gear {
				if out[g.ID] > g.Pieces {
					r.Fatalf("%s: %d of %d %s are out", day, out[g.ID], g.Pieces, g.Kind)
				}
			}
		}
		for _, sp := range spells {
			has := sp.Kind == cover.Tunnel || sp.Kind == cover.LowTunnel // no film is listed: not counted
			for _, u := range s.Uses {
				has = has || u.Spell == sp.ID
			}
			for _, short := range s.Short {
				has = has || short.Spell == sp.ID
			}
			if !has {
				r.Fatalf("%s has no pieces and is not short: %+v", sp.ID, s)
			}
		}
		if gear[0].Pieces >= 8 && len(s.Short) > 0 {
			r.Fatal("short of mesh with a piece for every spell")
		}
	})
}
