package desk_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// sampleOffice keeps the demo holding, on its own today, 4 January 2027.
func sampleOffice(t testing.TB) *desk.Office {
	t.Helper()
	o := empty(t)
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	if err := o.Begin(by("begin"), h); err != nil {
		t.Fatal(err)
	}
	return o
}

var newYear = cal.Of(2027, 1, 2)

// added counts the rows of a table that an entry brought, and gives the last.
func added(e *desk.KeptEntry, o *desk.Office, table string) (n int, last map[string]string) {
	for _, c := range e.Changes {
		if c.Table == table {
			n, last = n+1, o.Cells(table, c.After)
		}
	}
	return n, last
}

// Each thing that can become of a planting is one entry, and taken back leaves
// nothing of it.
func TestLossesAreOneEntryEach(t *testing.T) {
	o := sampleOffice(t)
	stands := export(t, o)
	for name, c := range map[string]struct {
		write func(by desk.Author) (*desk.KeptEntry, error)
		rows  map[string]int
		said  string
	}{
		"all lost": {func(by desk.Author) (*desk.KeptEntry, error) {
			return o.MarkLost(by, desk.Lost{Planting: "kal-26", On: newYear, Share: 1, Why: "pigeons"})
		}, map[string]int{"records": 1}, "noted kale in "},
		"half lost to a disease": {func(by desk.Author) (*desk.KeptEntry, error) {
			return o.MarkLost(by, desk.Lost{Planting: "kal-26", On: newYear, Share: 0.5, Why: "clubroot"})
		}, map[string]int{"records": 2}, "50"},
		"plants lost": {func(by desk.Author) (*desk.KeptEntry, error) {
			return o.MarkLost(by, desk.Lost{Planting: "kal-26", On: newYear, Plants: 3})
		}, map[string]int{"records": 1}, "3 plants"},
		"failing, picked and kept": {func(by desk.Author) (*desk.KeptEntry, error) {
			return o.MarkFailing(by, desk.Failing{Lost: desk.Lost{Planting: "kal-26", On: newYear, Share: 0.5, Why: "frost"},
				PickedKg: 1.5, Store: "freezer", KeptPlants: 4})
		}, map[string]int{"records": 2, "batches": 1, "onhand": 1}, "failing"},
		"moved": {func(by desk.Author) (*desk.KeptEntry, error) {
			return o.Move(by, desk.Move{Planting: "kal-26", On: newYear, Bed: "h1", AreaM2: 3})
		}, map[string]int{"records": 1, "plantings": 1}, "moved kale"},
	} {
		key := strings.ReplaceAll(name, " ", "-")
		e, err := c.write(by(key))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		rows := 0
		for table, want := range c.rows {
			got, _ := added(e, o, table)
			if rows += got; got != want {
				t.Errorf("%s: %d rows of %s, want %d", name, got, table, want)
			}
		}
		if rows != len(e.Changes) || !strings.Contains(strings.ToLower(said(e)), strings.ToLower(c.said)) {
			t.Errorf("%s: %d changes, said %q", name, len(e.Changes), said(e))
		}
		if _, err := o.Undo(by("undo-"+key), e.ID); err != nil {
			t.Errorf("%s: it cannot be taken back: %v", name, err)
		}
		if export(t, o) != stands {
			t.Fatalf("%s: taken back, the holding is another", name)
		}
	}
}

