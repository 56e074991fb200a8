package draft_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/draft"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/programme"
)

// greens is a small garden whose kale and lettuce stand in for each other.
func greens(t *testing.T) *holding.Holding {
	h := small(t)
	h.Groups = []larder.Group{{ID: "g", Name: "greens"}}
	h.Members = []larder.Membership{{ID: "1", Group: "g", Member: larder.Member{Vegetable: "kale", Preference: 1}},
		{ID: "2", Group: "g", Member: larder.Member{Vegetable: "lettuce", Preference: 2}}}
	h.Wants = append(h.Wants, larder.Want{ID: "greens", Group: "g", PortionsPerEater: 2})
	return h
}

func demandOf(t *testing.T, d *draft.Draft, id string) *programme.Demand {
	t.Helper()
	for i := range d.Problem.Demands {
		if d.Problem.Demands[i].ID == id {
			return &d.Problem.Demands[i]
		}
	}
	t.Fatalf("nothing asks for %s", id)
	return nil
}

// cut leaves the ground out, for tests of what is wanted alone.
func cut(h *holding.Holding) *holding.Holding {
	h.Beds = nil
	return h
}

// What is held to more costs more when it lacks, portion for portion.
func TestImportanceIsLevels(t *testing.T) {
	h := cut(small(t))
	h.Wants = []larder.Want{{ID: "1", Vegetable: "onion", KgPerWeek: 0.4}, {ID: "2", Vegetable: "onion", KgPerWeek: 0.3, Importance: larder.Floor},
		{ID: "3", Vegetable: "onion", KgPerWeek: 0.2, Importance: larder.Nice}}
	levels := demandOf(t, built(t, h), "onion").Levels
	if len(levels) != 3 {
		t.Fatalf("%d levels", len(levels))
	}
	for k, want := range []struct{ kg, portions float64 }{{0.3, 5}, {0.4, 1}, {0.2, 0.3}} {
		if math.Abs(levels[k].PerWeek[3]-want.kg) > 1e-9 || math.Abs(levels[k].Cost/levels[1].Cost-want.portions) > 1e-5 {
			t.Errorf("level %d is %v kg at %v", k, levels[k].PerWeek[3], levels[k].Cost)
		}
	}
}

// What is wanted by week is what the table wants: with guests, nobody at home, gaps
// that are left, portions and groups.
func TestDemandsAreTheTablesWants(t *testing.T) {
	h := cut(greens(t))
	h.Wants[1].From, h.Wants[1].To = cal.MonthDay{Month: 10, Day: 10}, cal.MonthDay{Month: 5, Day: 5}
	h.Wants[4].Importance = larder.Floor
	h.Visits = []larder.Visit{{ID: "1", From: cal.Of(2027, 7, 3), To: cal.Of(2027, 7, 22), Eaters: 3}, {ID: "2", From: cal.Of(2027, 9, 1), To: cal.Of(2027, 9, 10), Eaters: -2}}
	h.GapsLeft = []larder.GapLeft{{ID: "1", Vegetable: "kale", From: cal.Of(2027, 5, 5), To: cal.Of(2027, 8, 20)},
		{ID: "2", Group: "g", From: cal.Of(2027, 6, 6), To: cal.Of(2027, 7, 7)}}
	d := built(t, h)
	table, err := outlook.Compute(setting(t, h).Setting, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]string{"carrot": "carrot", "onion": "onion", "French bean": "French bean", "kale": "greens", "lettuce": "greens", "greens": "greens"}
	want := map[string][]float64{}
	for v := range table.Vegetables {
		id := rows[table.Vegetables[v].Name]
		if want[id] == nil {
			want[id] = make([]float64, table.Weeks)
		}
		for week, kg := range table.Weekly(v, false).Want {
			want[id][week] += kg
		}
	}
	if len(d.Problem.Demands) != 4 {
		t.Errorf("%d demands", len(d.Problem.Demands))
	}
	for id, weeks := range want {
		demand := demandOf(t, d, id)
		for week, kg := range weeks {
			got := 0.0
			for _, l := range demand.Levels {
				got += l.PerWeek[week]
			}
			if math.Abs(got-kg) > 2e-4 {
				t.Errorf("%s in week %d: %.4f kg are asked for, the table wants %.4f", id, week, got, kg)
			}
		}
	}
}

