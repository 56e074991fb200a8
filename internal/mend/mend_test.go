package mend_test

import (
	"math"
	"slices"
	"testing"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/demotest"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/mend"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/space"
)

// quick is a number of futures for tests that weigh much.
const quick = 12

func demo(t testing.TB) *holding.Holding { return demotest.Holding(t, "") }

func mender(t testing.TB, h *holding.Holding, years int, memory *outlook.Memory) *mend.Mender {
	t.Helper()
	s := demotest.Setting(t, h, years)
	a, err := advise.New(s, memory)
	if err != nil {
		t.Fatal(err)
	}
	return mend.New(a, h, s.Book)
}

// short is the expected shortage by week of every vegetable of a full table with an
// edit made [kg].
func short(t testing.TB, h *holding.Holding, e outlook.Edit, memory *outlook.Memory) map[string]outlook.Weekly {
	t.Helper()
	own := edited(h, e)
	table, err := outlook.Compute(demotest.Setting(t, own, quick), memory)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]outlook.Weekly{}
	for _, w := range table.Summarise(false).Vegetables {
		out[w.Name] = w
	}
	return out
}

// edited is a holding with an edit made.
func edited(h *holding.Holding, e outlook.Edit) *holding.Holding {
	own := *h
	own.Covers = slices.Concat(h.Covers, e.Covers)
	own.GapsLeft = slices.Concat(h.GapsLeft, e.Left)
	own.Purchases = slices.Concat(h.Purchases, e.Buys)
	own.Plantings = slices.DeleteFunc(slices.Clone(h.Plantings), func(p plan.Planting) bool { return slices.Contains(e.Remove, p.ID) })
	for _, p := range e.Set {
		if at := slices.IndexFunc(own.Plantings, func(o plan.Planting) bool { return o.ID == p.ID }); at >= 0 {
			own.Plantings[at] = p
			continue
		}
		own.Plantings = append(own.Plantings, p)
	}
	return &own
}

func total(table map[string]outlook.Weekly) (kg float64) {
	for _, w := range table {
		for _, week := range w.Short {
			kg += week
		}
	}
	return kg
}

// within a hundredth, or what seven figures of two whole tables leave open.
func same(a, b float64) bool { return math.Abs(a-b) <= 0.01*math.Abs(b)+1e-4 }

// halved takes half its ground from a planting.
func halved(t *testing.T, h *holding.Holding, id string) {
	t.Helper()
	at := slices.IndexFunc(h.Plantings, func(p plan.Planting) bool { return p.ID == id })
	if at < 0 {
		t.Fatal("no planting ", id)
	}
	h.Plantings[at].AreaM2 /= 2
}

