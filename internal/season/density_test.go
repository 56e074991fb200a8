package season_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/season"
)

// readTrial reads a trial of testdata/density, a map for each row.
func readTrial(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/density/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range rows[1:] {
		row := map[string]string{}
		for i, name := range rows[0] {
			row[name] = r[i]
		}
		out = append(out, row)
	}
	return out
}

func numberOf(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// atDensity is a use with so many plants to the m2, in the rows of the book.
func atDensity(u *crop.Use, perM2 float64) *crop.Use {
	return growth.Spaced(u, 1/(perM2*u.BetweenRowM), 0)
}

// readyKgM2 is the weight on the day it is ready, by area, mean of the years.
func readyKgM2(p *practice, u *crop.Use, s growth.Start, month, day int) float64 {
	sum, n := 0.0, 0
	p.everyYear(u, s, month, day, func(_ int, _ cal.Date, o season.Outcome) {
		if len(o.Standing) > 0 {
			sum += float64(o.Standing[0])
			n++
		}
	})
	return sum / float64(n) / (1 - u.StandLoss)
}

// Ratkowsky 1983, Nonlinear Regression Modeling: onion bulbs at 84 densities of 19
// to 185 plants a m2 on two South Australian sites. The sites differ in yield, so
// what is held against them is how weight falls with density.
func TestOnionsAtManyDensities(t *testing.T) {
	u := *useOf(t, "onion", "sets")
	u.UsableG = 0 // a bulb of any size is weighed
	p := newPractice(t, cover.Open, 1)
	var at, bulb []float64
	for d := 15.0; d < 220; d *= 1.2 {
		at = append(at, math.Log(d))
		bulb = append(bulb, math.Log(1000*readyKgM2(p, atDensity(&u, d), growth.FromSet, 3, 25)/d))
	}
	model := func(density float64) float64 {
		x := math.Log(density)
		for i := 1; i < len(at); i++ {
			if x <= at[i] {
				return bulb[i-1] + (bulb[i]-bulb[i-1])*(x-at[i-1])/(at[i]-at[i-1])
			}
		}
		return bulb[len(bulb)-1]
	}
	gaps := map[string][]float64{}
	for _, row := range readTrial(t, "onions.csv") {
		gaps[row["loc"]] = append(gaps[row["loc"]], math.Log(numberOf(t, row["yield"]))-model(numberOf(t, row["density"])))
	}
	for site, g := range gaps {
		mean, spread := moments(g)
		t.Logf("site %s: bulbs %.0f %% of ours, %.0f %% apart", site, 100*math.Exp(mean), 100*spread)
		if spread > 0.2 {
			t.Errorf("site %s: weights %.0f %% off the measured fall with density", site, 100*spread)
		}
		if math.Abs(mean) > 0.7 {
			t.Errorf("site %s: bulbs %.2f of ours", site, math.Exp(mean))
		}
	}
}

func moments(v []float64) (mean, deviation float64) {
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		deviation += (x - mean) * (x - mean) / float64(len(v))
	}
	return mean, math.Sqrt(deviation)
}

// Mead 1988, The Design of Experiments, example 12.3: turnips by seed rate and row
// spacing. From 8 to 32 lb of seed an acre the yield of a plot levels off (law of
// constant final yield).
func TestTurnipsLevelOff(t *testing.T) {
	mean := map[string]float64{}
	for _, row := range readTrial(t, "turnips.csv") {
		mean[row["density"]] += math.Exp(numberOf(t, row["yield"])) / 12
	}
	measured := mean["32"] / mean["8"]
	u := *useOf(t, "turnip", "table")
	u.UsableG = 0
	p := newPractice(t, cover.Open, 1)
	close := readyKgM2(p, atDensity(&u, 2*u.PlantsPerM2()), growth.FromSeed, 4, 15)
	closer := readyKgM2(p, atDensity(&u, 8*u.PlantsPerM2()), growth.FromSeed, 4, 15)
	t.Logf("four times as many plants give %.2f times the yield, measured %.2f", closer/close, measured)
	if got := closer / close; math.Abs(got-measured) > 0.4 || got < 0.95 {
		t.Errorf("four times as many plants give %.2f times the yield by area, measured %.2f", got, measured)
	}
}

