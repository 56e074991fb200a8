package jobs_test

import (
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/holding"
	"garner/internal/jobs"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"

	"garner/internal/demotest"
)

// told is the weather of all sites of a holding, the same in every future: a usual day
// changed as it is asked for.
func told(h *holding.Holding, usual climate.Day, change map[cal.Date]func(*climate.Day)) []jobs.Sky {
	const before, days = 10, 60
	var out []jobs.Sky
	for _, s := range h.Sites {
		sky := jobs.Sky{Site: s.ID, First: h.Today - before}
		line := make([]climate.Day, days)
		for i := range line {
			line[i] = usual
			if c := change[sky.First+cal.Date(i)]; c != nil {
				c(&line[i])
			}
			sky.AboveMJ = append(sky.AboveMJ, 30)
		}
		for range 5 {
			sky.Futures = append(sky.Futures, line)
		}
		out = append(out, sky)
	}
	return out
}

// spring is the demo on a day of its year, with its weather told.
func spring(t *testing.T, on cal.Date, usual climate.Day, change map[cal.Date]func(*climate.Day)) jobs.Question {
	t.Helper()
	h := demotest.Holding(t, "")
	h.Today = on
	q := question(t, h, 14)
	q.Skies = told(h, usual, change)
	return q
}

var fine = climate.Day{TMinC: 8, TMaxC: 18, RadiationMJ: 18, HumidityPct: 70, WindMS: 2}

func wet(d *climate.Day)  { d.RainMM = 12 }
func cold(d *climate.Day) { d.TMinC, d.TMaxC = -3, 12 }

// Nobody hoes in the rain: it comes on the first dry day, under the same id, and says so.
// Where no day is dry it stays and says that.
func TestNoHoeingInTheRain(t *testing.T) {
	today := cal.Of(2027, 5, 10)
	dry := derived(t, spring(t, today, fine, nil))
	rain := derived(t, spring(t, today, fine, map[cal.Date]func(*climate.Day){today: wet, today + 1: wet, today + 2: wet}))
	a, b := must(t, dry, "hoe:h1:2027:5"), must(t, rain, "hoe:h1:2027:5")
	if a.Best != today || b.Best != today+3 || len(a.Notes) != 0 || len(b.Notes) != 1 || b.Notes[0].Key != "jobs.moved_rain" {
		t.Errorf("dry on %s, after rain on %s: %v", a.Best, b.Best, b.Notes)
	}
	all := map[cal.Date]func(*climate.Day){}
	for d := range cal.Date(20) {
		all[today+d] = wet
	}
	if j := must(t, derived(t, spring(t, today, fine, all)), "hoe:h1:2027:5"); j.Best != today || j.Notes[0].Key != "jobs.foul_rain" {
		t.Errorf("%s, %v", j.Best, j.Notes)
	}
	// a few futures in which it rains move nothing
	q := spring(t, today, fine, nil)
	for i := range q.Skies {
		line := slices.Clone(q.Skies[i].Futures[0])
		wet(&line[today-q.Skies[i].First])
		q.Skies[i].Futures[0] = line
	}
	if j := must(t, derived(t, q), "hoe:h1:2027:5"); j.Best != today {
		t.Errorf("one future of five moved it to %s", j.Best)
	}
}

// Lids are opened from the first day that grows warm under them, not in cold weeks, and
// closed before the cold night.
func TestLidsAreOpenedWhenItIsWarm(t *testing.T) {
	today := cal.Of(2027, 5, 10)
	dull := climate.Day{TMinC: 2, TMaxC: 7, RadiationMJ: 3, HumidityPct: 90, WindMS: 3}
	warm := func(d *climate.Day) {
		*d = climate.Day{TMinC: 9, TMaxC: 24, RadiationMJ: 24, HumidityPct: 60, WindMS: 1}
	}
	kinds := func(change map[cal.Date]func(*climate.Day)) (vent, shut []cal.Date) {
		for _, j := range derived(t, spring(t, today, dull, change)) {
			switch j.Kind {
			case jobs.Vent:
				vent = append(vent, j.Best)
			case jobs.Shut:
				shut = append(shut, j.Best)
			}
		}
		return vent, shut
	}
	if vent, shut := kinds(nil); len(vent) != 0 || len(shut) != 0 {
		t.Errorf("in a dull week: %v, %v", vent, shut)
	}
	vent, shut := kinds(map[cal.Date]func(*climate.Day){today + 3: warm})
	if len(vent) == 0 || len(shut) == 0 {
		t.Fatalf("with a warm day: %v, %v", vent, shut)
	}
	for _, d := range append(vent, shut...) {
		if d != today+3 {
			t.Errorf("for a warm day on %s and the cold night after it, on %s", today+3, d)
		}
	}
}

