package season_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/season"
	"garner/internal/sun"
)

// tropics is a place like that of the sorghum and cowpea trial.
func tropics(t *testing.T) *practice {
	t.Helper()
	var n climate.Normals
	for i := range n {
		n[i] = climate.MonthNormal{TMinC: 19, TMaxC: 29, RainMM: 90, RadiationMJ: climate.Is(18)}
	}
	at := sun.Location{LatitudeDeg: 6, LongitudeDeg: 36, ElevationM: 500}
	g, err := climate.NewGenerator(n, at)
	if err != nil {
		t.Fatal(err)
	}
	days := g.Days(3, 0, 0, first, (practiceYears+2)*366)
	return &practice{newField(t, at, days, season.Ground{Light: 1}), days}
}

// landEquivalent grows two uses mixed all through on the same ground, each with
// its rows further apart, and each alone with its own rows.
func (p *practice) landEquivalent(a, b *crop.Use, rowsA, rowsB float64, sa, sb growth.Start, month, day int) (la, lb float64) {
	give := func(o season.Outcome) (sum float64) {
		for _, kg := range o.Flow {
			sum += float64(kg)
		}
		if len(o.Standing) > 0 {
			sum += float64(o.Standing[0])
		}
		return sum
	}
	all := rowsA + rowsB
	made := func(u *crop.Use, s growth.Start, rows float64) *growth.Parameters {
		return growth.Prepare(growth.Spaced(u, 0, u.BetweenRowM*all/rows), s, true)
	}
	var mixed, alone [2]float64
	for y := 2001; y < 2001+practiceYears; y++ {
		at := func(params *growth.Parameters, shares int) season.Planting {
			return season.Planting{Parameters: params, Date: cal.Of(y, month, day), AreaM2: 1, ClearBy: cal.None, Shares: shares, Beneath: 1, Soil: 1}
		}
		draws := []growth.Draw{growth.Fair(a), growth.Fair(b)}
		m := p.runner.Run(p.sky, &p.beside, &season.Bed{Plantings: []season.Planting{at(made(a, sa, rowsA), -1), at(made(b, sb, rowsB), 0)}}, draws)
		s := p.runner.Run(p.sky, &p.beside, &season.Bed{Plantings: []season.Planting{
			at(made(a, sa, all), -1), at(made(b, sb, all), -1)}}, draws)
		for i := range m {
			mixed[i] += give(m[i])
			alone[i] += give(s[i])
		}
	}
	return mixed[0] / alone[0], mixed[1] / alone[1]
}

// measuredRatios are the land equivalent ratios of the sorghum and cowpea trial by
// rows of sorghum of five (Petersen 1994, Agricultural Field Experiments, p. 372).
func measuredRatios(t *testing.T) map[string]float64 {
	t.Helper()
	var sorghum, cowpea float64
	rows := readTrial(t, "sorghum_cowpea.csv")
	for _, r := range rows {
		if r["block"] == "NA" {
			sorghum, cowpea = max(sorghum, numberOf(t, r["syield"])), max(cowpea, numberOf(t, r["cyield"]))
		}
	}
	out := map[string]float64{}
	for _, r := range rows {
		if r["block"] != "NA" {
			out[r["srows"]] += (numberOf(t, r["syield"])/sorghum + numberOf(t, r["cyield"])/cowpea) / 4
		}
	}
	return out
}

// Four mixtures of rows gave ratios of 1.15 to 1.46. Sweetcorn stands in for
// sorghum, which is not in the book. Ours run high: only light is shared, not the
// water and food of the soil, and a crop that has come to full size stops.
func TestSorghumAndCowpea(t *testing.T) {
	corn, cowpea := useOf(t, "sweetcorn", "table"), useOf(t, "cowpea", "")
	p := tropics(t)
	least, most, ours := math.Inf(1), 0.0, 0.0
	for _, ratio := range measuredRatios(t) {
		least, most = min(least, ratio), max(most, ratio)
	}
	for _, rows := range [][2]float64{{1, 4}, {2, 3}, {3, 2}, {4, 1}} {
		a, b := p.landEquivalent(corn, cowpea, rows[0], rows[1], growth.FromSeed, growth.FromSeed, 3, 15)
		t.Logf("rows %v: %.2f + %.2f = %.2f, measured %.2f to %.2f", rows, a, b, a+b, least, most)
		ours += (a + b) / 4
		if a+b < least || a+b > most+0.25 {
			t.Errorf("rows %v: a land equivalent ratio of %.2f, measured %.2f to %.2f", rows, a+b, least, most)
		}
	}
	if ours > most+0.1 {
		t.Errorf("a mean land equivalent ratio of %.2f, measured %.2f to %.2f", ours, least, most)
	}
}

// Baumann, Kropff & Bastiaans 2000, Weed Research: leeks and celery in turn row by
// row gave 1.1 of the pure stands, and the leeks were the worse for it.
func TestLeekAndCelery(t *testing.T) {
	p := newPractice(t, cover.Open, 1)
	leek, celery := p.landEquivalent(useOf(t, "leek", "early"), useOf(t, "celery", ""), 1, 1, growth.FromPlant, growth.FromPlant, 5, 28)
	t.Logf("leek %.2f + celery %.2f = %.2f, measured 1.1", leek, celery, leek+celery)
	if math.Abs(leek+celery-1.1) > 0.2 || leek > celery {
		t.Errorf("leek %.2f and celery %.2f of the pure stands, measured 1.1 together", leek, celery)
	}
}

// Light beneath bulb onions: 69 % caught at a leaf area of 3.7, 45 % at 1.5
// (Brewster 2008, Table 4.2). An under-crop gets what is not caught, on the share
// of its ground that lies among the leaves.
func TestLightBeneathOnions(t *testing.T) {
	u := useOf(t, "onion", "seed")
	for leaf, caught := range map[float64]float64{3.7: 0.69, 1.5: 0.45} {
		beneath := 1 - outlook.UnderShare*growth.Intercepted(u.Extinction, leaf)
		t.Logf("leaf area %.1f: %.2f of the light beneath, measured %.2f", leaf, beneath, 1-caught)
		if math.Abs(beneath-(1-caught)) > 0.06 {
			t.Errorf("leaf area %.1f: %.2f of the light beneath, measured %.2f", leaf, beneath, 1-caught)
		}
	}
}
