package desk

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/space"
)

func spaceOf(t testing.TB, o *Office, q SpaceQuery, try ...plan.Change) *SpaceView {
	t.Helper()
	v, err := o.SpaceView(q, try)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The demo's beds hold what is planned for them in every year.
func TestTheDemoFitsItsBeds(t *testing.T) {
	for _, name := range []string{"", "south"} {
		h, err := Sample(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range spaceOf(t, NewOffice(newShelf(h)), SpaceQuery{}).Wrong {
			t.Errorf("%s: %s %s %v from %s", h.Name, w.Bed, w.Wrong, w.Plantings, w.From)
		}
	}
}

// On a day, what is held, what is turned round and what is free make up the demo's
// beds.
func TestTheDemosGroundIsWhole(t *testing.T) {
	o := demoOffice(t)
	day := cal.Of(2027, 7, 10)
	for _, b := range spaceOf(t, o, SpaceQuery{}).Beds {
		free := 0.0
		for _, f := range spaceOf(t, o, SpaceQuery{Bed: b.ID, From: day, Until: day + 1}).Free {
			free += f.AreaM2
		}
		held, turning := 0.0, 0.0
		for _, h := range b.Holds {
			switch {
			case h.From > day || h.Guest:
			case !h.Clear.P50.IsSet() || h.Clear.P50 > day:
				held += h.AreaM2
			case h.Clear.P50+cal.Date(b.TurnRoundD) > day:
				turning += h.AreaM2 // or put to use before its turn-round is over
			}
		}
		if want := b.AreaM2(); free+held > want+1e-6 || free+held+turning < want-1e-6 {
			t.Errorf("%s: %v m2 free, %v held and %v turned round, of %v", b.ID, free, held, turning, want)
		}
	}
}

// A planting tried where another stands is told, and kept tries and the holding as
// it stands are told apart.
func TestTriedPlantingThatDoesNotFit(t *testing.T) {
	o := demoOffice(t)
	early := plan.Change{Action: "set", Planting: "pot-27a", Field: "date", Value: "2027-02-22"}
	v := spaceOf(t, o, SpaceQuery{Bed: "h3"}, early)
	if len(v.Wrong) != 1 || v.Wrong[0].Planting != "pot-27a" || v.Wrong[0].Wrong != space.TooEarly {
		t.Fatalf("%+v", v.Wrong)
	}
	if v.Wrong[0].Says.Key != "desk.wrong_early" || v.Wrong[0].Odds < 0.5 {
		t.Errorf("told as %+v", v.Wrong[0])
	}
	if got := spaceOf(t, o, SpaceQuery{Bed: "h3"}).Wrong; len(got) != 0 {
		t.Errorf("as it stands: %+v", got)
	}
	wrong, err := o.Misfits([]string{"pot-27a"}, nil, []plan.Change{early})
	if err != nil || len(wrong) != 1 {
		t.Errorf("of the planting: %v, %v", wrong, err)
	}
	if wrong, err := o.Misfits([]string{"let-27b"}, nil, []plan.Change{early}); err != nil || len(wrong) != 0 {
		t.Errorf("of another planting: %v, %v", wrong, err)
	}
	if _, err := o.SpaceView(SpaceQuery{Bed: "nowhere"}, nil); err == nil {
		t.Error("a bed that is not there was found")
	}
}

// Free ground of the prompt and of the pages is the same.
func TestFreeGroundOfPromptAndPages(t *testing.T) {
	from, until := cal.Of(2027, 6, 1), cal.Of(2027, 7, 1)
	r, err := FreeGround(sampleHolding(t), FreeOptions{From: from, Until: until})
	if err != nil {
		t.Fatal(err)
	}
	v := spaceOf(t, demoOffice(t), SpaceQuery{From: from, Until: until})
	if len(r.Free) == 0 || len(r.Free) != len(v.Free) {
		t.Fatalf("%d pieces at the prompt, %d on the page", len(r.Free), len(v.Free))
	}
	for i, f := range r.Free {
		if g := v.Free[i]; f.Bed != g.Bed || f.From != g.From.P50 || math.Abs(f.AreaM2-g.AreaM2) > 1e-4 {
			t.Errorf("%+v at the prompt, %+v on the page", f, g.Gap)
		}
		if f.From < from || f.From >= until || f.Until <= f.From {
			t.Errorf("%s: from %s until %s is not in the period", f.Bed, f.From, f.Until)
		}
	}
	far := cal.Of(2029, 12, 1)
	if r, err = FreeGround(sampleHolding(t), FreeOptions{Bed: "Home 4", Until: far}); err != nil || r.Until != far {
		t.Errorf("a period past the usual table ends on %v, %v", r, err)
	}
}

// BenchmarkSpaceView times the ground of the demo after one planting was tried on
// another day: one bed's futures and the layout of all.
func BenchmarkSpaceView(b *testing.B) {
	o := demoOffice(b)
	spaceOf(b, o, SpaceQuery{})
	day := cal.Of(2027, 3, 25)
	for b.Loop() {
		day++
		spaceOf(b, o, SpaceQuery{}, plan.Change{Action: "set", Planting: "pot-27a", Field: "date", Value: day.String()})
	}
}

// BenchmarkSpaceLayout times the layout alone, with the table at hand.
func BenchmarkSpaceLayout(b *testing.B) {
	o := demoOffice(b)
	a, err := o.ask(nil)
	if err != nil {
		b.Fatal(err)
	}
	t, err := o.table(a)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		g, err := space.Of(t, a.holding, a.setting.Book, a.setting.Today)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := spaceView(a, g, SpaceQuery{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Several plantings are named by what they are, each name once.
func TestSeveralNameEachOnce(t *testing.T) {
	a, err := demoOffice(t).ask(nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := newNamer(a).several([]string{"fbd-27a", "run-27", "fbd-27b"}); len(got) != 2 {
		t.Errorf("dwarf beans, runner beans and dwarf beans again are called %q", got)
	}
}
