package soilcare_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/soilcare"
)

func bare(t testing.TB, from, until cal.Date, south bool) []soilcare.Offer {
	t.Helper()
	offers, err := soilcare.Bare(book(t), from, until, south)
	if err != nil {
		t.Fatal(err)
	}
	return offers
}

func crops(offers []soilcare.Offer) []string {
	var out []string
	for _, o := range offers {
		out = append(out, o.Kind+o.Crop)
	}
	return out
}

// Over winter rye, vetch and beans stand; in late October only the hardiest can
// still be sown (common practice, no source); in a gap of four weeks nothing
// grows.
func TestWhatCoversBareGround(t *testing.T) {
	winter := crops(bare(t, cal.Of(2026, 9, 10), cal.Of(2027, 5, 1), false))
	for _, want := range []string{"green manurewinter-rye", "green manurevetch", "green manurephacelia", "mulch", "sheet"} {
		if !slices.Contains(winter, want) {
			t.Errorf("from September to May no %s: %v", want, winter)
		}
	}
	late := crops(bare(t, cal.Of(2026, 10, 25), cal.Of(2027, 5, 1), false))
	if !slices.Contains(late, "green manurewinter-rye") || slices.Contains(late, "green manurephacelia") {
		t.Errorf("from late October: %v", late)
	}
	if got := crops(bare(t, cal.Of(2026, 6, 1), cal.Of(2026, 6, 29), false)); !slices.Equal(got, []string{"mulch"}) {
		t.Errorf("four weeks in June: %v", got)
	}
	south := crops(bare(t, cal.Of(2027, 3, 12), cal.Of(2027, 11, 1), true))
	if !slices.Contains(south, "green manurewinter-rye") {
		t.Errorf("a southern winter: %v", south)
	}
}

func TestGroundThatIsNotWantedYetHasNoLastDays(t *testing.T) {
	offers := bare(t, cal.Of(2027, 1, 4), cal.None, false)
	if offers[0].Crop != "white-mustard" || offers[0].Start != cal.Of(2027, 3, 1) || offers[0].OffBy.IsSet() {
		t.Errorf("the first that can be sown: %+v", offers[0])
	}
	if got := crops(offers[len(offers)-2:]); !slices.Equal(got, []string{"mulch", "sheet"}) {
		t.Errorf("%v", got)
	}
}

// Two to three weeks between turning in and sowing (two seed sellers), and six
// weeks to stand.
func TestOffersFitTheirGap(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		from := cal.Of(2026, 1, 1) + cal.Date(rapid.IntRange(0, 800).Draw(r, "from"))
		until := from + cal.Date(rapid.IntRange(0, 500).Draw(r, "days"))
		south := rapid.Bool().Draw(r, "south")
		offers := bare(t, from, until, south)
		for _, o := range offers {
			if o.Start < from || o.Last < o.Start || o.Last > until {
				r.Fatalf("%s to %s: %+v", from, until, o)
			}
			if o.Kind == soilcare.GreenManure && (until-o.OffBy < 14 || o.OffBy-o.Last < 42) {
				r.Fatalf("%s to %s, no weeks for it: %+v", from, until, o)
			}
		}
		longer := bare(t, from, until+cal.Date(rapid.IntRange(1, 200).Draw(r, "more")), south)
		for _, o := range crops(offers) {
			if !slices.Contains(crops(longer), o) {
				r.Fatalf("a longer gap loses %s", o)
			}
		}
	})
}

// 3 to 7 days, and longer for a stale seedbed (common practice, no source).
func TestTurnRound(t *testing.T) {
	for _, w := range []struct {
		own   int
		stale bool
		low   int
		high  int
	}{{0, false, 3, 7}, {10, false, 10, 10}, {0, true, 14, 60}, {21, true, 21, 21}} {
		got, err := soilcare.TurnRound(place.Bed{TurnRoundD: w.own}, w.stale)
		if err != nil || got < w.low || got > w.high {
			t.Errorf("own %d, stale %v: %d (%v)", w.own, w.stale, got, err)
		}
	}
}
