package desk

import (
	"fmt"
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/record"
)

func groundOf(t testing.TB, o *Office, site string, try ...plan.Change) *GroundYearView {
	t.Helper()
	v, err := o.GroundYearView(site, try)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func (v *GroundYearView) bedOf(t testing.TB, planting string) (*BedYear, *HeldGround) {
	t.Helper()
	for _, b := range v.Beds {
		for i := range b.Held {
			if b.Held[i].ID == planting {
				return b, &b.Held[i]
			}
		}
	}
	t.Fatalf("%s stands nowhere", planting)
	return nil, nil
}

// On every day the parts of a bed make up the whole of it and do not overlap,
// unless what overlaps is told.
func TestPartsMakeUpTheBed(t *testing.T) {
	o := demoOffice(t)
	for _, site := range []string{"home", "share"} {
		v := groundOf(t, o, site)
		for _, b := range v.Beds {
			for day := v.From; day < v.From+cal.Date(7*v.Weeks); day += 9 {
				sum := 0.0
				for _, p := range b.On(day) {
					sum += p.Share
				}
				if (sum < 0.95 || sum > 1.01) && len(b.Wrong) == 0 {
					t.Errorf("%s on %s: parts add up to %.3f", b.ID, day, sum)
				}
			}
		}
	}
}

// A tried change shows in the beds it touches and in the figures; the view before
// it is the one without, and beds it does not touch are the same.
func TestGroundAnswersATry(t *testing.T) {
	o := demoOffice(t)
	was := groundOf(t, o, "share")
	v := groundOf(t, o, "share", plan.Change{Action: "set", Planting: "pot-27m", Field: "date", Value: "2027-06-22"})
	_, moved := v.bedOf(t, "pot-27m")
	if moved.Date != cal.Of(2027, 6, 22) || v.Figures.Share >= was.Figures.Share {
		t.Errorf("potatoes two months late: in on %s, home-grown %.4f after %.4f", moved.Date, v.Figures.Share, was.Figures.Share)
	}
	if v.Before.Figures.Share != was.Figures.Share {
		t.Error("the view before a try is not the one without")
	}
	for i, b := range v.Beds {
		if b.ID != "s4" && len(b.Held) > 0 && &b.Held[0] != &v.Before.Beds[i].Held[0] {
			t.Errorf("%s was made anew", b.ID)
		}
	}
}

// A planting moved to another bed stands there, and where there is no room it is
// told.
func TestGroundTellsNoRoom(t *testing.T) {
	o := demoOffice(t)
	b, h := groundOf(t, o, "share", plan.Change{Action: "set", Planting: "pot-27m", Field: "bed", Value: "s5"}).bedOf(t, "pot-27m")
	if b.ID != "s5" || h.Bed != "s5" {
		t.Errorf("moved to %s", b.ID)
	}
	told := false
	for _, w := range b.Wrong {
		told = told || w.Planting == "pot-27m" && w.OverM2 > 0
	}
	if !told {
		t.Errorf("18 m2 of potatoes among asparagus, garlic and onions fit: %v", b.Wrong)
	}
}

// The share of a planting that was lost is free ground with a word of it, until
// something else stood there; what is left of it holds the rest.
func TestLostGroundIsReleasedWithAWord(t *testing.T) {
	h := *sampleHolding(t)
	lost := record.Record{ID: "lost", Date: cal.Of(2026, 12, 20), What: record.Died, Planting: "lee-26", Value: 0.5, Unit: record.ShareUnit}
	h.Records = append(append([]record.Record{}, h.Records...), lost)
	b, leeks := groundOf(t, NewOffice(newShelf(&h)), "home").bedOf(t, "lee-26")
	if leeks.AreaM2 != 5 || leeks.HoldsM2 != 2.5 {
		t.Errorf("half of 5 m2 of leeks hold %v of %v", leeks.HoldsM2, leeks.AreaM2)
	}
	released, free := 0.0, 0.0
	for _, f := range b.Free {
		if f.From == cal.Of(2027, 1, 4) {
			free += f.Share * b.AreaM2()
		}
		for _, name := range f.Lost {
			if name != "leeks" || f.From != cal.Of(2027, 1, 4) {
				t.Errorf("%s were lost before %v", name, f)
			}
			released += f.Share * b.AreaM2()
		}
	}
	if math.Abs(released-2.5) > 0.01 || math.Abs(free-(b.AreaM2()-2.5)) > 0.01 {
		t.Errorf("%.2f m2 were released and %.2f are free, want 2.5 and %.2f: %v", released, free, b.AreaM2()-2.5, b.Free)
	}
	for _, b := range groundOf(t, demoOffice(t), "home").Beds {
		for _, f := range b.Free {
			if len(f.Lost) > 0 {
				t.Errorf("nothing was lost in %s: %v", b.ID, f)
			}
		}
	}
}

// A site without a plan shows its beds in rows within it, none over another.
func TestBedsInRows(t *testing.T) {
	h := *sampleHolding(t)
	h.Sites = append(h.Sites[:0:0], h.Sites...)
	h.Sites[0].PlanWidthM, h.Sites[0].PlanDepthM = 0, 0
	v := groundOf(t, NewOffice(newShelf(&h)), "home")
	if v.Drawn || v.Site.PlanWidthM <= 0 {
		t.Fatalf("drawn %v, %v m wide", v.Drawn, v.Site.PlanWidthM)
	}
	for i, b := range v.Beds {
		if b.At.XM-b.LengthM/2 < 0 || b.At.XM+b.LengthM/2 > v.Site.PlanWidthM || b.At.YM-b.WidthM/2 < 0 || b.At.YM+b.WidthM/2 > v.Site.PlanDepthM {
			t.Errorf("%s lies outside", b.ID)
		}
		for _, c := range v.Beds[:i] {
			if abs(b.At.XM-c.At.XM) < (b.LengthM+c.LengthM)/2 && abs(b.At.YM-c.At.YM) < (b.WidthM+c.WidthM)/2 {
				t.Errorf("%s lies over %s", b.ID, c.ID)
			}
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

// BenchmarkGroundTry is a sowing moved a day at a time, as it is dragged.
func BenchmarkGroundTry(b *testing.B) {
	o := demoOffice(b)
	groundOf(b, o, "")
	day := 0
	for b.Loop() {
		day++
		date := fmt.Sprintf("2027-0%d-%02d", 3+day/28%3, 1+day%28)
		groundOf(b, o, "", plan.Change{Action: "set", Planting: "pot-27t", Field: "date", Value: date})
	}
}
