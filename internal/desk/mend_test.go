package desk_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
)

// lacks is all that lacks of the table with changes tried, as the pages compute it
// [kg].
func lacks(t *testing.T, o *desk.Office, try []plan.Change) (kg float64) {
	t.Helper()
	h, _, err := o.Tried(try)
	if err != nil {
		t.Fatal(err)
	}
	r, err := desk.Outlook(h, desk.OutlookOptions{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range r.Vegetables {
		for _, week := range v.ShortKg {
			kg += week
		}
	}
	return kg
}

// What a proposal's changes come to, tried over the plan as an address has them, is
// what it is told to be worth: the difference of two tables within 1 %.
func TestAProposalsChangesAreWorthWhatIsTold(t *testing.T) {
	o := sampleOffice(t)
	before := lacks(t, o, nil)
	seen := map[string]bool{}
	for _, q := range []struct {
		vegetable string
		on        cal.Date
	}{{"leek", cal.Of(2028, 2, 28)}, {"lettuce", cal.Of(2028, 4, 3)}} {
		v, err := o.MendView(q.vegetable, q.on, nil)
		if err != nil {
			t.Fatal(err)
		}
		if n := len(v.Lines); n < 4 || v.Lines[n-2].Kind != "buy" || v.Lines[n-1].Kind != "leave" {
			t.Fatalf("%s: %+v", q.vegetable, v.Lines)
		}
		for i := range v.Lines {
			l := &v.Lines[i]
			if seen[l.Kind] || len(l.Try) == 0 {
				continue
			}
			seen[l.Kind] = true
			if full := before - lacks(t, o, l.Try); math.Abs(full-l.DropKg) > 0.01*math.Abs(full)+1e-3 {
				t.Errorf("%s for %s: told %.4f kg, two tables differ by %.4f", l.Kind, q.vegetable, l.DropKg, full)
			}
		}
	}
	for _, kind := range []string{"sow", "cover", "store", "shift", "buy", "leave"} {
		if !seen[kind] {
			t.Errorf("no proposal of kind %s", kind)
		}
	}
}

// What may be bought is kept in the want as one entry, and taken back.
func TestBuyingIsKeptInTheWant(t *testing.T) {
	o := sampleOffice(t)
	v, err := o.MendView("leek", cal.Of(2028, 2, 28), nil)
	if err != nil {
		t.Fatal(err)
	}
	l := &v.Lines[len(v.Lines)-2]
	if len(l.Try) != 1 || l.Try[0].Action != desk.BuyAction || l.BuyKgPerWeek <= 0 {
		t.Fatalf("%+v", l)
	}
	want := l.Try[0].Field
	if err := o.KeepTry(desk.Author{Entry: "buy"}, l.Try); err != nil {
		t.Fatal(err)
	}
	row, err := o.Row("wants", want)
	if err != nil || row.Cells["vegetable"] != "leek" || desk.WriteBuy(want, l.BuyKgPerWeek) != want+";"+row.Cells["buy_kg_per_week"] {
		t.Errorf("%+v, %v; told %.2f", row, err, l.BuyKgPerWeek)
	}
	if _, _, err := o.Tried([]plan.Change{{Action: desk.BuyAction, Planting: "leek", Field: "none", Value: "none;1"}}); err == nil {
		t.Error("a want that is not there was bought for")
	}
	for _, wrong := range []string{"", "w", "w;", "w;-1", "w;much", ";1", "w;1e9", "w;NaN"} {
		if _, err := desk.ReadBuy("leek", wrong); err == nil {
			t.Errorf("%q was taken", wrong)
		}
	}
}

// A trim and what takes its place are kept in one entry, worth what is told, and
// taken back in one.
func TestATrimIsKeptWithWhatTakesItsPlace(t *testing.T) {
	o := sampleOffice(t)
	v, err := o.TrimView("courgette", nil)
	if err != nil || len(v.Lines) == 0 || v.Lines[0].Next == nil {
		t.Fatal(v, err)
	}
	l := &v.Lines[0]
	before, alone := lacks(t, o, nil), lacks(t, o, l.Try)
	if full := alone - before; math.Abs(full-l.LossKg) > 0.01*full+1e-3 {
		t.Errorf("told to cost %.4f kg, two tables differ by %.4f", l.LossKg, full)
	}
	if full := alone - lacks(t, o, l.TryNext); math.Abs(full-l.Next.DropKg) > 0.01*full+1e-3 {
		t.Errorf("what takes its place is told to be worth %.4f kg, two tables differ by %.4f", l.Next.DropKg, full)
	}
	if err := o.KeepTry(desk.Author{Entry: "trim"}, l.TryNext); err != nil {
		t.Fatal(err)
	}
	if kept, told := before-lacks(t, o, nil), l.Next.DropKg-l.LossKg; math.Abs(kept-told) > 0.01*math.Abs(told)+1e-3 {
		t.Errorf("kept, %.4f kg less lack; told %.4f", kept, told)
	}
	if row, err := o.Row("plantings", l.Next.ID); err != nil || row.Cells["crop"] != l.Next.Crop {
		t.Errorf("%+v, %v", row, err)
	}
}

// The answer is at hand when it is asked for again, and worked out anew after an
// edit.
func TestWhatWouldMendIsKeptAtHand(t *testing.T) {
	o := sampleOffice(t)
	first, err := o.MendView("leek", cal.None, nil)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := o.MendView("leek", cal.None, nil); err != nil || again != first {
		t.Errorf("worked out again: %v", err)
	}
	if _, err := o.MendView("melon", cal.None, nil); err == nil {
		t.Error("a vegetable that is not at the table was answered")
	}
}
