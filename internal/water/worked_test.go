package water

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/sun"
)

// TestEveryWorkedExample holds the program to every printed quantity of the worked
// examples, boxes and sampled tables of FAO-56: to half of the last printed digit, or,
// where the print does not follow from its own equations (reproduced is not yes), to
// the figure without rounding on the way.
func TestEveryWorkedExample(t *testing.T) {
	examples, courses := map[string]bool{}, map[string]*course{}
	for _, r := range workedRows(t) {
		x := input(t, r)
		var got float64
		var ok bool
		if c := courseOf(courses, r, x); c != nil {
			got, ok = c.figure(r)
		} else if got, ok = figure(r, x); !ok {
			got, ok = waterFigure(r, x)
		}
		if !ok {
			t.Errorf("example %s, %s, %s: nothing works it out", r["example"], r["case"], r["quantity"])
			continue
		}
		want, tolerance := r.number(t, "expected"), r.number(t, "tolerance")+1e-9
		if r["reproduced"] != "yes" {
			full := r["full"]
			want, _ = strconv.ParseFloat(full, 64)
			tolerance = 6e-6 * max(1, math.Abs(want)) // six digits are given
		}
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("example %s, %s, %s: %.6g, published %s (without rounding %s)", r["example"], r["case"], r["quantity"], got, r["expected"], r["full"])
		}
		examples[r["example"]] = true
	}
	for n := 2; n <= 38; n++ {
		if n != 21 && n != 22 && !examples[strconv.Itoa(n)] { // two forms to fill in, without figures
			t.Errorf("example %d is not held", n)
		}
	}
}

func workedRows(t *testing.T) []row {
	t.Helper()
	rows := allRows(t, "worked_examples.csv")
	if len(rows) < 600 {
		t.Fatalf("only %d rows", len(rows))
	}
	return rows
}

// input reads the inputs of a row, key=value;... ; texts are left out. Values of
// examples 28 to 30 that are told in words are filled in.
func input(t *testing.T, r row) map[string]float64 {
	t.Helper()
	x := map[string]float64{}
	for _, pair := range strings.Split(r["inputs"], ";") {
		name, text, found := strings.Cut(strings.TrimSpace(pair), "=")
		if !found {
			continue
		}
		text, _, _ = strings.Cut(text, " ")
		if above, below, divided := strings.Cut(text, "/"); divided {
			a, _ := strconv.ParseFloat(above, 64)
			b, _ := strconv.ParseFloat(below, 64)
			x[name] = a / b
			continue
		}
		if v, err := strconv.ParseFloat(text, 64); err == nil {
			x[name] = v
		}
	}
	if _, known := x["u2"]; !known && r["example"] == "18" {
		x["u2"] = climate.WindAt2M(10/3.6, 10)
	}
	return x
}

// dayOf is the weather of a day's example, and the radiation above the air.
func dayOf(x map[string]float64) (d climate.Day, above float64) {
	d = climate.Day{TMinC: x["Tmin"], TMaxC: x["Tmax"], WindMS: x["u2"]}
	above = sun.ExtraterrestrialMJ(x["lat"], int(x["J"]))
	saturated := MeanSaturationKPa(d.TMinC, d.TMaxC)
	switch {
	case x["ea"] > 0:
		d.HumidityPct = 100 * x["ea"] / saturated
	case x["RHmax"] > 0:
		d.HumidityPct = climate.HumidityFromExtremes(x["RHmax"], x["RHmin"], d.TMinC, d.TMaxC)
	case x["RHmean"] > 0:
		d.HumidityPct = x["RHmean"]
	default:
		d.HumidityPct = climate.HumidityFromDew(d.TMinC, d.TMinC, d.TMaxC)
	}
	switch {
	case x["n"] > 0:
		d.RadiationMJ = sun.AngstromMJ(above, x["n"], sun.DaylightH(x["lat"], int(x["J"])))
	case x["kRs"] > 0:
		d.RadiationMJ = sun.HargreavesMJ(above, d.TMinC, d.TMaxC, x["kRs"])
	}
	return d, above
}

// airOf is the air of a day's example, with what goes into the soil taken off.
func airOf(x map[string]float64) (Air, climate.Day, float64, float64) {
	d, above := dayOf(x)
	place := NewPlace(x["z"])
	clear := place.Cloudless(above, d.RadiationMJ)
	a := place.Air(&d, Light{RadiationMJ: d.RadiationMJ, Cloudless: clear, Sky: 1})
	a.WindMS = x["u2"]
	return a, d, above, clear
}

