package cli

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// steady is a vegetable of which so much is wanted each week; the rest is filled
// in by hand.
func steady(name string, weeks int, wantKg float64) desk.VegetableTable {
	v := desk.VegetableTable{Name: name}
	for range weeks {
		v.WantKg = append(v.WantKg, wantKg)
		v.FreshKg = append(v.FreshKg, 0)
		v.StoredKg = append(v.StoredKg, 0)
		v.ShortKg = append(v.ShortKg, wantKg)
		v.OverKg = append(v.OverKg, 0)
		v.GapChance = append(v.GapChance, 1)
	}
	return v
}

// serve gives one week so much from the ground and from store.
func serve(v *desk.VegetableTable, week int, freshKg, storedKg, chance float64) {
	v.FreshKg[week], v.StoredKg[week] = freshKg, storedKg
	v.ShortKg[week] = math.Max(0, v.WantKg[week]-freshKg-storedKg)
	v.GapChance[week] = chance
}

// aTable is ten weeks of two vegetables, made by hand.
func aTable() *desk.OutlookResult {
	r := &desk.OutlookResult{Holding: "Hollow Lane", From: cal.Of(2027, 1, 4), Years: 200, Seed: 1, HomeGrownShare: 0.62}
	for i := range 10 {
		r.Weeks = append(r.Weeks, r.From+cal.Date(7*i))
		r.Share = append(r.Share, float64(i)/9)
	}
	carrot, leek := steady("carrot", 10, 1), steady("leek", 10, 0.4)
	for i := range 6 {
		serve(&carrot, i, 0, 1, 0.1)
	}
	serve(&carrot, 6, 0, 0.6, 0.7)
	serve(&carrot, 7, 0, 0.2, 0.9)
	for i := range 10 {
		serve(&leek, i, 0.4, 0, 0)
	}
	leek.OverKg[4], leek.WantKg[9] = 1, 0
	r.Vegetables = []desk.VegetableTable{carrot, leek}
	r.Lead = words.P("desk.lead_bare", words.Args{"span": words.P("desk.span", words.Args{"first": r.From, "last": r.From + 13}), "lacks": []string{"carrots"}})
	return r
}