// Every worth told of every kind of proposal equals the difference of two full
// tables within 1 %: in the gap and over the whole table, with the weeks mended
// and the chance left.
func TestWorthIsTheDifferenceOfTwoTables(t *testing.T) {
	h := demo(t)
	halved(t, h, "lee-27") // so that there is room beside a sowing to come
	memory := outlook.NewMemory()
	m := mender(t, h, quick, memory)
	before := short(t, h, outlook.Edit{}, memory)
	seen := map[mend.Kind]int{}
	for _, vegetable := range []string{"carrot", "leek", "onion", "potato", "lettuce"} {
		r, err := m.Mend(mend.Question{Vegetable: vegetable})
		if err != nil {
			t.Fatal(err)
		}
		if r.At < 0 {
			continue
		}
		gap := &r.Gaps[r.At]
		for i := range r.Proposals {
			p := &r.Proposals[i]
			t.Logf("%s %v-%v %.1f kg: %s %s %s %v %.1f m2: gap %.2f drop %.2f weeks %d chance %.2f->%.2f odds %.2f takes %+v", vegetable, gap.First, gap.Last, gap.ShortKg, p.Kind, p.Planting.ID, p.Planting.Bed, p.Planting.Date, p.Planting.AreaM2, p.GapKg, p.DropKg, p.Weeks, p.Short, p.Left, p.Odds, p.Takes)
			if seen[p.Kind]++; seen[p.Kind] > 3 {
				continue
			}
			after := short(t, h, p.Edit, memory)
			if full := total(before) - total(after); !same(p.DropKg, full) {
				t.Errorf("%s for %s is told to be worth %.4f kg; two tables differ by %.4f", p.Kind, vegetable, p.DropKg, full)
			}
			inGap, bought, left, weeks := 0.0, 0.0, 0.0, 0
			for k := gap.From; k < gap.From+gap.Weeks; k++ {
				is := after[vegetable]
				inGap += before[vegetable].Short[k] - is.Short[k]
				if p.Kind == mend.Buy {
					bought += is.Bought[k]
				}
				left += is.GapChance[k] / float64(gap.Weeks)
				if !outlook.LikelyShort(&is, k) {
					weeks++
				}
			}
			if !same(p.Takes.BoughtKg, bought) {
				t.Errorf("%s for %s: %.4f kg are told to be bought in the gap, the table buys %.4f", p.Kind, vegetable, p.Takes.BoughtKg, bought)
			}
			if !same(p.GapKg, inGap) || weeks != p.Weeks || math.Abs(left-p.Left) > 1e-9 {
				t.Errorf("%s for %s: told %.4f kg, %d weeks, chance %.3f; the table has %.4f, %d, %.3f", p.Kind, vegetable, p.GapKg, p.Weeks, p.Left, inGap, weeks, left)
			}
		}
	}
	for _, kind := range []mend.Kind{mend.Sow, mend.Cover, mend.Store, mend.Enlarge, mend.Shift, mend.Buy, mend.Leave} {
		if seen[kind] == 0 {
			t.Errorf("no proposal of kind %s", kind)
		}
	}
}

// What would mend the gap of a group feeds any of its members, and is worth what two
// full tables differ by, in the group's row and in all.
func TestAGroupsGapIsMended(t *testing.T) {
	h := demo(t)
	h.Groups = []larder.Group{{ID: "winter", Name: "winter greens"}}
	h.Members = []larder.Membership{{ID: "m1", Group: "winter", Member: larder.Member{Vegetable: "leek", Preference: 1}},
		{ID: "m2", Group: "winter", Member: larder.Member{Vegetable: "kale", Preference: 2}}}
	h.Wants = append(h.Wants, larder.Want{ID: "w-winter", Group: "winter", KgPerWeek: 0.6})
	memory := outlook.NewMemory()
	r, err := mender(t, h, quick, memory).Mend(mend.Question{Vegetable: "winter greens", Group: "winter", Feeds: []string{"leek", "kale"}})
	if err != nil || r.At < 0 {
		t.Fatal(r, err)
	}
	gap, before := &r.Gaps[r.At], short(t, h, outlook.Edit{}, memory)
	seen := map[mend.Kind]bool{}
	for i := range r.Proposals {
		p := &r.Proposals[i]
		if p.Kind == mend.Sow && p.Planting.Crop != "leek" && p.Planting.Crop != "kale" {
			t.Errorf("sown for the group: %s", p.Planting.Crop)
		}
		if seen[p.Kind] {
			continue
		}
		seen[p.Kind] = true
		after := short(t, h, p.Edit, memory)
		if full := total(before) - total(after); !same(p.DropKg, full) {
			t.Errorf("%s is told to be worth %.4f kg; two tables differ by %.4f", p.Kind, p.DropKg, full)
		}
		inGap := 0.0
		for k := gap.From; k < gap.From+gap.Weeks; k++ {
			inGap += before["winter greens"].Short[k] - after["winter greens"].Short[k]
		}
		if !same(p.GapKg, inGap) {
			t.Errorf("%s: told %.4f kg in the gap, the table has %.4f", p.Kind, p.GapKg, inGap)
		}
	}
	for _, kind := range []mend.Kind{mend.Sow, mend.Buy, mend.Leave} {
		if !seen[kind] {
			t.Errorf("no proposal of kind %s", kind)
		}
	}
	if left := r.Proposals[len(r.Proposals)-1]; left.Span.Group != "winter" || left.Span.Vegetable != "" || left.GapKg < 0.99*gap.ShortKg {
		t.Errorf("leaving it: %+v of %.3f kg", left.Span, gap.ShortKg)
	}
}

