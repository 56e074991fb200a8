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

// What may be bought in the days of a gap is kept as one entry, for these days alone;
// nothing is bought in other weeks.
func TestBuyingIsOfTheGapsDays(t *testing.T) {
	o := sampleOffice(t)
	v, err := o.MendView("leek", cal.Of(2028, 2, 28), nil)
	if err != nil {
		t.Fatal(err)
	}
	l := &v.Lines[len(v.Lines)-2]
	if len(l.Try) != 1 || l.Try[0].Action != desk.BuyAction || l.BuyKgPerWeek <= 0 {
		t.Fatalf("%+v", l)
	}
	if err := o.KeepTry(desk.Author{Entry: "buy"}, l.Try); err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil || len(h.Purchases) != 1 {
		t.Fatal(h.Purchases, err)
	}
	gap, p := v.Gaps[v.At], h.Purchases[0]
	if p.Vegetable != "leek" || p.From != gap.First || p.To != gap.Last || p.KgPerWeek != l.BuyKgPerWeek {
		t.Errorf("%+v for the gap %+v", p, gap)
	}
	table, err := o.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Vegetables {
		bought := 0
		for s := range r.Bought[0] {
			if r.Bought[0][s] <= r.Food[0][s] {
				continue
			}
			bought++
			if day := table.From + cal.Date(float64(s)*desk.Step); day+1 < gap.First || day > gap.Last {
				t.Errorf("%s is bought on %s, outside %s to %s", r.Name, day, gap.First, gap.Last)
			}
		}
		if want := r.Name == "leek"; (bought > 0) != want || (r.BoughtKg > 0) != want {
			t.Errorf("%s is bought in %d steps, %.2f kg", r.Name, bought, r.BoughtKg)
		}
	}
	for _, wrong := range []string{"", "2027-04-20", "2027-04-20;2027-06-02", "2027-04-20;2027-06-02;", "2027-04-20;2027-06-02;-1", "2027-04-20;2027-06-02;much",
		"2027-06-02;2027-04-20;1", ";;1", "2027-04-20;2027-06-02;1e9", "2027-04-20;2027-06-02;NaN"} {
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