// What is written says what happened: the share, the cause, the store, the
// plants, and where a moved planting stands.
func TestWhatALossWrites(t *testing.T) {
	o := sampleOffice(t)
	e, err := o.MarkFailing(by("a"), desk.Failing{Lost: desk.Lost{Planting: "psb-26", On: newYear, Share: 0.25, Why: "clubroot"}, PickedKg: 2, Store: "freezer", KeptPlants: 5})
	if err != nil {
		t.Fatal(err)
	}
	if _, r := added(e, o, "records"); r["what"] != "picked" || r["value"] != "2" {
		t.Errorf("the last record is %v", r)
	}
	if r := o.Cells("records", e.Changes[0].After); r["what"] != "failing" || r["value"] != "0.25" || r["unit"] != "share" || r["problem"] != "clubroot" {
		t.Errorf("the first record is %v", r)
	}
	if r := o.Cells("records", e.Changes[1].After); r["what"] != "disease" || r["problem"] != "clubroot" || r["bed"] != "h5" {
		t.Errorf("the second record is %v", r)
	}
	if _, r := added(e, o, "batches"); r["store"] != "freezer" || r["kg"] != "2" || r["crop"] != "sprouting-broccoli" || r["planting"] != "psb-26" {
		t.Errorf("the batch is %v", r)
	}
	if _, r := added(e, o, "onhand"); r["form"] != "plants" || r["amount"] != "5" || r["crop"] != "sprouting-broccoli" {
		t.Errorf("on hand is %v", r)
	}
	e, err = o.Move(by("b"), desk.Move{Planting: "win-26", On: newYear, Bed: "h1", AreaM2: 2})
	if err != nil {
		t.Fatal(err)
	}
	if _, r := added(e, o, "plantings"); r["relation"] != "moved" || r["to"] != "win-26" || r["bed"] != "h1" || r["area_m2"] != "2" || r["date"] != "2027-01-02" || r["use"] != "winter" {
		t.Errorf("moved it is %v", r)
	}
	view, err := o.GroundView()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range view.Plantings {
		switch l.ID {
		case "win-26":
			if l.State != desk.Past {
				t.Errorf("moved away it is %s", l.State)
			}
		case "psb-26":
			if math.Abs(l.HeldM2-0.75*3.6) > 1e-9 || l.State != desk.Standing {
				t.Errorf("of 3.6 m2 it holds %g, and is %s", l.HeldM2, l.State)
			}
		}
	}
}

// What cannot be is told at its field, and nothing is written.
func TestLossesThatCannotBe(t *testing.T) {
	o := sampleOffice(t)
	stands := export(t, o)
	lost := func(change func(*desk.Lost)) error {
		l := desk.Lost{Planting: "kal-26", On: newYear, Share: 1}
		change(&l)
		_, err := o.MarkLost(by("x"), l)
		return err
	}
	move := func(change func(*desk.Move)) error {
		m := desk.Move{Planting: "kal-26", On: newYear, Bed: "h1", AreaM2: 2}
		change(&m)
		_, err := o.Move(by("x"), m)
		return err
	}
	fail := func(change func(*desk.Failing)) error {
		f := desk.Failing{Lost: desk.Lost{Planting: "kal-26", On: newYear, Share: 1}, PickedKg: 1, Store: "freezer"}
		change(&f)
		_, err := o.MarkFailing(by("x"), f)
		return err
	}
	for column, errs := range map[string][]error{
		"date": {lost(func(l *desk.Lost) { l.On = cal.None }), lost(func(l *desk.Lost) { l.On = cal.Of(2027, 1, 5) }),
			lost(func(l *desk.Lost) { l.On = cal.Of(2026, 6, 1) }), move(func(m *desk.Move) { m.On = cal.Of(2026, 6, 26) })},
		"share":       {lost(func(l *desk.Lost) { l.Share = 0 }), lost(func(l *desk.Lost) { l.Share = 1.2 }), lost(func(l *desk.Lost) { l.Share = -1 })},
		"why":         {lost(func(l *desk.Lost) { l.Why = "dragons" })},
		"bed":         {move(func(m *desk.Move) { m.Bed = "h5" }), move(func(m *desk.Move) { m.Bed = "nowhere" })},
		"area_m2":     {move(func(m *desk.Move) { m.AreaM2 = 0 }), move(func(m *desk.Move) { m.AreaM2 = 99 })},
		"store":       {fail(func(f *desk.Failing) { f.Store = "rack" }), fail(func(f *desk.Failing) { f.Store = "nowhere" })},
		"kg":          {fail(func(f *desk.Failing) { f.PickedKg = -1 })},
		"plants_kept": {fail(func(f *desk.Failing) { f.KeptPlants = -1 })},
	} {
		for i, err := range errs {
			var list fault.List
			if !errors.As(err, &list) || len(list) != 1 || list[0].At.Column != column {
				t.Errorf("%s %d: %v", column, i, err)
			}
		}
	}
	if _, err := o.MarkLost(by("x"), desk.Lost{Planting: "nobody", On: newYear, Share: 1}); fault.KindOf(err) != fault.NotFound {
		t.Errorf("of a planting that is not there: %v", err)
	}
	if export(t, o) != stands {
		t.Error("something was written")
	}
	if _, err := o.MarkLost(by("y"), desk.Lost{Planting: "kal-26", On: newYear, Share: 1}); err != nil {
		t.Fatal(err)
	}
	if err := lost(func(*desk.Lost) {}); err == nil {
		t.Error("what is lost is lost again")
	}
}

