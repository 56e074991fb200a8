package desk

import (
	"os"
	"path/filepath"
	"testing"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/sample"
)

func demo(t *testing.T) (*OutlookResult, *outlook.Table) {
	t.Helper()
	h := sampleHolding(t)
	o := OutlookOptions{Years: 60, Seed: 1}
	r, err := Outlook(h, o)
	if err != nil {
		t.Fatal(err)
	}
	table, err := Table(h, o)
	if err != nil {
		t.Fatal(err)
	}
	return r, table
}

func (r *OutlookResult) of(t *testing.T, name string) *VegetableTable {
	t.Helper()
	for i := range r.Vegetables {
		if r.Vegetables[i].Name == name {
			return &r.Vegetables[i]
		}
	}
	t.Fatalf("no %s at the table", name)
	return nil
}

// weeks sums a course over the weeks from a day to another.
func (r *OutlookResult) weeks(course []float64, from, to cal.Date) (sum float64) {
	for k, w := range r.Weeks {
		if w >= from && w < to {
			sum += course[k]
		}
	}
	return sum
}

// The demo shows what it is meant to show: a hungry gap, a glut, a store that
// runs out before its successor, and a sowing that is too late (docs/demo.md).
func TestDemoShowsGapGlutStoreAndLateSowing(t *testing.T) {
	r, table := demo(t)
	gap, harvest, n, m := 0.0, 0.0, 0.0, 0.0
	for k, w := range r.Weeks {
		switch {
		case w >= cal.Of(2027, 4, 19) && w < cal.Of(2027, 6, 7):
			gap, n = gap+r.Share[k], n+1
		case w >= cal.Of(2027, 8, 30) && w < cal.Of(2027, 12, 1):
			harvest, m = harvest+r.Share[k], m+1
		}
	}
	if gap/n > 0.6 || harvest/m < 0.7 || gap/n > harvest/m-0.25 {
		t.Errorf("home-grown %.2f in the hungry gap, %.2f in autumn", gap/n, harvest/m)
	}
	c := r.of(t, "courgette")
	if over, want := r.weeks(c.OverKg, cal.Of(2027, 7, 1), cal.Of(2027, 10, 1)), r.weeks(c.WantKg, cal.Of(2027, 7, 1), cal.Of(2027, 10, 1)); over < 0.5*want {
		t.Errorf("courgettes: %.1f kg to spare of %.1f wanted is no glut", over, want)
	}
	o := r.of(t, "onion")
	stored := r.weeks(o.StoredKg, cal.Of(2027, 1, 4), cal.Of(2027, 2, 15)) / r.weeks(o.WantKg, cal.Of(2027, 1, 4), cal.Of(2027, 2, 15))
	between := r.weeks(o.ShortKg, cal.Of(2027, 5, 3), cal.Of(2027, 6, 7)) / r.weeks(o.WantKg, cal.Of(2027, 5, 3), cal.Of(2027, 6, 7))
	after := r.weeks(o.FreshKg, cal.Of(2027, 6, 14), cal.Of(2027, 8, 1))
	if stored < 0.8 || between < 0.7 || after <= 0 {
		t.Errorf("onions: %.2f from store in winter, %.2f short in May, %.1f kg fresh in summer", stored, between, after)
	}
	for _, f := range table.Plantings {
		if f.Planting != "late-27" {
			continue
		}
		ready := 0
		for _, y := range f.Years {
			if y.Ready >= 0 {
				ready++
			}
		}
		if ready > len(f.Years)/5 {
			t.Errorf("the late carrots came ready in %d years of %d", ready, len(f.Years))
		}
	}
}

// Four eaters want 550-700 kg a year, and good mixed ground gives 2.6-4 kg a
// square metre (Harlow Carr 1975: 2.6 over a whole plot; common practice for the
// upper end): what is eaten and what goes over must agree with the ground.
func TestDemoWeightsAgree(t *testing.T) {
	h := sampleHolding(t)
	r, _ := demo(t)
	year := func(course []float64) float64 { return r.weeks(course, cal.Of(2027, 1, 4), cal.Of(2028, 1, 3)) }
	want, got, over := 0.0, 0.0, 0.0
	for i := range r.Vegetables {
		v := &r.Vegetables[i]
		want, got, over = want+year(v.WantKg), got+year(v.FreshKg)+year(v.StoredKg), over+year(v.OverKg)
	}
	area := 0.0
	for _, b := range h.Beds {
		area += b.AreaM2()
	}
	if want < 550 || want > 700 {
		t.Errorf("wanted %.0f kg a year", want)
	}
	if per := (got + over) / area; per < 2.4 || per > 4 {
		t.Errorf("%.0f kg eaten and %.0f over from %.0f m2: %.1f kg/m2", got, over, area, per)
	}
	if share := got / want; share < 0.65 || share > 0.92 {
		t.Errorf("home-grown %.2f of the year's table", share)
	}
}

// Files with a fault give no holding at all, and the files stay as they were.
func TestFaultyFilesGiveNoHolding(t *testing.T) {
	files, err := sample.Files("south")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, files); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "beds.csv")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	broken := append(text, []byte("bx,nowhere,X,bed,-1,1,1,fair,9\n")...)
	if err := os.WriteFile(path, broken, 0o644); err != nil {
		t.Fatal(err)
	}
	h, faults, _, err := OpenHolding(dir)
	if err != nil || h != nil || len(faults) == 0 {
		t.Errorf("holding %v, faults %v, %v", h, faults, err)
	}
	if after, _ := os.ReadFile(path); string(after) != string(broken) {
		t.Error("the files were changed")
	}
}
