package water

import (
	"strconv"
	"strings"
)

// waterFigure is a quantity of the second part of the paper that stands alone:
// coefficients, soil and stress.
func waterFigure(r row, x map[string]float64) (float64, bool) {
	stages := Stages{x["Lini"], x["Ldev"], x["Lmid"], x["Llate"]}
	switch q := r["quantity"]; q {
	case "rainy days":
		return x["rain_month"] / x["typical_event"], true
	case "interval between rains":
		return x["days"] / (x["rain_month"] / x["typical_event"]), true
	case "wetting interval":
		return 7 / x["events_per_week"], true
	case "Kc ini":
		return BetweenWettings(x["I"], x["Kc_fig29"], x["Kc_fig30a"]), true
	case "Kc ini wetted part":
		return BetweenWettings(x["Iw"], x["Kc_fig29"], x["Kc_fig30b"]), true
	case "Kc ini field":
		return x["fw"] * BetweenWettings(DepthWhereWet(12, x["fw"]), 0.85, 1.15), true // eq. 60
	case "Iw":
		return DepthWhereWet(x["I"], x["fw"]), true
	case "ETc ini":
		return x["Kc_ini"] * x["ETo"], true
	case "ETc":
		return initialOf[r["example"]](r, x) * x["ETo"], true
	case "Kc mid":
		if r["example"] == "45" {
			return x["Kc_mid"] * x["factor"], true
		}
		return AdjustedForClimate(x["Kc_mid_tab"], x["RHmin"], x["u2"], x["h"]), true
	case "Kc end":
		return x["Kc_end"] * x["factor"], true
	case "Kratio":
		return AdjustedForClimate(x["Kc_mid_alfalfa"], x["RHmin"], x["u2"], x["h"]), true
	case "Kcb mid":
		if r["example"] == "45" {
			return x["Kcb_mid"] * x["factor"], true
		}
		return AdjustedForClimate(x["Kcb_mid_tab"], x["RHmin"], x["u2"], x["h"]), true
	case "Kcb end":
		if r["example"] == "45" {
			return x["Kcb_end"] * x["factor"], true
		}
		return AdjustedForClimate(x["Kcb_end_tab"], 30, 2.2, 0.4), true
	case "Ks":
		if ya, known := x["Ya"]; known {
			return StressOfYield(ya/x["Ym"], x["Ky"]), true
		}
	case "Kc max":
		return MostCoefficient(x["Kcb"], x["RHmin"], x["u2"], x["h"]), true
	case "fc":
		return CoverOf(x["Kcb"], MostCoefficient(x["Kcb"], x["RHmin"], x["u2"], x["h"]), x["h"]), true
	case "few":
		return Bare(cotton(r, x)), true
	case "Ke":
		bare := Bare(cotton(r, x))
		return Evaporation(x["Kr"], MostCoefficient(x["Kcb"], x["RHmin"], x["u2"], x["h"]), x["Kcb"], bare), true
	case "few Kc max limit":
		return Bare(cotton(r, x)) * MostCoefficient(x["Kcb"], x["RHmin"], x["u2"], x["h"]), true
	case "Kc":
		switch r["example"] {
		case "32", "33", "34":
			bare := Bare(cotton(r, x))
			return x["Kcb"] + Evaporation(x["Kr"], MostCoefficient(x["Kcb"], x["RHmin"], x["u2"], x["h"]), x["Kcb"], bare), true
		}
		return decade(r, x), true
	case "TEW":
		return SurfaceOf(x["thetaFC"], x["thetaWP"], x["Ze"]), true
	case "TAW":
		s := Soil{Capacity: x["thetaFC"], Wilting: x["thetaWP"]}
		return s.HeldMM(x["Zr"]), true
	case "RAW":
		if held, known := x["TAW"]; known {
			return x["p"] * held, true
		}
		s := Soil{Capacity: x["thetaFC"], Wilting: x["thetaWP"]}
		return x["p"] * s.HeldMM(x["Zr"]), true
	default:
		if strings.HasPrefix(q, "Kcb day") {
			middle := AdjustedForClimate(1.10, 30, 2.2, 0.4) // of example 29, without rounding
			return stages.Coefficient(x["i"], x["Kcb_ini"], middle, x["Kcb_end"]), true
		}
		if strings.HasPrefix(q, "Kc day") {
			return stages.Coefficient(x["i"], x["Kc_ini"], x["Kc_mid"], x["Kc_end"]), true
		}
	}
	return 0, false
}

// initialOf is the coefficient of the rows that print what a crop loses.
var initialOf = map[string]func(row, map[string]float64) float64{
	"25": func(row, map[string]float64) float64 { return BetweenWettings(20, 0.55, 0.7) },
	"26": func(row, map[string]float64) float64 {
		return 0.4 * BetweenWettings(DepthWhereWet(12, 0.4), 0.85, 1.15)
	},
	"Fig 36": func(r row, _ map[string]float64) float64 {
		n, _ := strconv.ParseFloat(strings.Fields(strings.TrimPrefix(r["case"], "dry bean, decade "))[0], 64)
		return meanOf(beans, 10*(n-1), 10*n)
	},
}

// beans are the stages of the dry beans of example 28.
var beans = Stages{25, 25, 30, 20}

// decade is the mean coefficient of ten days of the beans.
func decade(r row, _ map[string]float64) float64 { return initialOf["Fig 36"](r, nil) }