// figure is a quantity of the first part of the paper: radiation, air and reference
// evapotranspiration.
func figure(r row, x map[string]float64) (float64, bool) {
	if r["example"] == "19" {
		return hourFigure(r["quantity"], x)
	}
	a, d, above, clear := airOf(x)
	saturated := MeanSaturationKPa(d.TMinC, d.TMaxC)
	vapour := VapourKPa(d.HumidityPct, saturated)
	day := int(x["J"])
	soil := 0.0
	if _, known := x["Tmonth"]; known {
		soil = MonthSoilSinceMJ(x["Tmonth_prev"], x["Tmonth"])
	}
	quantity := r["quantity"]
	if within, evaporation := strings.CutSuffix(quantity, " as evaporation"); evaporation {
		if v, known := x[within]; known {
			return EvaporatedMM(v), true
		}
		v, ok := figure(row{"example": r["example"], "quantity": within}, x)
		return EvaporatedMM(v), ok
	}
	withSoil := a
	withSoil.AvailableMJ -= soil
	slope := SlopeKPaC(a.MeanC)
	resistance := slope + a.PsychrometricKPaC*(1+0.34*a.WindMS)
	switch quantity {
	case "atmospheric pressure P", "P":
		return PressureKPa(x["z"]), true
	case "psychrometric constant":
		return PsychrometricKPaC(PressureKPa(x["z"])), true
	case "e0(Tmax)", "e0(Tmin)", "e0(Tmean)", "e0(Twet)", "e0(T)":
		return climate.SaturationKPa(x[quantity[3:len(quantity)-1]]), true
	case "es":
		return saturated, true
	case "ea":
		if wet, known := x["Twet"]; known {
			return VapourOfWetBulbKPa(x["Tdry"], wet, PressureKPa(x["z"]), x["apsy"]), true
		}
		return vapour, true
	case "es-ea":
		return saturated - vapour, true
	case "RHmean implied":
		return (100 + 100*vapour/climate.SaturationKPa(d.TMaxC)) / 2, true // the paper's: half-way between the day's most and least
	case "RHmin implied":
		return 100 * vapour / climate.SaturationKPa(d.TMaxC), true
	case "latitude":
		if deg, known := x["deg"]; known {
			return (deg + x["min"]/60) * math.Pi / 180, true
		}
		return x["lat"] * math.Pi / 180, true
	case "J":
		return float64(cal.Of(2001, 9, 3).DayOfYear()), true
	case "day of year J":
		return float64(cal.Of(2001, int(x["month"]), int(x["day"])).DayOfYear()), true
	case "inverse relative distance dr":
		return sun.InverseDistance(day), true
	case "declination":
		return sun.Declination(day), true
	case "sunset hour angle":
		return sun.SunsetAngle(x["lat"], day), true
	case "sin(lat)sin(dec)":
		return math.Sin(x["lat"]*math.Pi/180) * math.Sin(sun.Declination(day)), true
	case "cos(lat)cos(dec)":
		return math.Cos(x["lat"]*math.Pi/180) * math.Cos(sun.Declination(day)), true
	case "Ra":
		return above, true
	case "N":
		return sun.DaylightH(x["lat"], day), true
	case "n":
		return x["sunshine_month"] / x["days"], true
	case "n/N":
		return x["n"] / sun.DaylightH(x["lat"], day), true
	case "Rs":
		return d.RadiationMJ, true
	case "Rso":
		if ra, known := x["Ra"]; known {
			return sun.ClearSkyMJ(ra, x["z"]), true
		}
		return sun.ClearSkyMJ(above, x["z"]), true
	case "Rs/Rso":
		return clear, true
	case "sigma TmaxK^4":
		return BlackBodyMJ(x["Tmax"]), true
	case "sigma TminK^4":
		return BlackBodyMJ(x["Tmin"]), true
	case "sigma TK^4":
		return BlackBodyMJ(x["T"]), true
	case "0.34-0.14 sqrt(ea)":
		return dampness(vapourOr(x, vapour)), true
	case "1.35 Rs/Rso - 0.35", "1.35 Rs/Rso-0.35":
		return clearing(clear), true
	case "Rnl":
		return NetLongMJ(d.TMinC, d.TMaxC, vapour, clear), true
	case "Rns":
		return NetShortMJ(d.RadiationMJ), true
	case "Rn":
		return a.AvailableMJ, true
	case "G":
		if _, known := x["T_May"]; known {
			return MonthSoilMJ(x["T_Mar"], x["T_May"]), true
		}
		return soil, true
	case "conversion factor":
		return climate.WindAt2M(1, x["z"]), true
	case "u2":
		if uz, known := x["uz"]; known {
			return climate.WindAt2M(uz, x["z"]), true
		}
		return x["u2"], true
	case "Tmean":
		return d.MeanC(), true
	case "slope of vapour pressure curve":
		return slope, true
	case "slope":
		return SlopeKPaC(x["T"]), true
	case "1+0.34 u2":
		return 1 + 0.34*a.WindMS, true
	case "D/[D+g(1+0.34u2)]":
		return slope / resistance, true
	case "g/[D+g(1+0.34u2)]":
		return a.PsychrometricKPaC / resistance, true
	case "900/(T+273) u2":
		return 900 / (a.MeanC + 273) * a.WindMS, true
	case "0.408(Rn-G)", "0.408 Rn":
		return EvaporatedMM(withSoil.AvailableMJ), true
	case "radiation term":
		v, _ := withSoil.terms()
		return v, true
	case "wind term":
		_, v := withSoil.terms()
		return v, true
	case "ETo":
		if r["equation"] == "52" {
			return 0.0023 * (x["Tmean"] + 17.8) * math.Sqrt(x["Tmax"]-x["Tmin"]) * EvaporatedMM(x["Ra"]), true
		}
		return withSoil.ReferenceMM(), true
	case "ETo if u2=1", "ETo if u2=3":
		withSoil.WindMS, _ = strconv.ParseFloat(quantity[len(quantity)-1:], 64)
		return withSoil.ReferenceMM(), true
	case "ETo Hargreaves":
		return HargreavesMM(d.TMinC, d.TMaxC, above), true
	}
	return 0, false
}