// The hole at the table is the difference of two whole tables, and is gone when
// the loss is taken back.
func TestHoleIsTheDifferenceOfTwoTables(t *testing.T) {
	o := sampleOffice(t)
	lacks := func() map[string]float64 {
		v, err := o.TableView(nil)
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]float64{}
		for _, r := range v.Vegetables {
			for k := range r.WantKg {
				out[r.Name] += r.WantKg[k] - r.FreshKg[k] - r.StoredKg[k]
			}
		}
		return out
	}
	before := lacks()
	e, err := o.MarkLost(by("a"), desk.Lost{Planting: "lee-26", On: newYear, Share: 1, Why: "mice"})
	if err != nil {
		t.Fatal(err)
	}
	after := lacks()
	hole, err := o.Hole(e.ID, "lee-26")
	if err != nil {
		t.Fatal(err)
	}
	if len(hole.Gaps) == 0 || hole.Gaps[0].Vegetable != "leek" {
		t.Fatalf("leeks lost open %+v", hole.Gaps)
	}
	for vegetable := range after {
		told := 0.0
		for _, g := range hole.Gaps {
			if g.Vegetable == vegetable {
				told += g.Kg
			}
		}
		for _, l := range hole.Less {
			if l.Vegetable == vegetable {
				told += l.Kg
			}
		}
		if more := after[vegetable] - before[vegetable]; told > more*1.01+0.01 || vegetable != "leek" && more > 0.1 {
			t.Errorf("%s: %.2f kg are told to lack more, the tables say %.2f", vegetable, told, more)
		}
	}
	if f := hole.Freed; f == nil || f.Bed != "h2" || f.AreaM2 != 5 || f.From != newYear+5 { // the usual turn-round, from the day of the loss
		t.Errorf("free ground is %+v", f)
	}
	if _, err := o.Undo(by("b"), e.ID); err != nil {
		t.Fatal(err)
	}
	if _, err := o.Hole(e.ID, "lee-26"); fault.KindOf(err) != fault.Conflict {
		t.Errorf("taken back, its hole is %v", err)
	}
	for vegetable, kg := range lacks() {
		if kg != before[vegetable] {
			t.Errorf("taken back, %s lack %g kg where they lacked %g", vegetable, kg, before[vegetable])
		}
	}
}

// What stood under another leaves no ground free: it is the other's still.
func TestLossOfAnUnderCropFreesNoGround(t *testing.T) {
	o := sampleOffice(t)
	save(t, o, "under the kale", "plantings", "", map[string]string{"id": "under", "plan": "p2027", "bed": "h5", "crop": "lambs-lettuce",
		"date": "2026-09-01", "area_m2": "1", "relation": "under", "to": "kal-26"})
	e, err := o.MarkLost(by("a"), desk.Lost{Planting: "under", On: newYear, Share: 1})
	if err != nil {
		t.Fatal(err)
	}
	hole, err := o.Hole(e.ID, "under")
	if err != nil {
		t.Fatal(err)
	}
	if hole.Freed != nil {
		t.Errorf("the kale stands on it, and it is told to be free: %+v", hole.Freed)
	}
}

