package jobs_test

import (
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/jobs"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// aYear is far enough for every job of the demo.
const aYear = 540

// kindsOf counts jobs by kind.
func kindsOf(all []jobs.Job) map[jobs.Kind]int {
	out := map[jobs.Kind]int{}
	for _, j := range all {
		out[j.Kind]++
	}
	return out
}

// find is the job with an id; false when there is none.
func find(all []jobs.Job, id string) (jobs.Job, bool) {
	for _, j := range all {
		if j.ID == id {
			return j, true
		}
	}
	return jobs.Job{}, false
}

// must is a job that has to be there.
func must(t *testing.T, all []jobs.Job, id string) jobs.Job {
	t.Helper()
	j, ok := find(all, id)
	if !ok {
		t.Fatalf("no job %s", id)
	}
	return j
}

// Every job of the demo's year has its days in order, lies within what was asked for,
// has an id of its own, words, a place and somebody who can do it.
func TestJobsOfTheDemoAreWhole(t *testing.T) {
	h := demotest.Holding(t, "")
	q := question(t, h, aYear)
	all := derived(t, q)
	c := words.English()
	seen := map[string]bool{}
	for _, j := range all {
		if seen[j.ID] {
			t.Errorf("%s is there twice", j.ID)
		}
		seen[j.ID] = true
		if j.First > j.Best || j.Best > j.Last {
			t.Errorf("%s: %s, %s, %s", j.ID, j.First, j.Best, j.Last)
		}
		if j.Last < q.Today || j.Due(q.Today) >= q.Until {
			t.Errorf("%s is due on %s until %s", j.ID, j.Best, j.Last)
		}
		if j.Minutes <= 0 || j.Minutes > 300 || j.Who == "" || j.Stop.Site == "" {
			t.Errorf("%s: %g minutes, %q, %+v", j.ID, j.Minutes, j.Who, j.Stop)
		}
		for _, text := range []string{c.Text(j.Title), c.Text(j.Why)} {
			if text == "" || strings.Contains(text, "jobs.") || strings.Contains(text, "{") {
				t.Errorf("%s says %q", j.ID, text)
			}
		}
	}
}

// The demo's year has all kinds of work that its crops and ground ask for.
func TestKindsOfTheDemo(t *testing.T) {
	got := kindsOf(derived(t, question(t, demotest.Holding(t, ""), aYear)))
	for _, k := range []jobs.Kind{"chit", "sow-indoors", "prick-out", "pot-on", "harden-off", "sow", "set", "plant-out", "cover", "net", "vent", "uncover",
		"thin", "earth-up", "stake", "strip", "feed", "pick", "lift", "cure", "tie-up", "clear", "cuttings", "count", "hoe", "weed", "mulch", "slugs",
		"pinch-out", "side-shoot", "tie-in", "prune", "turn-heap", "compost", "lime", "wash-pots"} {
		if got[k] == 0 {
			t.Errorf("nothing to %s", k)
		}
	}
}

// What the demo does not have comes where it is told: a green manure is sown and cut, a
// planting is lifted and set again, water is given, and the grower has jobs of their own.
func TestKindsThatTheDemoLacks(t *testing.T) {
	h := demotest.Holding(t, "")
	add := func(id, bed, crop, use string, m plan.Method, date, clear cal.Date) *plan.Planting {
		p := plan.New(id, h.Plan)
		p.Bed, p.Crop, p.Use, p.Method, p.Date, p.ClearBy, p.AreaM2 = bed, crop, use, m, date, clear, 1
		h.Plantings = append(h.Plantings, p)
		return &h.Plantings[len(h.Plantings)-1]
	}
	add("pha-27a", "h10", "phacelia", "cover", plan.Seed, cal.Of(2027, 4, 10), cal.Of(2027, 5, 30))
	again := add("lee-27m", "h2", "leek", "winter", plan.Plant, cal.Of(2027, 2, 15), cal.Of(2027, 4, 10))
	again.Relation, again.To = plan.Moved, "lee-26"
	h.OwnJobs = []plan.OwnJob{{ID: "gate", Name: "Oil the gate", Site: "share", Date: cal.Of(2027, 2, 1), Until: cal.None, Minutes: 20, Who: "child"},
		{ID: "hens", Name: "Clean out the hens", Date: cal.Of(2027, 1, 9), EveryD: 14, Until: cal.Of(2027, 3, 1)}}
	q := question(t, h, aYear)
	q.Water = []jobs.Watering{{Bed: "t1", On: h.Today + 1, Last: h.Today + 3, Litres: 18, Why: words.P("jobs.why_heat", nil)}}
	all := derived(t, q)
	for _, id := range []string{"sow-green:pha-27a", "cut-green:pha-27a", "replant:lee-27m", "own:gate", "own:hens:1"} {
		must(t, all, id)
	}
	if _, ok := find(all, "clear:lee-26"); ok {
		t.Error("what is lifted to go on elsewhere is cleared as well")
	}
	if j := must(t, all, "own:gate"); j.Minutes != 20 || j.Who != jobs.Child || j.Stop.Site != "share" {
		t.Errorf("the gate: %+v", j)
	}
	if got := kindsOf(all); got[jobs.Water] != 1 || got[jobs.Own] != 5 {
		t.Errorf("%d to water and %d of their own", got[jobs.Water], got[jobs.Own])
	}
}

// A day later the jobs have the same ids: a phone's calendar follows them.
func TestIDsStayFromDayToDay(t *testing.T) {
	h := demotest.Holding(t, "")
	q := question(t, h, 60)
	first := derived(t, q)
	q.Today++
	second := derived(t, q)
	gone := 0
	for _, j := range first {
		if _, ok := find(second, j.ID); !ok && j.Last > q.Today && j.Best > q.Today {
			t.Errorf("%s of %s is gone a day later", j.ID, j.Best)
			gone++
		}
	}
	if gone == 0 && len(second) == 0 {
		t.Error("no jobs")
	}
}

// answered derives the demo's jobs with what was said of one of them.
func answered(t *testing.T, days int, said ...record.Answer) []jobs.Job {
	t.Helper()
	h := demotest.Holding(t, "")
	h.Answers = said
	return derived(t, question(t, h, days))
}

func say(job string, did record.Did, on cal.Date) record.Answer {
	return record.Answer{ID: job + string(did), Date: on, Job: job, Did: did, Until: cal.None}
}

// What was done comes no more; a turn that was done moves the next.
func TestWhatIsDoneIsDone(t *testing.T) {
	today := cal.Of(2027, 1, 4)
	if _, ok := find(answered(t, 60, say("chit:pot-27t", record.Done, today)), "chit:pot-27t"); ok {
		t.Error("done, and still to be done")
	}
	j := must(t, answered(t, 30, say("pick:lee-26:8", record.Done, today)), "pick:lee-26:9")
	if want := today + 7; j.Best != want {
		t.Errorf("the next turn is on %s, want %s", j.Best, want)
	}
	all := answered(t, aYear, say("prune-strawberry:str-25:2027", record.Done, today))
	if _, ok := find(all, "prune-strawberry:str-25:2027"); ok {
		t.Error("pruned this year, and still to be pruned")
	}
}

// What is put off comes on the day it is put off to, in the same turn.
func TestWhatIsPutOffComesLater(t *testing.T) {
	a := say("chit:pot-27t", record.PutOff, cal.Of(2027, 1, 4))
	a.Until = cal.Of(2027, 1, 20)
	if j := must(t, answered(t, 60, a), "chit:pot-27t"); j.Best != a.Until || j.PutOff != a.Until {
		t.Errorf("%s, put off to %s", j.Best, j.PutOff)
	}
	b := say("turn-heap:home:2027:1", record.PutOff, cal.Of(2027, 1, 4))
	b.Until = cal.Of(2027, 3, 22)
	if j := must(t, answered(t, 100, b), "turn-heap:home:2027:1"); j.Best != b.Until {
		t.Errorf("%s", j.Best)
	}
}

// Skipped twice it asks once; kept it asks no more, dropped it comes no more.
func TestSkippedTwiceAsksOnce(t *testing.T) {
	asks := func(all []jobs.Job) (n int) {
		for _, j := range all {
			if j.Ask {
				n++
			}
		}
		return n
	}
	one, two, three := say("hoe:h1:2027:1", record.Skipped, cal.Of(2027, 1, 1)), say("hoe:h1:2027:2", record.Skipped, cal.Of(2027, 1, 2)), say("hoe:h1:2027:3", record.Skipped, cal.Of(2027, 1, 3))
	if n := asks(answered(t, 120, one)); n != 0 {
		t.Errorf("skipped once it asks %d times", n)
	}
	all := answered(t, 120, one, two)
	if j := must(t, all, "hoe:h1:2027:3"); !j.Ask || asks(all) != 1 {
		t.Errorf("skipped twice it asks %d times", asks(all))
	}
	if n := asks(answered(t, 120, one, two, three)); n != 0 {
		t.Errorf("skipped again it asks %d times", n)
	}
	if n := asks(answered(t, 120, one, two, say("hoe:h1:2027:3", record.Kept, cal.Of(2027, 1, 3)))); n != 0 {
		t.Errorf("kept it asks %d times", n)
	}
	for _, j := range answered(t, aYear, one, two, say("hoe:h1:2027:3", record.Dropped, cal.Of(2027, 1, 3))) {
		if strings.HasPrefix(j.ID, "hoe:h1:") {
			t.Errorf("dropped, and there is %s", j.ID)
		}
	}
}

// What was recorded takes the place of what was planned and forecast.
func TestRecordsCount(t *testing.T) {
	change := func(r record.Record) []jobs.Job {
		h := demotest.Holding(t, "")
		h.Records = append(h.Records, r)
		return derived(t, question(t, h, 120))
	}
	if _, ok := find(change(record.Record{ID: "x", Date: cal.Of(2027, 1, 4), What: record.Planted, Planting: "car-27t"}), "sow:car-27t"); ok {
		t.Error("sown, and still to be sown")
	}
	for _, j := range change(record.Record{ID: "x", Date: cal.Of(2027, 1, 3), What: record.Cleared, Planting: "lee-26"}) {
		if j.Planting == "lee-26" {
			t.Errorf("cleared, and there is %s", j.ID)
		}
	}
	j := must(t, change(record.Record{ID: "x", Date: cal.Of(2027, 1, 2), What: record.Counted, Store: "sand", Value: 20, Unit: "kg"}), "count:sand:2")
	if j.Best != cal.Of(2027, 1, 30) {
		t.Errorf("the next count is on %s", j.Best)
	}
}

// A site that allows no hoses has cans, and where ladders are not allowed what is high
// is cut from the ground.
func TestSitesForbidTools(t *testing.T) {
	h := demotest.Holding(t, "")
	h.Sites[0].NotAllowed = "hoses; heights"
	q := question(t, h, aYear)
	q.Water = []jobs.Watering{{Bed: "h1", On: h.Today, Last: cal.None, Litres: 10, Why: words.P("jobs.why_heat", nil)}, {Bed: "t1", On: h.Today, Last: cal.None, Litres: 10, Why: words.P("jobs.why_heat", nil)}}
	pruned := false
	for _, j := range derived(t, q) {
		switch j.Kind {
		case jobs.Water:
			if want := map[string]string{"home": "can", "share": "hose"}[j.Stop.Site]; !slices.Equal(j.Tools, []string{want}) {
				t.Errorf("%s is watered with %v", j.Stop.Site, j.Tools)
			}
		case "prune":
			pruned = pruned || j.Stop.Site == "home"
			if slices.Contains(j.Tools, "ladder") {
				t.Errorf("%s takes %v", j.ID, j.Tools)
			}
		}
	}
	if !pruned {
		t.Error("nothing was pruned")
	}
}

// The way goes site by site, and in each past stores, raising place, heap and beds.
func TestTheWay(t *testing.T) {
	h := demotest.Holding(t, "")
	all := derived(t, question(t, h, aYear))
	legs := jobs.Route(h, jobs.Works(all))
	seen := map[jobs.Stop]bool{}
	n, site := 0, 0
	for i, l := range legs {
		if seen[l.Stop] {
			t.Errorf("twice at %+v", l.Stop)
		}
		seen[l.Stop] = true
		for _, w := range l.Works {
			for _, turns := range w.Jobs {
				n += len(turns)
			}
		}
		if i == 0 {
			continue
		}
		before := legs[i-1].Stop
		if before.Site != l.Stop.Site {
			site++
		} else if before.Part > l.Stop.Part || before.Part == l.Stop.Part && before.Order > l.Stop.Order {
			t.Errorf("%+v comes before %+v", before, l.Stop)
		}
		// beds one above the other on the plan, by hand: 15 to 13.2 m
		if before.Bed == "h1" && l.Stop.Bed == "h2" && (l.WalkM < 1.79 || l.WalkM > 1.81) {
			t.Errorf("from the first bed to the second it is %g m", l.WalkM)
		}
	}
	if n != len(all) || site != 1 {
		t.Errorf("%d of %d jobs, %d times to another site", n, len(all), site)
	}
}

// A southern garden has its seasons half a year apart.
func TestTheSouth(t *testing.T) {
	h := demotest.Holding(t, "south")
	var heap []cal.Date
	for _, j := range derived(t, question(t, h, aYear)) {
		if j.Kind == "turn-heap" {
			heap = append(heap, j.Best)
		}
	}
	if len(heap) == 0 {
		t.Fatal("no heap is turned")
	}
	for _, d := range heap {
		if d.Month() > 5 && d.Month() < 9 {
			t.Errorf("the heap is turned in the cold, on %s", d)
		}
	}
}

// A holding with nothing in it has nothing to be done.
func TestAnEmptyHolding(t *testing.T) {
	h := demotest.Holding(t, "")
	empty := holding.Holding{ID: "x", Today: h.Today, Zone: h.Zone}
	if all := derived(t, question(t, &empty, aYear)); len(all) != 0 {
		t.Errorf("%d jobs of nothing", len(all))
	}
}