// All members of a group feed its one demand, and what lacks of it is worth a portion
// of the mean weight.
func TestAGroupIsOneDemand(t *testing.T) {
	d := built(t, greens(t))
	demandOf(t, d, "greens")
	fed := map[string]bool{}
	for j := range d.Columns {
		if d.Problem.Demands[d.Problem.Sowings[j].Demand].ID == "greens" {
			fed[d.Columns[j].Use.Vegetable] = true
		}
	}
	if len(fed) != 2 || !fed["kale"] || !fed["lettuce"] {
		t.Errorf("greens are fed by %v", fed)
	}
	h := greens(t)
	h.Groups = append(h.Groups, larder.Group{ID: "h", Name: "salads"})
	h.Members = append(h.Members, larder.Membership{ID: "3", Group: "h", Member: larder.Member{Vegetable: "lettuce", Preference: 1}},
		larder.Membership{ID: "4", Group: "h", Member: larder.Member{Vegetable: "carrot", Preference: 1}})
	h.Wants = append(h.Wants, larder.Want{ID: "salads", Group: "h", KgPerWeek: 0.1})
	if d := built(t, cut(h)); len(d.Problem.Demands) != 3 {
		t.Errorf("two groups that share lettuce, onions and beans are %d demands", len(d.Problem.Demands))
	}
}

// What may be bought costs nothing when it is not grown: it meets the floor first. A
// problem without sowings costs what the table still lacks then.
func TestWhatIsBoughtIsCovered(t *testing.T) {
	h := cut(small(t))
	h.Wants = []larder.Want{{ID: "1", Vegetable: "onion", KgPerWeek: 0.3, Importance: larder.Floor, BuyKgPerWeek: 0.4}, {ID: "2", Vegetable: "onion", KgPerWeek: 0.4},
		{ID: "3", Vegetable: "carrot", KgPerWeek: 0.5, BuyKgPerWeek: 0.9}}
	d := built(t, h)
	levels := demandOf(t, d, "onion").Levels
	if len(levels) != 2 || math.Abs(levels[0].PerWeek[2]-0.3) > 1e-9 || levels[0].Cost <= 0 || math.Abs(levels[1].PerWeek[2]-0.4) > 1e-9 || levels[1].Cost != 0 {
		t.Fatalf("levels %+v", levels)
	}
	table, err := outlook.Compute(setting(t, h).Setting, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	short := 0.0
	for v := range table.Vegetables {
		for _, kg := range table.Weekly(v, false).Short {
			short += kg
		}
	}
	if want := short * levels[0].Cost; want <= 0 || math.Abs(d.Problem.NewStanding().Objective()-want) > 0.001*want {
		t.Errorf("nothing sown costs %.3f, the table lacks %.3f", d.Problem.NewStanding().Objective(), want)
	}
}

// A want that is left for the whole table asks for nothing.
func TestAWantThatIsLeftIsNoDemand(t *testing.T) {
	h := cut(small(t))
	h.GapsLeft = []larder.GapLeft{{ID: "1", Vegetable: "carrot", From: cal.Of(2027, 1, 1), To: cal.Of(2029, 1, 1)}}
	for _, demand := range built(t, h).Problem.Demands {
		if demand.ID == "carrot" {
			t.Errorf("carrots are asked for: %+v", demand)
		}
	}
}

// A store told in litres takes what they hold.
func TestStoresToldInLitresTakeWhatTheyHold(t *testing.T) {
	h := small(t)
	h.Stores[0].CapacityKg, h.Stores[0].Litres = 0, 100
	d := built(t, h)
	if room := d.Problem.Resources[0].PerWeek[0]; room != h.Stores[0].Holds() || room <= 0 {
		t.Errorf("the shed takes %v kg", room)
	}
	kept := 0
	for j := range d.Columns {
		if d.Columns[j].Store == "shed" {
			kept++
		}
	}
	if kept == 0 {
		t.Error("nothing is kept in the shed")
	}
}