// The form offers the causes that can be, the stores in which the crop keeps, and
// the cautions that are due.
func TestLossView(t *testing.T) {
	o := sampleOffice(t)
	causes := func(id string) string {
		v, err := o.LossView(id)
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, c := range v.Causes {
			out = append(out, c.ID)
		}
		return strings.Join(out, " ")
	}
	for _, id := range []string{"kal-26", "pot-26"} {
		if got := causes(id); !strings.HasPrefix(got, "slugs pigeons mice frost drought ") || !strings.HasSuffix(got, " other") {
			t.Errorf("%s is lost to %s", id, got)
		}
	}
	if !strings.Contains(causes("pot-26"), "late-blight") || strings.Contains(causes("kal-26"), "late-blight") || !strings.Contains(causes("kal-26"), "clubroot") {
		t.Errorf("potatoes are lost to %s, kale to %s", causes("pot-26"), causes("kal-26"))
	}
	v, err := o.LossView("tom-26")
	if err != nil {
		t.Fatal(err)
	}
	var stores []string
	for _, s := range v.Stores {
		stores = append(stores, s.ID)
	}
	if got := strings.Join(stores, " "); got != "shed shelf freezer jars" {
		t.Errorf("tomatoes keep in %s", got)
	}
	if len(v.Cautions) != 1 || v.Cautions[0].Cautions[0].Source == "" || !strings.Contains(words.English().Text(v.Cautions[0].Cautions[0].Text), "council") {
		t.Errorf("the cautions are %+v", v.Cautions)
	}
	if !strings.Contains(strings.Join(v.Notes, " "), "green tomatoes") {
		t.Errorf("of green tomatoes it says %q", v.Notes)
	}
	for id, badly := range map[string]bool{"par-26": true, "car-26": true, "lee-26": false, "kal-26": false} {
		if v, err := o.LossView(id); err != nil || v.MovesBadly != badly {
			t.Errorf("%s moves badly: %t, want %t (common practice, no source)", id, v.MovesBadly, badly)
		}
	}
}

// What a refill is said to be worth is the difference of two whole tables, within
// 1 %.
func TestWorthOfARefillIsTheDifferenceOfTwoTables(t *testing.T) {
	o := sampleOffice(t)
	e, err := o.MarkLost(by("a"), desk.Lost{Planting: "kal-26s", On: newYear, Share: 1})
	if err != nil {
		t.Fatal(err)
	}
	hole, err := o.Hole(e.ID, "kal-26s")
	if err != nil {
		t.Fatal(err)
	}
	fill, err := o.HoleRefills(hole.Freed)
	if err != nil || fill == nil || len(fill.Candidates) == 0 {
		t.Fatal(fill, err)
	}
	lacks := func() (sum float64) {
		v, err := o.TableView(nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range v.Vegetables {
			for k := range r.WantKg {
				sum += r.WantKg[k] - r.FreshKg[k] - r.StoredKg[k]
			}
		}
		return sum
	}
	best := fill.Candidates[0]
	if best.Lot == nil {
		t.Error("what is on hand does not come first")
	}
	before := lacks()
	if _, err := o.Accept(by("b"), best.Cells); err != nil {
		t.Fatal(err)
	}
	if drop := before - lacks(); math.Abs(drop-best.DropKg) > 0.01*best.DropKg {
		t.Errorf("%s is said to give %g kg and gives %g", best.Name, best.DropKg, drop)
	}
}

// What is lifted and set elsewhere still comes to the table, what is lost does
// not, and half of it comes to less than all.
func TestMovedIsNotLost(t *testing.T) {
	o := sampleOffice(t)
	lacks := func(name string, write func(desk.Author) (*desk.KeptEntry, error)) float64 {
		e, err := write(by(name))
		if err != nil {
			t.Fatal(err)
		}
		hole, err := o.Hole(e.ID, "lee-26")
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, g := range hole.Gaps {
			sum += g.Kg
		}
		for _, l := range hole.Less {
			sum += l.Kg
		}
		if f := hole.Freed; f == nil || f.Bed != "h2" {
			t.Errorf("%s: free ground is %+v", name, f)
		}
		if _, err := o.Undo(by("undo-"+name), e.ID); err != nil {
			t.Fatal(err)
		}
		return sum
	}
	lost := func(share float64) func(desk.Author) (*desk.KeptEntry, error) {
		return func(by desk.Author) (*desk.KeptEntry, error) {
			return o.MarkLost(by, desk.Lost{Planting: "lee-26", On: newYear + 2, Share: share})
		}
	}
	all, most := lacks("all", lost(1)), lacks("most", lost(0.75))
	moved := lacks("moved", func(by desk.Author) (*desk.KeptEntry, error) {
		return o.Move(by, desk.Move{Planting: "lee-26", On: newYear + 2, Bed: "h1", AreaM2: 5})
	})
	if !(all > most && most >= 0 && all > moved) {
		t.Errorf("%.2f kg lack when all is lost, %.2f when three quarters are, %.2f when it is moved", all, most, moved)
	}
}