// What a trim is told to save and to cost, and what the ground gives instead, are
// differences of two full tables.
func TestTrimsAreDifferencesOfTwoTables(t *testing.T) {
	h := demo(t)
	memory := outlook.NewMemory()
	m := mender(t, h, quick, memory)
	before := short(t, h, outlook.Edit{}, memory)
	told, followed := 0, 0
	for _, vegetable := range []string{"courgette", "potato", "cabbage", "tomato", "broad bean"} {
		g, err := m.Trim(mend.Question{Vegetable: vegetable})
		if err != nil {
			t.Fatal(err)
		}
		for i := range g.Trims {
			trim := &g.Trims[i]
			t.Logf("%s over %.1f: %s %.1f -> %.1f over -%.2f loss %.2f", vegetable, g.OverKg, trim.Planting.ID, trim.Planting.AreaM2, trim.AreaM2, trim.OverKg, trim.LossKg)
			told++
			after := short(t, h, trim.Edit, memory)
			if full := total(after) - total(before); !same(trim.LossKg, max(0, full)) {
				t.Errorf("%s of %s is told to cost %.4f kg; two tables differ by %.4f", trim.Planting.ID, vegetable, trim.LossKg, full)
			}
			over := 0.0
			for k := range after[vegetable].Over {
				over += before[vegetable].Over[k] - after[vegetable].Over[k]
			}
			if !same(trim.OverKg, over) {
				t.Errorf("%s of %s is told to save %.4f kg; two tables differ by %.4f", trim.Planting.ID, vegetable, trim.OverKg, over)
			}
			if trim.Next == nil {
				continue
			}
			t.Logf("   instead %s %v %.2f m2 %.2f kg", trim.Next.Planting.ID, trim.Next.Planting.Date, trim.Next.Planting.AreaM2, trim.Next.DropKg)
			followed++
			both := trim.Edit
			both.Set = append(slices.Clone(both.Set), trim.Next.Planting)
			if full := total(after) - total(short(t, h, both, memory)); !same(trim.Next.DropKg, full) {
				t.Errorf("%s instead of %s is told to be worth %.4f kg; two tables differ by %.4f", trim.Next.Planting.ID, trim.Planting.ID, trim.Next.DropKg, full)
			}
		}
	}
	if told < 3 || followed < 2 {
		t.Errorf("only %d trims and %d crops instead", told, followed)
	}
}

// Where no bed can help and nothing is grown, what remains is told and nothing fails;
// a table without a gap has no proposals; a vegetable that is not there is refused.
func TestWhatCannotBeMended(t *testing.T) {
	h := demo(t)
	h.Wants = []larder.Want{{ID: "w", Vegetable: "leek", KgPerWeek: 1}, {ID: "none", Vegetable: "onion"}}
	h.Beds, h.Plantings, h.Covers, h.Changes, h.Records, h.Batches, h.Stores = nil, nil, nil, nil, nil, nil, nil
	m := mender(t, h, 2, outlook.NewMemory())
	r, err := m.Mend(mend.Question{Vegetable: "leek"})
	if err != nil || r.At != 0 || len(r.Proposals) != 2 || r.Proposals[0].Kind != mend.Buy || r.Proposals[1].Kind != mend.Leave {
		t.Errorf("%+v, %v", r, err)
	}
	if bought := r.Proposals[0].Takes.BoughtKg; !same(bought, 78) {
		t.Errorf("%.2f kg of 78 are to be bought", bought)
	}
	if r, err := m.Mend(mend.Question{Vegetable: "onion"}); err != nil || r.At >= 0 || len(r.Proposals) != 0 {
		t.Errorf("%+v, %v", r, err)
	}
	if g, err := m.Trim(mend.Question{Vegetable: "leek"}); err != nil || len(g.Trims) != 0 {
		t.Errorf("%+v, %v", g, err)
	}
	for _, ask := range []func() error{
		func() error { _, err := m.Mend(mend.Question{Vegetable: "melon"}); return err },
		func() error { _, err := m.Trim(mend.Question{Vegetable: "melon"}); return err },
	} {
		if err := ask(); fault.KindOf(err) != fault.NotFound {
			t.Error(err)
		}
	}
}