func TestTheTableReadsAsDrawn(t *testing.T) {
	var out bytes.Buffer
	(&App{Stdout: &out, Words: words.English()}).showOutlook(aTable())
	const want = `Hollow Lane, 10 weeks from 4 January 2027
4 January 2027 to 17 January 2027 nothing of our own on the plate. Most lacking: carrots.

           2027
           Jan Feb Mar
carrot     ▒▒▒▒▒▒▄▁··
leek       ████+████
home-grown ·▁▂▃▄▄▅▆▇█

█ from the ground  ▒ from store  ▄ over half  ▁ under half  · next to nothing  + plenty to spare
Blank: none wanted. The last line is the share of the week's table that is home-grown.

What runs short next, the heaviest first:
  carrot  from 15 February to 14 March 2027, by 80 % of 1.0 kg a week, nine years in ten

Home-grown over all these weeks: 62 %.
Reckoned over 200 years of weather, seed 1.
`
	if got := out.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// A table of any length stays within the width, and every week is shown once.
func TestTheTableIsNeverTooWide(t *testing.T) {
	for _, weeks := range []int{1, 3, 78, 90, 156} {
		r := &desk.OutlookResult{Holding: "Hollow Lane", From: cal.Of(2027, 1, 25), Years: 1, Seed: 1}
		for i := range weeks {
			r.Weeks = append(r.Weeks, r.From+cal.Date(7*i))
			r.Share = append(r.Share, 1)
		}
		v := steady("purple sprouting broccoli", weeks, 1)
		for i := range weeks {
			serve(&v, i, 1, 0, 0)
		}
		r.Vegetables = []desk.VegetableTable{v}
		var out bytes.Buffer
		(&App{Stdout: &out, Words: words.English()}).showOutlook(r)
		shown := 0
		for _, line := range strings.Split(out.String(), "\n") {
			if strings.HasPrefix(line, "purple") {
				shown += strings.Count(line, string(signFresh))
			}
			if n := utf8.RuneCountInString(line); n > tableWidth {
				t.Errorf("%d weeks: a line of %d letters: %s", weeks, n, line)
			}
		}
		if shown != weeks {
			t.Errorf("%d weeks: %d are shown", weeks, shown)
		}
	}
}

func TestWeekSigns(t *testing.T) {
	for _, tc := range []struct {
		name                      string
		want, fresh, stored, over float64
		sign                      rune
	}{
		{"all from the ground", 1, 1, 0, 0, signFresh},
		{"mostly from the ground", 1, 0.5, 0.45, 0, signFresh},
		{"mostly from store", 1, 0.3, 0.7, 0, signStored},
		{"over half", 1, 0.3, 0.3, 0, signHalf},
		{"under half", 1, 0.2, 0, 0, signLittle},
		{"next to nothing", 1, 0.05, 0, 0, signNone},
		{"a glut", 1, 1, 0, 0.6, signSpare},
		{"a little over", 1, 1, 0, 0.2, signFresh},
		{"none wanted", 0, 0, 0, 0, signBlank},
		{"none wanted, yet there", 0, 0, 0, 3, signSpare},
	} {
		v := &desk.VegetableTable{
			WantKg: []float64{tc.want}, FreshKg: []float64{tc.fresh},
			StoredKg: []float64{tc.stored}, OverKg: []float64{tc.over},
		}
		if got := weekSign(v, 0); got != tc.sign {
			t.Errorf("%s: got %c, want %c", tc.name, got, tc.sign)
		}
	}
}

func TestNextGapIsTheFirst(t *testing.T) {
	v := steady("kale", 6, 1)
	weeks := make([]cal.Date, 6)
	for i := range weeks {
		weeks[i] = cal.Of(2027, 3, 1) + cal.Date(7*i)
	}
	for i, chance := range []float64{0.1, 0.6, 0.8, 0.2, 1, 1} {
		serve(&v, i, 1-chance, 0, chance)
	}
	got, ok := nextGap(&v, weeks)
	if !ok || got.now || got.first != cal.Of(2027, 3, 8) || got.last != cal.Of(2027, 3, 21) ||
		math.Abs(got.chance-0.7) > 1e-9 || math.Abs(got.shortKg-0.7) > 1e-9 {
		t.Errorf("got %+v", got)
	}
	for i := range weeks {
		serve(&v, i, 1, 0, 0)
	}
	if _, ok := nextGap(&v, weeks); ok {
		t.Error("a gap where nothing is short")
	}
}

// Progress is for a person at a terminal: one line, and gone at the end.
func TestProgressOnATerminalOnly(t *testing.T) {
	var err bytes.Buffer
	app := &App{Stderr: &err, Words: words.English()}
	if app.progress("cli.progress_outlook").report() != nil {
		t.Error("progress is shown where nobody looks")
	}
	app.Terminal = true
	p := app.progress("cli.progress_outlook")
	for i := range 200 {
		p.report()(i+1, 200)
	}
	p.clear()
	said := err.String()
	if strings.Contains(said, "\n") || !strings.HasSuffix(said, "\r") || strings.Count(said, "growing") != 11 {
		t.Errorf("progress said %q", said)
	}
}

func FuzzArgumentsNeverBreakGarner(f *testing.F) {
	for _, seed := range []string{
		"", "help", "outlook --sample=", "window --site -1,-2,-3", "grow --crop= --", "weather generate --seed 1e9",
		"advise --bed --from", "ground free --until -1", "ground shade --json=", "keep-or-clear -- --seed",
		"complete-line -- --cover", "check-files --json", "window --site=-", "version -- --json", "weather describe -",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		for _, slow := range []string{"outlook", "advise", "ground", "keep-or-clear"} {
			if strings.Contains(line, "sample") && strings.Contains(line, slow) {
				t.Skip("a whole table takes too long here")
			}
		}
		if typed := strings.Fields(line); len(typed) > 0 && typed[0] == "check" {
			t.Skip("the whole scoreboard takes too long here")
		}
		var out, err bytes.Buffer
		app := &App{Stdout: &out, Stderr: &err, Words: words.English()}
		if code := app.Run(strings.Fields(line)); code == 1 {
			t.Errorf("garner %s left with %d: %s", line, code, err.String())
		}
	})
}

// A table that begins in the last weeks of a year names the next year alone, and no two
// heads run into each other.
func TestHeadsOfTheYearTurn(t *testing.T) {
	a := &App{Words: words.English()}
	for from, want := range map[cal.Date]string{cal.Of(2026, 12, 28): " 2027", cal.Of(2026, 12, 7): "    2027", cal.Of(2026, 11, 23): "2026  2027", cal.Of(2027, 1, 4): "2027"} {
		var weeks []cal.Date
		for k := range 12 {
			weeks = append(weeks, from+cal.Date(7*k))
		}
		years, _ := a.weekHeads(weeks)
		if got := strings.TrimRight(string(years), " "); got != want {
			t.Errorf("from %s: %q, want %q", from, got, want)
		}
	}
}
