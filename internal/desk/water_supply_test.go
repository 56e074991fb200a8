package desk

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/record"
)

// inSummer is the demo in the middle of July, with some waterings recorded.
func inSummer(t testing.TB) *holding.Holding {
	h := sampleHolding(t)
	h.Today = cal.Of(2027, 7, 12)
	h.Records = append(h.Records, record.Record{ID: "w1", Date: cal.Of(2027, 6, 20), What: record.Watered, Bed: "t1", Value: 60, Unit: "L"},
		record.Record{ID: "w2", Date: cal.Of(2027, 7, 2), What: record.Fed, Bed: "t1", Value: 20, Unit: "L"})
	return h
}

// Twelve months behind as they are recorded, a year ahead by site and in all; beds and
// sites add up to all, but for the rounding of each to a litre.
func TestWaterByMonth(t *testing.T) {
	u, err := WaterByMonth(inSummer(t), 1)
	if err != nil {
		t.Fatal(err)
	}
	if len(u.Sites) != 2 || len(u.All.Given) != 12 || u.All.Given[0].Month != cal.Of(2026, 8, 1) || u.All.Given[11].Month != cal.Of(2027, 7, 1) {
		t.Fatalf("%+v", u.All)
	}
	last := u.All.Given[10:]
	if last[0].L < 60 || last[1].L < 20 || u.Sites[1].GivenL < 80 {
		t.Errorf("given %+v, on the share %v", last, u.Sites[1].GivenL)
	}
	if len(u.All.ToCome) != 13 || u.All.ToCome[0].Month != cal.Of(2027, 7, 1) || u.All.ToCome[12].Month != cal.Of(2028, 7, 1) {
		t.Errorf("%d months to come: %+v", len(u.All.ToCome), u.All.ToCome)
	}
	sum, months := 0.0, 0.0
	for _, b := range u.Beds {
		sum += b.YearL
	}
	for i, m := range u.All.ToCome {
		months += m.L
		if sites := u.Sites[0].ToCome[i].L + u.Sites[1].ToCome[i].L; math.Abs(sites-m.L) > 1.5 || m.DryL < m.L {
			t.Errorf("%v: %v L on both sites, %+v in all", m.Month, sites, m)
		}
	}
	if math.Abs(months-u.All.YearL) > 7 || math.Abs(sum-u.All.YearL) > 0.5*float64(len(u.Beds)+1) || u.All.YearDryL < u.All.YearL {
		t.Errorf("%.0f L of all beds, %.0f of all together, %.0f if dry", sum, u.All.YearL, u.All.YearDryL)
	}
	o := NewOffice(newShelf(inSummer(t)))
	first, err := o.WaterUse()
	if err != nil || first.All.YearL != u.All.YearL {
		t.Errorf("the page tells %v, the prompt %v (%v)", first, u.All.YearL, err)
	}
}

// A larger butt and a larger roof never serve less; the beds that hang on it are those
// that say so.
func TestButtOfTheDemo(t *testing.T) {
	o := NewOffice(newShelf(sampleHolding(t)))
	v, err := o.ButtView(ButtOptions{Source: "shed-butt"})
	if err != nil {
		t.Fatal(err)
	}
	if len(v.Beds) != 8 || v.AllBeds || v.Own == nil || v.Own.HoldsL != 300 || math.Abs(v.PerMM-18*0.8*0.9) > 1e-9 {
		t.Errorf("%+v", v)
	}
	for i, p := range v.Sizes {
		if p.ShareDry > p.Share+1e-9 || p.Share < 0 || p.Share > 1 || i > 0 && p.Share < v.Sizes[i-1].Share-1e-9 {
			t.Errorf("%+v after %+v", p, v.Sizes[max(0, i-1)])
		}
	}
	if v.EnoughL <= 0 || v.ShedL < 5000 || v.ShedL > 20000 {
		t.Errorf("enough are %v L, the roof brings %v", v.EnoughL, v.ShedL)
	}
	wide, err := o.ButtView(ButtOptions{Source: "shed-butt", RoofM2: 60, Covering: "metal"})
	if err != nil || wide.Own.Share < v.Own.Share || wide.ShedL <= v.ShedL {
		t.Errorf("%+v, %v", wide.Own, err)
	}
	tried, err := o.ButtView(ButtOptions{Site: "share", RoofM2: 10, HoldsL: 200})
	if err != nil || tried.Site != "share" {
		t.Errorf("%+v, %v", tried, err)
	}
	for _, ask := range []ButtOptions{{Source: "nothing"}, {Site: "nowhere", RoofM2: 3}, {Source: "shed-butt", Covering: "thatch"}} {
		if _, err := o.ButtView(ask); fault.KindOf(err) == fault.Internal {
			t.Errorf("%+v: %v", ask, err)
		}
	}
}

// Without sources the beds of the whole site hang on what is tried, and without a
// roof nothing is served.
func TestButtOfNobody(t *testing.T) {
	h := sampleHolding(t)
	h.Sources = nil
	v, err := Butt(h, ButtOptions{})
	if err != nil || !v.AllBeds || v.Own != nil || v.EnoughL != 0 {
		t.Errorf("%+v, %v", v, err)
	}
	if v.AskedL > 0 && v.Sizes[0].Share != 0 {
		t.Errorf("no roof serves %v", v.Sizes[0].Share)
	}
}