// Before a frost the tender are covered, one job a bed and run of nights; what the sheet
// was laid over lately is not asked for again.
func TestFleeceIsOnByDusk(t *testing.T) {
	today := cal.Of(2027, 6, 4) // young leaves stand in the open
	night := today + 2          // the minimum is that of the morning after
	change := map[cal.Date]func(*climate.Day){night + 1: cold, night + 2: cold}
	protects := func(q jobs.Question) map[string]jobs.Job {
		out := map[string]jobs.Job{}
		for _, j := range derived(t, q) {
			if j.Kind == jobs.Protect {
				out[j.Stop.Bed] = j
			}
		}
		return out
	}
	if got := protects(spring(t, today, fine, nil)); len(got) != 0 {
		t.Errorf("in mild nights: %v", got)
	}
	q := spring(t, today, fine, change)
	got := protects(q)
	j, ok := got["h8"] // chard and lettuce cut as leaf
	if !ok || j.Best != night || j.Last != night || j.Amount.M2 <= 0 || j.Amount.M2 > 6 {
		t.Fatalf("%v, %v", ok, got)
	}
	if text := words.English().Text(j.Why); !strings.Contains(text, "chard") || !strings.Contains(text, "2 in all") {
		t.Errorf("it says %q", text)
	}
	within := []cover.Kind{cover.Mesh, cover.Tunnel, cover.ColdFrame, cover.LowTunnel} // fleece goes inside; mesh comes off for it
	for bed := range got {
		for _, s := range q.Holding.Covers {
			if s.Bed == bed && !slices.Contains(within, s.Kind) && s.On <= night && (!s.Off.IsSet() || s.Off > night) {
				t.Errorf("%s lies under a %s already", bed, s.Kind)
			}
		}
	}
	lent := 0
	for _, j := range got {
		if j.Lay != "" {
			lent++
		}
		if j.Lay == "" != j.Unowned {
			t.Errorf("%s: %q, none of what is owned: %v", j.Stop.Bed, j.Lay, j.Unowned)
		}
	}
	if lent == 0 || lent > 4 {
		t.Errorf("covers for %d of %d beds, of two pieces of fleece and two frames", lent, len(got))
	}
	q.Holding.Answers = []record.Answer{say(j.ID, record.Done, today)}
	q.Today = today + 1
	if _, again := protects(q)["h8"]; again {
		t.Error("laid yesterday, and to be laid again")
	}
}

// What no sheet saves is gathered before the night; tender plants wait for milder ones.
func TestBeforeAHardFrost(t *testing.T) {
	today := cal.Of(2027, 9, 6)
	bitter := func(d *climate.Day) { d.TMinC, d.TMaxC = -8, 4 }
	all := derived(t, spring(t, today, fine, map[cal.Date]func(*climate.Day){today + 4: bitter}))
	gathered := 0
	for _, j := range all {
		if strings.HasPrefix(j.ID, "gather:") {
			gathered++
			if j.Best != today+3 || j.Kind != jobs.Pick || j.Amount.Kg <= 0 || j.SpoilKg <= 0 {
				t.Errorf("%+v", j)
			}
		}
	}
	if gathered == 0 {
		t.Error("nothing is gathered")
	}
	today = cal.Of(2027, 5, 27)
	change := map[cal.Date]func(*climate.Day){today + 1: cold, today + 2: cold}
	j := must(t, derived(t, spring(t, today, fine, change)), "plant-out:run-27")
	if j.Best != today+2 || len(j.Notes) != 1 {
		t.Errorf("runner beans are set out on %s", j.Best)
	}
	if j := must(t, derived(t, spring(t, today, fine, nil)), "plant-out:run-27"); j.Best != today {
		t.Errorf("in mild nights on %s", j.Best)
	}
}

// What was sick is burnt; where the site allows no fire it is bagged.
func TestWhereFiresAreNotAllowed(t *testing.T) {
	for notAllowed, want := range map[string]jobs.Kind{"": jobs.Burn, "fires": "bin"} {
		h := demotest.Holding(t, "")
		h.Sites[0].NotAllowed = notAllowed
		h.Records = append(h.Records, record.Record{ID: "sick", Date: h.Today - 2, What: record.Disease, Bed: "h3", Problem: "clubroot"},
			record.Record{ID: "old", Date: h.Today - 90, What: record.Disease, Bed: "h4", Problem: "clubroot"})
		all := derived(t, question(t, h, 14))
		j := must(t, all, "burn:sick")
		if j.Kind != want || slices.Contains(j.Tools, "matches") != (want == jobs.Burn) || !strings.HasPrefix(words.English().Text(j.Title), map[jobs.Kind]string{jobs.Burn: "Burn", "bin": "Bag"}[want]) {
			t.Errorf("%q: %+v", notAllowed, j)
		}
		if _, ok := find(all, "burn:old"); ok {
			t.Error("what was sick long ago is burnt")
		}
	}
}

