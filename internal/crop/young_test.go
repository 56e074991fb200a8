package crop

import (
	"testing"
)

// No crop's young plants are hardier than its grown ones unless its own facts say why,
// or the figure is that of its class, which is fitted to the dates on which people sow:
// those are listed, so that no other comes in unseen, and none stays that is mended.
func TestYoungPlantsAreNotHardierUnlessToldSo(t *testing.T) {
	listed := map[string]bool{}
	for _, r := range readTestdata(t, "hardier_young.csv") {
		if r["why"] == "" {
			t.Errorf("%s %s says no why", r["crop"], r["use"])
		}
		listed[r["crop"]+" "+r["use"]] = true
	}
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			name := c.ID + " " + u.Name
			if u.KillYoungC >= u.KillC {
				if listed[name] {
					t.Errorf("%s is listed, and its young are no hardier", name)
				}
				continue
			}
			f := u.Fact("kill_young_c")
			told := f.Mark != "fitted" && f.Note != ""
			if told == listed[name] {
				t.Errorf("%s: young plants die at %g C, grown ones at %g C; told why %v, listed %v", name, u.KillYoungC, u.KillC, told, listed[name])
			}
		}
	}
}