// Asked for a day, the gap that day or the next one is answered.
func TestTheGapOfADay(t *testing.T) {
	h := demo(t)
	m := mender(t, h, quick, outlook.NewMemory())
	all, err := m.Mend(mend.Question{Vegetable: "leek"})
	if err != nil || len(all.Gaps) < 2 {
		t.Fatal(all, err)
	}
	for i, g := range all.Gaps {
		for _, on := range []cal.Date{g.First, g.Last} {
			if r, err := m.Mend(mend.Question{Vegetable: "leek", On: on}); err != nil || r.At != i {
				t.Errorf("%v: gap %d of %d, want %d (%v)", on, r.At, len(r.Gaps), i, err)
			}
		}
	}
	if r, err := m.Mend(mend.Question{Vegetable: "leek", On: cal.Of(2031, 1, 1)}); err != nil || r.At >= 0 {
		t.Errorf("after all gaps: %+v, %v", r, err)
	}
	for i := 1; i < len(all.Gaps); i++ {
		if all.Gaps[i].ShortKg > all.Gaps[all.At].ShortKg {
			t.Error("without a day it is not the heaviest")
		}
	}
}

// What is proposed leaves the rest of the plan its ground, lies ahead, and lies clear
// of the covers that are there.
func TestProposalsFitThePlan(t *testing.T) {
	h := demo(t)
	halved(t, h, "lee-27")
	s, memory := demotest.Setting(t, h, quick), outlook.NewMemory()
	for _, vegetable := range []string{"leek", "lettuce", "potato"} {
		r, err := mender(t, h, quick, memory).Mend(mend.Question{Vegetable: vegetable})
		if err != nil {
			t.Fatal(err)
		}
		stands := overlaps(t, s, h, memory)
		for i := range r.Proposals {
			p := &r.Proposals[i]
			for _, set := range p.Edit.Set {
				if (p.Kind == mend.Sow || p.Kind == mend.Shift) && set.Date < h.Today {
					t.Errorf("%s: %s on %v, today is %v", vegetable, p.Kind, set.Date, h.Today)
				}
			}
			if len(p.Edit.Set) > 0 {
				if more := overlaps(t, s, edited(h, p.Edit), memory); more > stands {
					t.Errorf("%s: %s of %s in %s lies on what others hold", vegetable, p.Kind, p.Planting.ID, p.Planting.Bed)
				}
			}
			for _, c := range p.Edit.Covers {
				var lying []cover.Spell
				for _, o := range place.CoversOf(edited(h, p.Edit).Covers, c.Bed) {
					lying = append(lying, o.Spell)
				}
				if wrong := cover.Check(lying); wrong != nil {
					t.Errorf("%s: %v", vegetable, wrong)
				}
			}
		}
	}
}

// overlaps counts what lies wrongly on the ground of a holding.
func overlaps(t *testing.T, s outlook.Setting, h *holding.Holding, memory *outlook.Memory) (n int) {
	t.Helper()
	s.Holding = h
	table, err := outlook.Compute(s, memory)
	if err != nil {
		t.Fatal(err)
	}
	g, err := space.Of(table, h, s.Book, s.Today)
	if err != nil {
		t.Fatal(err)
	}
	for i := range g.Beds {
		for k := range g.Beds[i].Holds {
			if g.Beds[i].Holds[k].Over {
				n++
			}
		}
	}
	return n
}

func BenchmarkMend(b *testing.B) {
	h := demo(b)
	m := outlook.NewMemory()
	for b.Loop() {
		b.StopTimer()
		made := mender(b, h, 200, m)
		b.StartTimer()
		r, err := made.Mend(mend.Question{Vegetable: "leek"})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(r.Looked), "weighed")
	}
}
