package jobs_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/jobs"
	"garner/internal/soilcare"
)

// Manure may stand in for compost only where nothing is picked for as long as raw manure
// asks (7 CFR 205.203: 90 days, 120 where what is eaten touches the soil) and no roots
// follow that fork.
func TestManureInPlaceOfCompost(t *testing.T) {
	said, unsaid := 0, 0
	for _, month := range []int{1, 10} {
		h := demotest.Holding(t, "")
		h.Today = cal.Of(2027, month, 4)
		q := question(t, h, 120)
		all := derived(t, q)
		for _, j := range all {
			if j.Kind != jobs.Compost {
				continue
			}
			if len(j.Notes) == 0 || j.Notes[len(j.Notes)-1].Key != "jobs.or_manure" {
				unsaid++
				continue
			}
			said++
			on := j.Due(q.Today)
			for _, p := range all {
				days, err := soilcare.HarvestAfter("carrot")
				if err != nil || days != 120 {
					t.Fatal(days, err)
				}
				if p.Stop.Bed == j.Stop.Bed && p.Kind == jobs.Pick && p.Best >= on && p.Best < on+90 {
					t.Errorf("%s on %s says manure, and %s is picked on %s", j.ID, on, p.Planting, p.Best)
				}
			}
			for _, p := range q.Plantings {
				if forks, err := soilcare.Forks(p.Crop); err != nil || forks && p.Bed == j.Stop.Bed && p.Date >= on && p.Date < on+180 {
					t.Errorf("%s on %s says manure, and %s is sown on %s", j.ID, on, p.Crop, p.Date)
				}
			}
		}
	}
	if said == 0 || unsaid == 0 {
		t.Errorf("said of %d beds, not of %d", said, unsaid)
	}
}