// The litres shared out are those that are left; what is worth most a can comes first;
// days and litres that cannot be are refused.
func TestWaterIsShort(t *testing.T) {
	h := inSummer(t)
	o := NewOffice(newShelf(h))
	v, err := o.WaterShort(ShortOptions{Site: "share", LeftL: 200, Days: 10})
	if err != nil {
		t.Fatal(err)
	}
	sum, before := 0.0, math.Inf(1)
	for _, w := range v.Turns {
		sum += w.GetL
		if w.PerCan > before+0.11 {
			t.Errorf("%s saves %v a can after one that saves %v", w.Name, w.PerCan, before)
		}
		before = w.PerCan
		if w.GetL > 0 && (w.What == "" || w.Stage == "") {
			t.Errorf("%+v", w)
		}
	}
	if math.Abs(sum+v.SpareL-200) > 3 || !v.Told || len(v.Turns) == 0 {
		t.Errorf("%.0f L shared out, %.0f to spare", sum, v.SpareL)
	}
	again, err := o.WaterShort(ShortOptions{Site: "share", LeftL: 200, Days: 10})
	if err != nil || again != v {
		t.Errorf("asked again it is worked out again (%v)", err)
	}
	for _, ask := range []ShortOptions{{Site: "moon"}, {Days: 99}, {LeftL: 1e9}} {
		if _, err := o.WaterShort(ask); fault.KindOf(err) == fault.Internal || err == nil {
			t.Errorf("%+v: %v", ask, err)
		}
	}
}

// A tap that is shut gives nothing; one that is open and without limit means that nothing
// is short until litres are told; what gives so much a week gives it for the days.
func TestWhatSourcesGive(t *testing.T) {
	h := sampleHolding(t) // 4 January: the yard tap is shut
	v := &ShortView{Today: h.Today, Site: "home", Days: 14}
	v.sources(h)
	if v.Endless || v.LeftL != 300 || len(v.Sources) != 2 || !v.Sources[0].Shut || *v.Sources[0].L != 0 {
		t.Errorf("in January: %+v", v)
	}
	v = &ShortView{Today: cal.Of(2027, 7, 1), Site: "home", Days: 14}
	if v.sources(h); !v.Endless || v.Sources[0].L != nil {
		t.Errorf("in July: %+v", v)
	}
	h.Sources = []place.WaterSource{{ID: "dyke", Site: "home", Kind: place.Well, LPerWeek: 70}}
	v = &ShortView{Today: cal.Of(2027, 7, 1), Site: "home", Days: 14}
	if v.sources(h); v.Endless || v.LeftL != 140 {
		t.Errorf("a dyke: %+v", v)
	}
}

// The feed goes by the label: ml to a can at full strength, half of it for leaves; and
// what is due is summed.
func TestFeeding(t *testing.T) {
	h := inSummer(t)
	v, err := Feeding(h, 1)
	if err != nil || !v.Wanted || v.MLPerL != 4 || len(v.Turns) == 0 {
		t.Fatalf("%+v, %v", v, err)
	}
	due := 0.0
	for _, f := range v.Turns {
		want := 4 * v.CanL
		if f.Half {
			want /= 2
		}
		if math.Abs(f.MLPerCan-want) > 0.06 || f.Due < v.Today {
			t.Errorf("%+v", f)
		}
		if f.Due == v.Today {
			due += f.Litres
		}
		if f.Bed == "t1" && (f.Last == nil || *f.Last != cal.Of(2027, 7, 2)) {
			t.Errorf("fed on 2 July: %+v", f)
		}
	}
	if math.Abs(due-v.DueNowL) > 2 {
		t.Errorf("%v L due, told %v", due, v.DueNowL)
	}
	h.FeedMLL = 0
	if none, err := Feeding(h, 1); err != nil || none.Wanted || none.DueML != 0 {
		t.Errorf("%+v, %v", none, err)
	}
}

// Dry feed goes by the square metre, at the strength of the planting; both feeds may be
// told, and one alone is enough for feed to be wanted.
func TestDryFeeding(t *testing.T) {
	h := inSummer(t)
	h.FeedGM2, h.FeedMLL = 70, 0
	v, err := Feeding(h, 1)
	if err != nil || !v.Wanted || v.Liquid || !v.Dry || len(v.Turns) == 0 {
		t.Fatalf("%+v, %v", v, err)
	}
	due := 0.0
	for _, f := range v.Turns {
		want := 70 * f.M2
		if f.Half {
			want /= 2
		}
		if math.Abs(f.DryG-want) > 0.05*70+2.5 || f.ML != 0 || f.DryEvery <= f.EveryD {
			t.Errorf("%v g wanted: %+v", want, f)
		}
		if f.Due == v.Today {
			due += f.DryG
		}
	}
	if due == 0 || due != v.DueG {
		t.Errorf("%v g due, told %v", due, v.DueG)
	}
}
