package notebook

import (
	"fmt"
	"strings"
	"testing"

	"garner/internal/place"
	"garner/internal/words"
)

func ground(text string) string {
	beds, covers, faults := ReadBeds(text)
	over := map[string]string{}
	for _, c := range covers {
		over[c.Bed] = " under " + string(c.Kind)
	}
	var out []string
	for _, b := range beds {
		out = append(out, fmt.Sprintf("%s %s %gx%g%s", b.ID, b.Name, b.LengthM, b.WidthM, over[b.ID]))
	}
	for _, f := range faults {
		out = append(out, f.Phrase.Key)
	}
	return strings.Join(out, "; ")
}

// A round pot is taken as a square of the same area: 40 cm across, 0.126 m2.
func TestReadBeds(t *testing.T) {
	for text, want := range map[string]string{
		"2 beds 6 x 1.2, tunnel 6 x 4":          "b1 Bed 1 6x1.2; b2 Bed 2 6x1.2; t1 Tunnel 6x4 under tunnel",
		"2 frames 1.2 x 0.8, 2 pots 40 cm":      "f1 Frame 1 1.2x0.8 under cold frame; f2 Frame 2 1.2x0.8 under cold frame; c1 Pot 1 0.35x0.35; c2 Pot 2 0.35x0.35",
		"bed 6x1,2":                             "b1 Bed 1 6x1.2",
		"1.2 m by 6 m bed":                      "b1 Bed 1 6x1.2",
		"two tunnels 9 x 3 and a border 9 x .8": "t1 Tunnel 1 9x3 under tunnel; t2 Tunnel 2 9x3 under tunnel; w1 Border 9x0.8",
		"greenhouse 3 x 2":                      "t1 Glasshouse 3x2 under glasshouse",
		"cold frame 120 x 80 cm":                "f1 Frame 1.2x0.8 under cold frame",
		"wall border 9 x 0.8\nherb bed 2 by 1":  "w1 Wall border 9x0.8; b1 Herb bed 2x1",
		"4 x 8 ft bed":                          "b1 Bed 1 2.44x1.22",
		"Bed of roses 3 x 1":                    "b1 Roses 3x1",
		"3 x 1":                                 "b1 Bed 1 3x1",
		"1 bed 3 x 1, 2 beds 4 x 1":             "b1 Bed 1 3x1; b2 Bed 2 4x1; b3 Bed 3 4x1",
		"11 beds":                               "notebook.bed_size",
		"5000 beds 1 x 1":                       "notebook.bed_count",
		"bed 6 x 0":                             "notebook.bed_size_limits",
		"bed 6000 x 1":                          "notebook.bed_size_limits",
		"a lawn, bed 2 x 1":                     "b1 Bed 1 2x1; notebook.bed_size",
		"":                                      "",
	} {
		if got := ground(text); got != want {
			t.Errorf("%q\n is   %s\n want %s", text, got, want)
		}
	}
}

func FuzzReadBeds(f *testing.F) {
	for _, s := range []string{"11 beds 6 x 1.2, tunnel 6 x 4", "x x x", "1 x", "½ x ½ m", "two two two 1 x 1", "cm m ft 3", "'\xff' 1 x 1", "glasshouses 1 x 1 and and"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		beds, covers, faults := ReadBeds(text)
		ids := map[string]place.Bed{}
		for _, b := range beds {
			if _, twice := ids[b.ID]; twice || b.Name == "" || b.LengthM < b.WidthM || b.WidthM < leastSideM || b.LengthM > mostSideM {
				t.Fatalf("%q: %+v", text, b)
			}
			ids[b.ID] = b
		}
		for _, c := range covers {
			if _, known := ids[c.Bed]; !known {
				t.Fatalf("%q: a cover over no bed %+v", text, c)
			}
		}
		for _, f := range faults {
			if !words.English().Has(f.Phrase.Key) {
				t.Fatalf("no text for %s", f.Phrase.Key)
			}
		}
		if len(beds) > mostBeds {
			t.Fatalf("%d beds", len(beds))
		}
	})
}
