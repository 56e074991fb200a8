package jobs_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/jobs"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// everyKind are the kinds of work that a grower may ask for, all of which must come
// about. Cold nights and dry beds are put to the weather; the rest is the demo's own.
var everyKind = []jobs.Kind{jobs.SowIndoors, jobs.Sow, jobs.Set, jobs.PlantOut, jobs.Replant, jobs.PrickOut, "pot-on", "harden-off", "chit", jobs.Cover, jobs.Net,
	jobs.Uncover, jobs.Vent, jobs.Shut, jobs.Protect, "thin", "earth-up", "stake", jobs.Strip, jobs.Feed, jobs.Water, jobs.Pick, jobs.Lift, "cure", "tie-up", jobs.Clear,
	"cuttings", jobs.Count, "hoe", "weed", jobs.Mulch, "slugs", "pinch-out", "side-shoot", "prune", "tie-in", "turn-heap", jobs.Compost, jobs.Lime, jobs.SowGreen,
	jobs.CutGreen, "wash-pots", jobs.Burn, "bin", jobs.Own}

// Every kind of work comes about in some week of a demo household, or of one with a sour
// bed, a planting that is moved, something sick and a job of its own; and there is no
// kind in the data that does not.
func TestEveryKindComesAbout(t *testing.T) {
	seen := map[jobs.Kind]bool{}
	for _, name := range []string{"", "south"} {
		h := demotest.Holding(t, name)
		note(seen, derived(t, question(t, h, aYear)))
	}
	frost := cal.Of(2027, 5, 28)
	h := written(t)
	q := question(t, h, aYear)
	q.Water = []jobs.Watering{{Bed: "h1", On: h.Today, Last: cal.None, Litres: 10, Why: words.P("jobs.why_heat", nil)}}
	note(seen, derived(t, q))
	h.Sites[0].NotAllowed = "fires"
	note(seen, derived(t, question(t, h, 28)))
	note(seen, derived(t, spring(t, frost, fine, map[cal.Date]func(*climate.Day){frost + 2: cold})))
	crisp := fine
	crisp.TMinC = 2
	note(seen, derived(t, spring(t, cal.Of(2027, 4, 10), crisp, nil)))
	for _, k := range everyKind {
		if !seen[k] {
			t.Errorf("%s never comes about", k)
		}
	}
	all, err := jobs.Kinds()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range all {
		if !seen[k] {
			t.Errorf("%s of the data never comes about", k)
		}
	}
}

func note(seen map[jobs.Kind]bool, all []jobs.Job) {
	for _, j := range all {
		seen[j.Kind] = true
	}
}

// written is the demo with what it has not: a sour bed, a moved planting, a mesh to come,
// something sick and a job of its own.
func written(t *testing.T) *holding.Holding {
	t.Helper()
	h := demotest.Holding(t, "")
	for i := range h.Beds {
		if h.Beds[i].ID == "h5" {
			h.Beds[i].PH = 5.2
		}
	}
	h.OwnJobs = append(h.OwnJobs, plan.OwnJob{ID: "gate", Name: "Oil the gate", Site: "home", Date: h.Today + 3, Until: cal.None})
	green, moved := plan.New("pha-27a", h.Plan), plan.New("lee-27m", h.Plan)
	green.Bed, green.Crop, green.Use, green.Method, green.Date, green.ClearBy, green.AreaM2 = "h10", "phacelia", "cover", plan.Seed, cal.Of(2027, 4, 10), cal.Of(2027, 5, 30), 1
	moved.Bed, moved.Crop, moved.Use, moved.Method, moved.Date, moved.ClearBy, moved.AreaM2 = "h2", "leek", "winter", plan.Plant, cal.Of(2027, 2, 15), cal.Of(2027, 4, 10), 1
	moved.Relation, moved.To = plan.Moved, "lee-26"
	h.Plantings = append(h.Plantings, green, moved)
	h.Records = append(h.Records, record.Record{ID: "sick", Date: h.Today - 3, What: record.Disease, Bed: "h1"})
	h.Covers = append(h.Covers, place.CoverSpell{ID: "mesh-27", Bed: "h5", Spell: cover.Spell{Kind: cover.Mesh, On: h.Today + 100, Off: h.Today + 160}})
	return h
}
