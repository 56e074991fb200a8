package desk_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
	"garner/internal/sample"
)

func demoOffice(t testing.TB) *desk.Office {
	t.Helper()
	files, err := sample.Files("main")
	if err != nil {
		t.Fatal(err)
	}
	o := empty(t)
	report, err := o.Import(by("demo"), files)
	if err != nil || !report.OK() {
		t.Fatal(err, report.Faults)
	}
	return o
}

var asUsual = desk.PairAsked{StripOn: cal.None, ClearOn: cal.None}

// Both of a pair tell of it, each with its own name; a planting alone tells of
// none, and of the plantings by which it could stand.
func TestPairView(t *testing.T) {
	o := demoOffice(t)
	lower, err := o.PairView("let-27e", nil, asUsual)
	if err != nil {
		t.Fatal(err)
	}
	if len(lower.Pairs) != 1 || lower.Pairs[0].Upper.ID != "bru-27" || lower.Pairs[0].Lower.ID != "let-27e" {
		t.Fatalf("pairs %+v", lower.Pairs)
	}
	p := lower.Pairs[0]
	if p.Ratio <= 1 || p.Ratio > 1.2 || p.Lower.Share > 1 || p.Stripped == nil || p.Cleared == nil {
		t.Errorf("ratio %.2f, lower %.2f, stripped %+v, cleared %+v", p.Ratio, p.Lower.Share, p.Stripped, p.Cleared)
	}
	upper, err := o.PairView("bru-27", nil, asUsual)
	if err != nil || len(upper.Pairs) != 1 || upper.Pairs[0].Lower.ID != "let-27e" {
		t.Errorf("the upper tells %+v, %v", upper, err)
	}
	alone, err := o.PairView("pot-27m", nil, asUsual)
	if err != nil || len(alone.Pairs) != 0 {
		t.Errorf("alone: %+v, %v", alone, err)
	}
	if _, err := o.PairView("nobody", nil, asUsual); err == nil {
		t.Error("no fault for a planting that is not there")
	}
}

// A relation and a stripping that are tried are in the view, and a relation that
// goes in a ring does no harm.
func TestPairViewTried(t *testing.T) {
	o := demoOffice(t)
	set := func(planting, field, value string) plan.Change {
		return plan.Change{Action: "set", Planting: planting, Field: field, Value: value}
	}
	v, err := o.PairView("swe-27", []plan.Change{set("swe-27", "relation", "under"), set("swe-27", "to", "bru-27"),
		set("bru-27", "strip_on", "2027-10-05"), set("bru-27", "strip_share", "0.5")}, asUsual)
	if err != nil || len(v.Pairs) != 1 {
		t.Fatalf("%+v, %v", v, err)
	}
	if p := v.Pairs[0]; p.StripOn != cal.Of(2027, 10, 5) || p.StripShare != 0.5 || p.Lower.Share >= 1 {
		t.Errorf("strip on %s, %g; the lower keeps %.2f", p.StripOn, p.StripShare, p.Lower.Share)
	}
	ring := []plan.Change{set("swe-27", "relation", "under"), set("swe-27", "to", "bru-27"), set("bru-27", "relation", "under"), set("bru-27", "to", "swe-27")}
	if _, err := o.PairView("swe-27", ring, asUsual); err != nil {
		t.Error(err)
	}
	if err := o.KeepTry(by("a ring"), ring); err == nil {
		t.Error("a ring was kept")
	}
}