func vapourOr(x map[string]float64, worked float64) float64 {
	if v, known := x["ea"]; known {
		return v
	}
	return worked
}

// hourFigure is a quantity of example 19, the hours of N'Diaye.
func hourFigure(quantity string, x map[string]float64) (float64, bool) {
	const longitude, zone, day = -16.25, -15, 274
	lat := x["lat"]
	angle := sun.HourAngle(x["t"], longitude, zone, day)
	from, to := angle-math.Pi/24, angle+math.Pi/24
	above := sun.ExtraterrestrialHourMJ(lat, day, from, to)
	clearSky := sun.ClearSkyMJ(above, x["z"])
	clear := 0.8 // by night, that of the afternoon before (the paper's assumption)
	if clearSky > 0 {
		clear = Cloudless(x["Rs"], clearSky)
	}
	place := NewPlace(x["z"])
	h := Hour{MeanC: x["Thr"], HumidityPct: x["RHhr"], WindMS: x["u2"], RadiationMJ: x["Rs"], Cloudless: clear}
	a := place.HourAir(&h)
	saturated := climate.SaturationKPa(h.MeanC)
	vapour := VapourKPa(h.HumidityPct, saturated)
	net := NetShortMJ(h.RadiationMJ) - NetLongMJ(h.MeanC, h.MeanC, vapour, clear)/24
	switch quantity {
	case "latitude":
		return lat * math.Pi / 180, true
	case "dr":
		return sun.InverseDistance(day), true
	case "declination":
		return sun.Declination(day), true
	case "b":
		return 2 * math.Pi * (day - 81) / 364.0, true
	case "Sc":
		return sun.SeasonalH(day), true
	case "slope of vapour pressure curve":
		return SlopeKPaC(h.MeanC), true
	case "psychrometric constant":
		return a.PsychrometricKPaC, true
	case "e0(T)":
		return saturated, true
	case "ea":
		return vapour, true
	case "es-ea":
		return a.DeficitKPa, true
	case "solar time angle w":
		return angle, true
	case "w1":
		return from, true
	case "w2":
		return to, true
	case "Ra":
		return above, true
	case "Rso":
		return clearSky, true
	case "Rs/Rso":
		return clear, true
	case "Rns":
		return NetShortMJ(h.RadiationMJ), true
	case "sigma TK^4":
		return BlackBodyMJ(h.MeanC) / 24, true
	case "0.34-0.14 sqrt(ea)":
		return dampness(vapour), true
	case "1.35 Rs/Rso-0.35":
		return clearing(clear), true
	case "Rnl":
		return NetLongMJ(h.MeanC, h.MeanC, vapour, clear) / 24, true
	case "Rn":
		return net, true
	case "G":
		return HourSoilMJ(net), true
	case "Rn-G":
		return a.AvailableMJ, true
	case "0.408(Rn-G)":
		return EvaporatedMM(a.AvailableMJ), true
	case "radiation term":
		v, _ := a.hourTerms()
		return v, true
	case "wind term":
		_, v := a.hourTerms()
		return v, true
	case "ETo":
		return a.HourReferenceMM(), true
	}
	return 0, false
}
