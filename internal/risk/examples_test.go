package risk

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
)

// Left out of the worked examples, with why.
var leftOut = map[string]string{
	"negative_prognosis": "the sums of negative prognosis are not built: their coefficients could not be read",
	"negfry":             "as above",
	"magarey":            "numbers for no fungus; no rule uses it",
	"carrot_threshold":   "counts leaves, not weather",
}

func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range all[1:] {
		m := map[string]string{}
		for i, h := range all[0] {
			m[h] = r[i]
		}
		out = append(out, m)
	}
	return out
}

func ruleNamed(t *testing.T, id string) *Rule {
	t.Helper()
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	r, ok := b.Rule(id)
	if !ok {
		t.Fatalf("no rule %s", id)
	}
	return r
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// named reads a=1;b=2.
func named(t *testing.T, inputs string) map[string]float64 {
	out := map[string]float64{}
	for _, part := range strings.Split(inputs, ";") {
		if name, value, ok := strings.Cut(part, "="); ok {
			if v, err := strconv.ParseFloat(value, 64); err == nil {
				out[name] = v
			}
		}
	}
	return out
}

// pairs reads the days after a heading: 6/0;7/1.
func pairs(t *testing.T, inputs string) (out [][2]float64) {
	_, list, _ := strings.Cut(inputs, ": ")
	for _, p := range strings.Split(list, ";") {
		a, b, _ := strings.Cut(p, "/")
		out = append(out, [2]float64{number(t, a), number(t, b)})
	}
	return out
}

func list(t *testing.T, s string) (out []float64) {
	for _, p := range strings.Split(s, ";") {
		out = append(out, number(t, p))
	}
	return out
}

// air makes an hourly record from a day on by a function of the hour since then.
func air(days int, at func(hour int) climate.Hour) *Weather {
	var hours []climate.Hour
	for i := range 24 * days {
		h := at(i)
		h.Date, h.Hour = cal.Of(2027, 7, 1)+cal.Date(i/24), i%24
		hours = append(hours, h)
	}
	return New(hours)
}

func firedAt(r *Rule, w *Weather, at int) bool {
	for _, x := range r.Fired(w, Options{Since: cal.None}) {
		if int(x.Date-cal.Of(2027, 7, 1)) == at {
			return true
		}
	}
	return false
}

// Every worked example of the reference, save those told in leftOut.
// Source: testdata/README.md.
func TestWorkedExamples(t *testing.T) {
	done := 0
	for _, row := range rows(t, "worked_examples.csv") {
		model, in, want := row["model_id"], row["inputs"], row["expected"]
		check, ok := examples[model]
		if !ok {
			if leftOut[model] == "" {
				t.Errorf("%s: no check for %s", row["example_id"], model)
			}
			continue
		}
		done++
		tolerance, err := strconv.ParseFloat(row["tolerance"], 64)
		if err != nil {
			tolerance = 0
		}
		if got := check(t, in, want, tolerance); got != "" {
			t.Errorf("%s %s, %s: want %s, %s", row["example_id"], model, in, want, got)
		}
	}
	if done < 175 {
		t.Errorf("only %d examples were held against", done)
	}
}

// near tells how far off a number is, "" when it is within tolerance.
func near(t *testing.T, want string, got, tolerance float64) string {
	if v := number(t, want); math.Abs(v-got) > tolerance+1e-9 {
		return "got " + strconv.FormatFloat(got, 'g', 6, 64)
	}
	return ""
}

// yes holds a rule's firing against words.
func yes(want string, fired bool, no ...string) string {
	expect := true
	for _, n := range no {
		expect = expect && !strings.HasPrefix(want, n)
	}
	if fired != expect {
		return "fired " + strconv.FormatBool(fired)
	}
	return ""
}

var numeral = regexp.MustCompile(`-?\d+(\.\d+)?`)

// first is the first number in a text.
func first(t *testing.T, s string) float64 { return number(t, numeral.FindString(s)) }

type check func(t *testing.T, in, want string, tolerance float64) string

var examples map[string]check

func init() {
	examples = map[string]check{
		"wallin":                looked("wallin", "meanT_RH90", "hours_RH90"),
		"cercospora_beet":       looked("cercospora", "meanT", "hours"),
		"tomcast":               tomcastExample,
		"hutton":                daysExample("hutton"),
		"smith":                 daysExample("smith"),
		"beaumont":              beaumontExample,
		"irish":                 irishExample,
		"blitecast":             blitecastExample,
		"pdays":                 pdaysExample,
		"tomcast_carrot":        carrotExample,
		"gubler_thomas":         mildewExample,
		"botrytis_fruit":        fruitExample,
		"lwd_cart":              treeExample,
		"lwd_rh90":              wetExample("RH", ByHumidity),
		"lwd_dpd":               wetExample("T-Td", ByDewPoint),
		"lettuce_dm":            lettuceExample,
		"lettuce_dm_T":          lettuceWarmExample,
		"downcast_devisser":     downcastExample,
		"milioncast_inhibition": heatExample,
		"botcast":               botcastExample,
		"dark_leaf_spot_inf":    spellExample("dark-leaf-spot-infection"),
		"white_blister":         spellExample("white-blister"),
		"hyre":                  hyreExample,
	}
}

func looked(rule, mean, hours string) check {
	return func(t *testing.T, in, want string, tolerance float64) string {
		v := named(t, in)
		return near(t, want, float64(ruleNamed(t, rule).table.value(v[mean], int(v[hours]))), tolerance)
	}
}

func tomcastExample(t *testing.T, in, want string, tolerance float64) string {
	v := named(t, in)
	wants := numeral.FindAllString(want, -1)
	if len(wants) == 1 {
		wants = append(wants, wants[0])
	}
	for i, id := range []string{"tomcast", "tomcast-wisconsin"} {
		if off := near(t, wants[i], float64(ruleNamed(t, id).table.value(v["meanT_wet"], int(v["wet_hours"]))), tolerance); off != "" {
			return id + " " + off
		}
	}
	return ""
}

// daysExample makes days with the night and the humid hours of the example.
func daysExample(rule string) check {
	return func(t *testing.T, in, want string, _ float64) string {
		days := pairs(t, in)
		w := air(len(days), func(h int) climate.Hour {
			d := days[h/24]
			x := climate.Hour{TempC: d[0] + float64(h%24)/4, HumidityPct: 80}
			if float64(h%24) < d[1] {
				x.HumidityPct = 90
			}
			return x
		})
		for i, fires := range list(t, want) {
			if firedAt(ruleNamed(t, rule), w, i) != (fires == 1) {
				return "differs on day " + strconv.Itoa(i+1)
			}
		}
		return ""
	}
}

func beaumontExample(t *testing.T, in, want string, _ float64) string {
	n := int(first(t, in))
	w := air(4, func(h int) climate.Hour {
		x := climate.Hour{TempC: 9.9, HumidityPct: 75}
		if h < n {
			x.TempC = 12
			if strings.Contains(in, "T=10.0") {
				x.TempC = 10
			}
		}
		if strings.Contains(in, "in hour 30") && h == 29 {
			x.HumidityPct = 74
		}
		return x
	})
	fired := len(ruleNamed(t, "beaumont").Fired(w, Options{Since: cal.None})) > 0
	return yes(want, fired, "0")
}

func irishExample(t *testing.T, in, want string, tolerance float64) string {
	n := int(first(t, in))
	w := air(3, func(h int) climate.Hour {
		x := climate.Hour{TempC: 12, HumidityPct: 85}
		if h >= 6 && h < 6+n {
			x.HumidityPct = 92
		}
		if strings.Contains(in, "rain in hour 13") && h == 6+12 {
			x.RainMM = 1
		}
		return x
	})
	most := 0.0
	fired := false
	for _, r := range ruleNamed(t, "irish").Readings(w, Options{Since: cal.None}) {
		most = max(most, r.Value)
		fired = fired || r.Fired
	}
	if fired != strings.Contains(want, "-> warning") {
		return "warned " + strconv.FormatBool(fired)
	}
	return near(t, numeral.FindString(strings.Replace(want, "from hour 16", "", 1)), most, tolerance)
}

var bracket = regexp.MustCompile(`days (<|>)(\d+); severity values (>?)(\d+)`)

func blitecastExample(t *testing.T, in, want string, tolerance float64) string {
	m := bracket.FindStringSubmatch(in)
	rain, severity := 0, int(number(t, m[4]))
	if m[1] == ">" {
		rain = 5
	}
	if m[3] == ">" {
		severity++
	}
	return near(t, want, float64(messageOf(ruleNamed(t, "blitecast").cells, rain, severity)), tolerance)
}

func pdaysExample(t *testing.T, in, want string, tolerance float64) string {
	a := &asked{Rule: ruleNamed(t, "pdays")}
	if strings.HasPrefix(in, "P(") {
		return near(t, want, a.pValue(first(t, in)), tolerance)
	}
	if strings.Contains(in, "T4=Tmax") {
		other := *a.Rule
		other.values = map[string]float64{"low_c": 7, "best_c": 21, "high_c": 30, "last_maximum": 1}
		a.Rule = &other
	}
	v := named(t, in)
	return near(t, want, a.pDay(v["Tmin"], v["Tmax"]), tolerance)
}

// carrotExample takes from the record of days with given severity values.
func carrotExample(t *testing.T, _, _ string, _ float64) string {
	hours := map[int]int{2: 9, 3: 16, 4: 23} // wet hours at 20 C
	days := []int{3, 3, 4, 2, 4, 4, 2}
	w := air(len(days), func(h int) climate.Hour {
		x := climate.Hour{TempC: 20, HumidityPct: 80}
		if h%24 < hours[days[h/24]] {
			x.HumidityPct = 95
		}
		return x
	})
	var sums []float64
	for i, r := range ruleNamed(t, "carrot-leaf-blight").Readings(w, Options{Since: cal.None}) {
		sums = append(sums, r.Sum)
		if r.Fired != (i == 5) {
			return "fires on the wrong day"
		}
	}
	for i, want := range []float64{3, 6, 10, 12, 16, 20, 2} {
		if sums[i] != want {
			return "sums differ"
		}
	}
	return ""
}

func mildewExample(t *testing.T, in, want string, _ float64) string {
	days := pairs(t, in)
	w := air(len(days), func(h int) climate.Hour {
		d, x := days[h/24], climate.Hour{TempC: 15, HumidityPct: 60}
		switch at := float64(h % 24); {
		case at >= 8 && at < 8+d[0]:
			x.TempC = 25
		case h%24 == 23 && d[1] == 1:
			x.TempC = 36
		}
		return x
	})
	readings := ruleNamed(t, "powdery-mildew").Readings(w, Options{Since: cal.None})
	for i, index := range list(t, want) {
		if readings[i].Sum != index {
			return "got " + strconv.FormatFloat(readings[i].Sum, 'g', -1, 64) + " on day " + strconv.Itoa(i+1)
		}
	}
	return ""
}

func fruitExample(t *testing.T, in, want string, tolerance float64) string {
	v := named(t, in)
	a := &asked{Rule: ruleNamed(t, "grey-mould")}
	return near(t, want, a.infectedShare(v["W"], v["T"]), tolerance)
}

func treeExample(t *testing.T, in, want string, _ float64) string {
	v := named(t, in)
	return yes(want, treeWet(v["T"], v["RH"], v["wind"], v["DPD"]), "0")
}

// wetExample holds a row of hours against the wet ones.
func wetExample(what string, by Wetness) check {
	return func(t *testing.T, in, want string, _ float64) string {
		_, values, _ := strings.Cut(in, what+" ")
		wants, _, _ := strings.Cut(want, " ->")
		var hours []climate.Hour
		for _, v := range list(t, strings.ReplaceAll(values, ",", ";")) {
			h := climate.Hour{TempC: 20, HumidityPct: v}
			if by == ByDewPoint { // the humidity at which the dew point is so far off
				h.HumidityPct = 100 * climate.SaturationKPa(20-v) / climate.SaturationKPa(20) * (1 + 1e-12)
			}
			hours = append(hours, h)
		}
		wet := wetHours(hours, by)
		for i, w := range list(t, wants) {
			if wet[i] != (w == 1) {
				return "differs in hour " + strconv.Itoa(i+1)
			}
		}
		return ""
	}
}

var clock = regexp.MustCompile(`\d\d:00`)

func clockHour(s string) int { n, _ := strconv.Atoi(s[:2]); return n }

func lettuceExample(t *testing.T, in, want string, _ float64) string {
	at := clock.FindAllString(in, -1)
	from, to := clockHour(at[0]), clockHour(at[1])
	w := air(1, func(h int) climate.Hour {
		x := climate.Hour{TempC: 14, HumidityPct: 80}
		if h >= from && h < to {
			x.HumidityPct = 95
		}
		return x
	})
	return yes(want, firedAt(ruleNamed(t, "lettuce-downy"), w, 0), "no ")
}

func lettuceWarmExample(t *testing.T, in, want string, _ float64) string {
	n := numeral.FindAllString(strings.ReplaceAll(in, "11:00", ""), -1)
	w := air(1, func(h int) climate.Hour {
		x := climate.Hour{TempC: 14, HumidityPct: 80}
		switch {
		case h >= 6 && h < 9:
			x.TempC = number(t, n[1])
		case h >= 9:
			x.TempC = number(t, n[3])
		}
		if h < 11 {
			x.HumidityPct = 95
		}
		return x
	})
	return yes(want, firedAt(ruleNamed(t, "lettuce-downy-warm"), w, 0), "no ")
}

// downcastExample starts from the example's good night, that of the second day, and
// changes what the example changes.
func downcastExample(t *testing.T, in, want string, _ float64) string {
	w := air(5, func(h int) climate.Hour {
		x := climate.Hour{TempC: 14, HumidityPct: 70}
		if h < 24 {
			x.TempC = 20 + 4*float64(h%2) // at most 24
		}
		switch {
		case h >= 22 && h < 30:
			x.TempC, x.HumidityPct = 14, 93
		case h >= 30 && h < 33:
			x.HumidityPct = 95
		}
		switch {
		case strings.Contains(in, "rain at 03:00") && h == 27:
			x.RainMM = 1
		case strings.Contains(in, "day >27") && h >= 11 && h < 17:
			x.TempC = 28
		case strings.Contains(in, "leaf dry from 06:00") && h >= 30:
			x.HumidityPct = 70
		case strings.Contains(in, "T 28") && h >= 22 && h < 30:
			x.TempC = 28
		case strings.Contains(in, "RH 91") && h >= 22 && h < 30:
			x.HumidityPct = 91
		}
		return x
	})
	most, infected := 0.0, false
	for _, r := range ruleNamed(t, "downcast").Readings(w, Options{Since: cal.None}) {
		most = max(most, r.Value)
		infected = infected || r.Fired
	}
	switch {
	case strings.HasPrefix(want, "sporulation and infection"):
		return yes("", infected && most == 2)
	case strings.HasPrefix(want, "sporulation only"):
		return yes("", !infected && most == 1)
	}
	return yes("", !infected && most == 0)
}

var hoursAbove = regexp.MustCompile(`>(\d+) for (\d+) h`)

func heatExample(t *testing.T, in, want string, _ float64) string {
	above := map[int]int{}
	for _, m := range hoursAbove.FindAllStringSubmatch(in, -1) {
		above[int(number(t, m[1]))] = int(number(t, m[2]))
	}
	w := air(2, func(h int) climate.Hour {
		x := climate.Hour{TempC: 18, HumidityPct: 70}
		if strings.Contains(in, "mean 21") { // 26 for nine hours, 18 for fifteen
			if h%24 >= 9 && h%24 < 18 {
				x.TempC = 26
			}
		}
		for limit, n := range above {
			if h%24 >= 8 && h%24 < 8+n {
				x.TempC = max(x.TempC, float64(limit)+0.5)
			}
		}
		return x
	})
	a := &asked{Rule: ruleNamed(t, "downcast-heat"), w: w}
	return yes(want, a.stoppedByHeat(1), "not")
}

var wetFor = regexp.MustCompile(`wet (\d+) h(?: at (\d+) C)?`)

func botcastExample(t *testing.T, in, want string, tolerance float64) string {
	m := wetFor.FindStringSubmatch(in)
	wet, temp := int(number(t, m[1])), 18.0
	if m[2] != "" {
		temp = number(t, m[2])
	}
	w := air(3, func(h int) climate.Hour {
		x := climate.Hour{TempC: temp, HumidityPct: 80}
		switch {
		case strings.Contains(in, "hot in last 5 days") && h < 5:
			x.TempC = 31
		case strings.Contains(in, "previous day dry") && h >= 24 && h < 34:
			x.HumidityPct = 60
		}
		if h >= 48 && h < 48+wet {
			x.HumidityPct = 95
		}
		return x
	})
	readings := ruleNamed(t, "botcast").Readings(w, Options{Since: cal.None})
	all := numeral.FindAllString(want, -1)
	return near(t, all[len(all)-1], readings[2].Value, tolerance)
}

func spellExample(rule string) check {
	return func(t *testing.T, in, want string, _ float64) string {
		m := wetFor.FindStringSubmatch(in)
		w := air(1, func(h int) climate.Hour {
			x := climate.Hour{TempC: number(t, m[2]), HumidityPct: 80}
			if h >= 3 && h < 3+int(number(t, m[1])) {
				x.HumidityPct = 95
			}
			return x
		})
		return yes(want, firedAt(ruleNamed(t, rule), w, 0), "no")
	}
}

func hyreExample(t *testing.T, in, want string, _ float64) string {
	n := numeral.FindAllString(in, -1) // 5-day mean 20, 10-day rain 31, Tmin 12
	a := &asked{Rule: ruleNamed(t, "hyre")}
	return yes(want, a.favourable(number(t, n[1]), number(t, n[3]), number(t, n[4])), "not")
}