func meanOf(s Stages, from, to float64) (mean float64) {
	const steps = 10000
	for i := range steps {
		mean += s.Coefficient(from+(to-from)*(float64(i)+0.5)/steps, 0.15, 1.19, 0.35) / steps
	}
	return mean
}

// cotton are the cover and the wetted share of examples 32 to 34.
func cotton(r row, x map[string]float64) (cover, wetted float64) {
	cover = CoverOf(x["Kcb"], MostCoefficient(x["Kcb"], x["RHmin"], x["u2"], x["h"]), x["h"])
	wetted = x["fw"]
	if r["example"] == "34" {
		wetted = UnderLeaves(wetted, cover)
	}
	return cover, wetted
}

// course is an example that runs through days, with the figures of each.
type course struct{ days map[int]map[string]float64 }

func (c *course) figure(r row) (float64, bool) {
	_, text, _ := strings.Cut(r["case"], "day ")
	n, err := strconv.Atoi(text)
	v, ok := c.days[n][r["quantity"]]
	return v, ok && err == nil
}

// courseOf runs the course that a row is a day of; nil for rows that stand alone.
func courseOf(known map[string]*course, r row, _ map[string]float64) *course {
	run := map[string]func() *course{"31": bareLoam, "35": cottonDried, "37": tomatoes, "38": cottonWatered}[r["example"]]
	if run == nil || !strings.Contains(r["case"], "day ") {
		return nil
	}
	if known[r["example"]] == nil {
		known[r["example"]] = run()
	}
	return known[r["example"]]
}

// step goes through one day and tells the figures that the paper prints of it.
func (c *course) step(n int, b *Balance, s *Soil, on *Stand, g *Given) {
	most := MostCoefficient(on.Basal, g.LeastPct, g.WindMS, on.HeightM)
	before := *b
	after := before
	after.wet(g)
	bare := Bare(on.Cover, after.wetted())
	drying := s.Drying(after.DryMM)
	soil := Evaporation(drying, most, on.Basal, bare)
	held := s.HeldMM(on.reachM())
	f := b.Day(s, on, g)
	figures := map[string]float64{
		"Kr": drying, "Ke": soil, "few": bare, "evaporation": f.EvaporatedMM, "E": f.EvaporatedMM, "E/few": f.EvaporatedMM / bare,
		"De start": after.DryMM, "De end": b.DryMM, "Kcb": on.Basal, "DPe": max(0, -(before.DryMM - g.RainMM - g.IrrigationMM/after.wetted())),
		"Kc": f.LostMM() / g.ReferenceMM, "ETc": f.LostMM(), "ETc adj": f.LostMM(), "Ks": f.Stress, "Zr": on.RootM,
		"RAW": on.Easy * held, "Dr start": after.MissingMM, "Dr end": b.MissingMM, "irrigation": g.IrrigationMM, "DP": f.DrainedMM,
	}
	if c.days == nil {
		c.days = map[int]map[string]float64{}
	}
	c.days[n] = figures
}

// bareLoam is example 31: loam that dries for days after a heavy rain.
func bareLoam() *course {
	c, b, s := &course{}, &Balance{}, &Soil{Capacity: 0.25, Wilting: 0.10, ReadyMM: 9, SurfaceMM: 20}
	for n := 1; n <= 10; n++ {
		c.step(n, b, s, &Stand{Basal: 0.15, RootM: 1, Easy: 0.5, Firm: true}, &Given{ReferenceMM: 4.5, WindMS: 2, LeastPct: 45})
	}
	return c
}

func cottonDried() *course   { return cottonDays(0) }
func cottonWatered() *course { return cottonDays(27) }

// cottonDays are examples 35 and 38: ten days on sandy loam, watered on the first,
// rained on on the sixth, and in 38 watered again on the tenth.
func cottonDays(tenthMM float64) *course {
	c, s := &course{}, &Soil{Capacity: 0.23, Wilting: 0.10, ReadyMM: 8, SurfaceMM: 18}
	asked := []float64{4.5, 5, 3.9, 4.2, 4.8, 2.7, 5.8, 5.1, 4.7, 5.2}
	b := &Balance{MissingMM: 0.6 * s.HeldMM(0.3), DryMM: 18}
	for n := 1; n <= 10; n++ {
		past := float64(n-1) / 9
		on := Stand{Basal: 0.30 + 0.10*past, Cover: 0.08 + 0.06*past, HeightM: 0.3, RootM: 0.30 + 0.05*past, Easy: 0.6, Firm: true}
		g := Given{ReferenceMM: asked[n-1], WindMS: 1.6, LeastPct: 35}
		switch n {
		case 1:
			g.IrrigationMM, g.Wetted = 40, 0.8
		case 6:
			g.RainMM = 6
		case 10:
			g.IrrigationMM, g.Wetted = tenthMM, 0.8
		}
		c.step(n, b, s, &on, &g)
	}
	return c
}

// tomatoes are example 37: on silt, without water.
func tomatoes() *course {
	c, b, s := &course{}, &Balance{MissingMM: 55, DryMM: 25}, &Soil{Capacity: 0.32, Wilting: 0.12, ReadyMM: 10, SurfaceMM: 25}
	for n := 1; n <= 10; n++ {
		c.step(n, b, s, &Stand{Basal: 1.2, Cover: 1, RootM: 0.8, Easy: 0.4, Firm: true}, &Given{ReferenceMM: 5, WindMS: 2, LeastPct: 45})
	}
	return c
}
