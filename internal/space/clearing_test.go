package space

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/season"
)

var (
	tableFrom = cal.Of(2027, 3, 1)
	weatherOn = tableFrom - 500
)

// smallGround lays out plantings on a bed of 10 m2, each gone on days after the
// table's first in ten futures; -1 for never.
func smallGround(t *testing.T, plantings []plan.Planting, gone map[string][]int, records ...record.Record) *Bed {
	t.Helper()
	h := &holding.Holding{Plan: "p", Plans: []plan.Plan{{ID: "p"}}, Plantings: plantings, Records: records,
		Beds: []place.Bed{{ID: "b", LengthM: 10, WidthM: 1}, {ID: "other", LengthM: 10, WidthM: 1}}}
	table := &outlook.Table{From: tableFrom, Weeks: 52, Years: 10}
	for id, days := range gone {
		f := outlook.Fate{Planting: id, Bed: "b", Crop: "carrot", Use: "table", First: weatherOn}
		for year := range table.Years {
			day := days[year%len(days)]
			if day >= 0 {
				day += int(tableFrom-weatherOn) - 1 // gone at its close, free from the day after
			}
			f.Years = append(f.Years, &season.Outcome{Gone: day})
		}
		table.Plantings = append(table.Plantings, f)
	}
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	g, err := Of(table, h, book, tableFrom)
	if err != nil {
		t.Fatal(err)
	}
	return g.Bed("b")
}

func planting(id string, from int, area float64) plan.Planting {
	p := plan.New(id, "p")
	p.Bed, p.Crop, p.Use, p.Date, p.AreaM2 = "b", "carrot", "table", tableFrom+cal.Date(from), area
	return p
}

func on(day int) cal.Date { return tableFrom + cal.Date(day) }

// The clearing day is the first of: over, recorded, or as the plan clears it.
func TestWhenAPlantingIsGone(t *testing.T) {
	over := map[string][]int{"a": {60, 70, 80, 90, 100, 110, 120, 130, 140, -1}}
	p := planting("a", 0, 4)
	if got, want := smallGround(t, []plan.Planting{p}, over).Hold("a").Clear, (Spread{on(70), on(110), on(140)}); got != want {
		t.Errorf("over in its own time: %v, want %v", got, want)
	}
	p.ClearBy = on(95)
	if got, want := smallGround(t, []plan.Planting{p}, over).Hold("a").Clear, (Spread{on(70), on(95), on(95)}); got != want {
		t.Errorf("cleared by the plan: %v, want %v", got, want)
	}
	cleared := record.Record{ID: "r", Date: on(50), What: record.Cleared, Planting: "a"}
	if got := smallGround(t, []plan.Planting{p}, over, cleared).Hold("a").Clear; got != sure(on(50)) {
		t.Errorf("recorded as cleared: %v", got)
	}
	for _, never := range [][]int{{-1}} {
		h := smallGround(t, []plan.Planting{planting("a", 0, 4)}, map[string][]int{"a": never}).Hold("a")
		if h.Clear.P50.IsSet() || h.GoneBy(on(10000)) != 0 {
			t.Errorf("never over: %v", h.Clear)
		}
	}
}

// A planting lifted and set elsewhere leaves its ground on that day.
func TestMovedPlantingLeavesItsGround(t *testing.T) {
	a, b := planting("a", 0, 4), planting("b", 40, 4)
	b.Bed, b.Relation, b.To = "other", plan.Moved, "a"
	bed := smallGround(t, []plan.Planting{a, b}, map[string][]int{"a": {200}})
	if got := bed.Hold("a").Clear; got != sure(on(40)) {
		t.Errorf("gone %v, want %v", got, on(40))
	}
	c := b
	c.ID, c.Date = "c", on(60)
	if got := smallGround(t, []plan.Planting{a, b, c}, map[string][]int{"a": {200}}).Hold("a").Clear; got != sure(on(60)) {
		t.Errorf("moved in two goes: gone %v, want %v", got, on(60))
	}
}

// Where a record says that only a share was moved, the rest stays.
func TestMovedShareLeavesTheRest(t *testing.T) {
	share := record.Record{ID: "r", Date: on(40), What: record.Moved, Planting: "a", Value: 0.5, Unit: record.ShareUnit}
	part := planting("b", 42, 4)
	part.Bed, part.Relation, part.To = "other", plan.Moved, "a"
	bed := smallGround(t, []plan.Planting{planting("a", 0, 8), part}, map[string][]int{"a": {200}}, share)
	if got := bed.Hold("a"); got.AreaM2 != 4 || got.Clear != sure(on(200)) {
		t.Errorf("%v m2 stay until %v, want 4 until %v", got.AreaM2, got.Clear, on(200))
	}
	rest := part
	rest.ID, rest.Date = "c", on(90)
	bed = smallGround(t, []plan.Planting{planting("a", 0, 8), part, rest}, map[string][]int{"a": {200}}, share)
	if got := bed.Hold("a").Clear; got != sure(on(90)) {
		t.Errorf("the rest is gone %v, want %v: it is moved too", got, on(90))
	}
}

// What was sown so long ago that the table does not follow it is over before the
// table, also where it was lifted and set since.
func TestMovedLongSinceIsOver(t *testing.T) {
	a, b := planting("a", -700, 4), planting("b", -300, 4)
	a.Bed, b.Relation, b.To = "other", plan.Moved, "a"
	if got := smallGround(t, []plan.Planting{a, b}, nil).Hold("b").Clear; got != sure(tableFrom) {
		t.Errorf("gone %v, want %v", got, tableFrom)
	}
}

// A lost share leaves its ground on the day of its loss, the rest stays.
func TestLostShareReleasesGround(t *testing.T) {
	lost := record.Record{ID: "r", Date: on(30), What: record.Failing, Planting: "a", Value: 0.25, Unit: "share"}
	bed := smallGround(t, []plan.Planting{planting("a", 0, 8)}, map[string][]int{"a": {100}}, lost)
	if got := bed.Hold("a"); got.AreaM2 != 6 || got.Clear != sure(on(100)) || got.Lost {
		t.Errorf("what stays has %v m2 until %v", got.AreaM2, got.Clear)
	}
	if got := bed.RoomM2(on(36), on(90)); got < 3.999 || got > 4.001 {
		t.Errorf("%v m2 free after the loss, want 4: 2 that were always free and 2 that were lost", got)
	}
	if got := bed.RoomM2(on(20), on(90)); got < 1.999 || got > 2.001 {
		t.Errorf("%v m2 free before the loss, want 2", got)
	}
	all := lost
	all.What, all.Value = record.Died, 1
	if got := smallGround(t, []plan.Planting{planting("a", 0, 8)}, map[string][]int{"a": {100}}, all).Hold("a").Clear; got != sure(on(30)) {
		t.Errorf("all died: gone %v", got)
	}
}

// Clearing is not free ground: the turn-round of a bed comes after it.
func TestTurnRound(t *testing.T) {
	bed := smallGround(t, []plan.Planting{planting("a", 0, 10)}, map[string][]int{"a": {50, 60, 70}})
	gaps := bed.Gaps(tableFrom, on(365))
	if len(gaps) != 1 || gaps[0].From != (Spread{on(55), on(65), on(75)}) || gaps[0].AreaM2 != 10 || !gaps[0].Open {
		t.Fatalf("free ground %+v", gaps)
	}
	if got := gaps[0].FreeBy(on(64)); got != 0.4 {
		t.Errorf("free by the day before the middle in %v of the futures", got)
	}
	if got := gaps[0].Odds; got != 0.7 {
		t.Errorf("free by the middle day in %v of the futures", got)
	}
}