// Cans take longer than a hose.
func TestCansTakeLonger(t *testing.T) {
	minutes := map[string]float64{}
	for _, notAllowed := range []string{"", "hoses"} {
		h := demotest.Holding(t, "")
		h.Sites[0].NotAllowed = notAllowed
		q := question(t, h, 7)
		q.Water = []jobs.Watering{{Bed: "h1", On: h.Today, Last: cal.None, Litres: 100, Why: words.P("jobs.why_heat", nil)}}
		for _, j := range derived(t, q) {
			if j.Kind == jobs.Water {
				minutes[notAllowed] = j.Minutes
			}
		}
	}
	// by hand: a minute to lay it out and ten for 100 L at 10 L a minute; twice that with cans
	if minutes[""] != 11 || minutes["hoses"] != 22 {
		t.Errorf("%v", minutes)
	}
}

// Feed goes with the water of the days about it, and what it is stirred into is not given
// twice.
func TestFeedGoesWithTheWater(t *testing.T) {
	q := spring(t, cal.Of(2027, 7, 12), fine, nil)
	alone := derived(t, q)
	at := slices.IndexFunc(alone, func(j jobs.Job) bool { return j.Kind == jobs.Feed && j.Best == q.Today })
	if at < 0 {
		t.Fatal("nothing is fed")
	}
	feed := alone[at]
	q.Water = []jobs.Watering{{Bed: feed.Stop.Bed, On: q.Today + 2, Last: cal.None, Litres: 100, Why: words.P("jobs.why_heat", nil)}}
	all := derived(t, q)
	with := must(t, all, feed.ID)
	if with.Best != q.Today+2 || with.Last < with.Best || len(with.Notes) != 1 {
		t.Errorf("%s to %s, %v", with.Best, with.Last, with.Notes)
	}
	given := 0.0
	for _, j := range all {
		if j.Stop == feed.Stop && len(j.Notes) > 0 && j.Notes[0].Key == "jobs.feed_with_water" {
			given += j.Amount.Litres
		}
		if j.Kind == jobs.Water {
			given += j.Amount.Litres
		}
	}
	if given < 99.9 || given > 100.1 {
		t.Errorf("%g L in all", given)
	}
}

// The last sensible day is what is told for the crop and place, and so early that the
// crop is ready before its ground is wanted.
func TestTheLastSensibleDay(t *testing.T) {
	h := demotest.Holding(t, "")
	q := question(t, h, 120)
	usual := must(t, derived(t, q), "sow:car-27t")
	q.LastDay = func(p *plan.Planting) (cal.Date, bool) { return p.Date + 9, true }
	j := must(t, derived(t, q), "sow:car-27t")
	if !j.Reckoned || usual.Reckoned || j.Last > j.Best+9 || j.Last < j.Best {
		t.Errorf("%s to %s, usually to %s", j.Best, j.Last, usual.Last)
	}
}

// A sowing of which nobody said anything for four weeks is taken for done; one that is
// skipped leaves nothing to be worked on.
func TestSilenceMeansDone(t *testing.T) {
	h := demotest.Holding(t, "")
	q := question(t, h, 540)
	sow := must(t, derived(t, q), "sow:car-27t")
	q.Today = sow.Best + 29
	q.LastDay = func(p *plan.Planting) (cal.Date, bool) { return p.Date + 200, true }
	if _, ok := find(derived(t, q), sow.ID); ok {
		t.Error("it is asked for four weeks later")
	}
	for _, j := range answered(t, aYear, say(sow.ID, record.Skipped, h.Today)) {
		if j.Planting == "car-27t" {
			t.Errorf("not sown, and there is %s", j.ID)
		}
	}
}

// Seedlings that were sown on another day are pricked out so much later.
func TestRaisingFollowsWhatWasDone(t *testing.T) {
	h := demotest.Holding(t, "")
	q := question(t, h, aYear)
	before := derived(t, q)
	at := slices.IndexFunc(before, func(j jobs.Job) bool { return j.Kind == jobs.PrickOut })
	if at < 0 {
		t.Fatal("nothing is pricked out")
	}
	p := before[at].Planting
	sown := must(t, before, "sow-indoors:"+p)
	late := sown.Best + 5
	h.Records = append(h.Records, record.Record{ID: "r", Date: late, What: record.Raised, Planting: p})
	after := derived(t, q)
	if j := must(t, after, before[at].ID); j.Best != before[at].Best+5 {
		t.Errorf("pricked out on %s, then on %s", before[at].Best, j.Best)
	}
	if _, ok := find(after, sown.ID); ok {
		t.Error("sown, and still to be sown")
	}
}