// Plants with twice the room have larger leaf each and less leaf together, closer
// plants no more than a full stand, for every crop.
func TestSparseStandsHaveLessLeaf(t *testing.T) {
	everyUse(t, func(u *crop.Use, _ growth.Start) {
		sparse := growth.Spaced(u, u.InRowM*2, 0)
		if sparse.LeafMax >= u.LeafMax || 2*sparse.LeafMax <= u.LeafMax {
			t.Errorf("%s %s: a leaf area of %.2f at most in twice the room, %.2f in its own", u.Crop, u.Name, sparse.LeafMax, u.LeafMax)
		}
		if close := growth.Spaced(u, u.InRowM/2, 0); close.LeafMax != u.LeafMax {
			t.Errorf("%s %s: a leaf area of %.2f at most in half the room, %.2f in its own", u.Crop, u.Name, close.LeafMax, u.LeafMax)
		}
	})
}

// Pederson 2015: young lettuce on rafts at 9, 18 and 36 plants, weighed over 40
// winter days. The raft's size is not told, so only the fall of growth from the
// widest to the closest is held: small, as plants that do not yet meet.
func TestYoungLettucesHardlyCompete(t *testing.T) {
	weight := map[[2]string]float64{}
	for _, row := range readTrial(t, "lettuces.csv") {
		weight[[2]string{row["trt"], row["day"]}] += numberOf(t, row["weight"]) / 18
	}
	gain := func(trt string) float64 { return weight[[2]string{trt, "40"}] - weight[[2]string{trt, "1"}] }
	measured := gain("T3") / gain("T1")
	u := useOf(t, "lettuce", "heart")
	plant := func(perM2 float64) float64 {
		params := growth.Prepare(atDensity(u, perM2), growth.FromPlant, true)
		s := growth.Begin(params, growth.Fair(u))
		a := growth.NewAir(climate.Day{TMinC: 18, TMaxC: 22, RadiationMJ: 2.5}, 20, 1, 20, 9.5)
		for range 40 {
			s.Rates(params, &a, a.PARMJ, 1)
			s.Integrate(params)
		}
		return s.PieceG(params)
	}
	got := plant(48) / plant(12)
	t.Logf("four times as close: %.2f of the growth, measured %.2f", got, measured)
	if got >= 1 || got < measured-0.35 {
		t.Errorf("four times as close: %.2f of the growth, measured %.2f", got, measured)
	}
}

// Closer plants are each smaller and together no less; more room makes larger
// plants that together yield less, for every crop that is pulled.
func TestSpacing(t *testing.T) {
	p := newPractice(t, cover.Open, 1)
	everyUse(t, func(u *crop.Use, s growth.Start) {
		if u.Pattern != crop.Pull {
			return
		}
		day, err := cal.ParseMonthDay(u.ReferenceDate)
		if err != nil {
			t.Fatal(err)
		}
		own := *u
		own.UsableG = 0
		usual := readyKgM2(p, &own, s, day.Month, day.Day)
		close := readyKgM2(p, growth.Spaced(&own, own.InRowM/2, 0), s, day.Month, day.Day)
		wide := readyKgM2(p, growth.Spaced(&own, own.InRowM*2, 0), s, day.Month, day.Day)
		if math.IsNaN(usual) || math.IsNaN(close) || math.IsNaN(wide) {
			return // not a crop of this place
		}
		if close/2 > usual*1.001 || close < 0.9*usual {
			t.Errorf("%s %s: %.2f kg/m2 at half the room, %.2f at all of it", u.Crop, u.Name, close, usual)
		}
		if wide > usual*1.05 || 2*wide < usual*0.999 {
			t.Errorf("%s %s: %.2f kg/m2 at twice the room, %.2f at the usual", u.Crop, u.Name, wide, usual)
		}
	})
}
