package words

import (
	"errors"
	"math"
	"testing"
	"testing/fstest"

	"golang.org/x/text/language"

	"garner/internal/cal"
)

// sampleTexts is a small catalogue of our own for the tests of this package.
func sampleTexts(t *testing.T, tag language.Tag, content string) *Catalogue {
	t.Helper()
	folder := fstest.MapFS{
		"x/words.json": {Data: must(t, "data/en/words.json")},
		"x/own.json":   {Data: []byte(content)},
	}
	c, err := load(tag, folder, "x")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func must(t *testing.T, name string) []byte {
	t.Helper()
	raw, err := files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return raw
}

func TestTextWritesValuesByTypeAndStyle(t *testing.T) {
	c := sampleTexts(t, language.English, `{
		"a": "{v}", "kg": "{v:kg}", "weight": "{v:weight}", "two": "{v:2}", "percent": "{v:percent}",
		"c": "{v:c}", "kg_told": "{v:kg_told}", "m2": "{v:m2}", "l": "{v:l}", "mm": "{v:mm}", "day": "{v:day}", "month": "{v:month}",
		"odds": "{v:odds}", "weeks": "{v:weeks}", "braces": "{{v}} {v}", "g": "{v:g}", "m": "{v:m}", "about": "{v:about}", "forecast": "{v:forecast}"
	}`)
	day := cal.Of(2027, 1, 4)
	for _, tc := range []struct {
		key   string
		value any
		want  string
	}{
		{"a", "bed 3", "bed 3"},
		{"a", 2027, "2027"},
		{"a", 12345, "12,345"},
		{"a", -12345.5, "-12,345.5"},
		{"a", 0.5, "0.5"},
		{"a", 1.0 / 3, "0.333"},
		{"a", -0.0001, "0"},
		{"a", math.NaN(), "–"},
		{"kg", math.Inf(1), "–"},
		{"a", day, "4 January 2027"},
		{"a", cal.None, "–"},
		{"day", day, "4 Jan"},
		{"month", day, "January"},
		{"a", cal.MonthDay{Month: 3, Day: 15}, "15 March"},
		{"a", errors.New("cut off"), "cut off"},
		{"a", []string{"leek", "kale", "carrot"}, "leek, kale and carrot"},
		{"a", []string{"leek", "kale"}, "leek and kale"},
		{"a", []string{}, "nothing"},
		{"a", []Phrase{P("kg", Args{"v": 2.5}), P("day", Args{"v": day})}, "2.5 kg and 4 Jan"},
		{"a", P("a", Args{"v": P("kg", Args{"v": 12})}), "12.0 kg"},
		{"kg", 0.254, "0.25 kg"},
		{"kg", 250, "250 kg"},
		{"weight", 0.254, "254 g"},
		{"weight", 0.0042, "4.2 g"},
		{"weight", 1.26, "1.3 kg"},
		{"g", 42.4, "42 g"},
		{"about", 0.004, "0"}, {"about", 0.0456, "0.05"}, {"about", 0.996, "1.0"}, {"about", 1.375, "1.4"}, {"about", 12.5, "13"},
		{"about", 137.2, "140"}, {"about", -1.375, "-1.4"}, {"about", math.NaN(), "–"},
		{"forecast", 0.718, "700 g"}, {"forecast", 0.0718, "70 g"}, {"forecast", 0.00718, "7 g"}, {"forecast", 0.996, "1.0 kg"},
		{"forecast", 12.34, "12 kg"}, {"forecast", 1234, "1200 kg"}, {"forecast", 0, "0 g"}, {"forecast", math.Inf(1), "–"},
		{"two", 2, "2.00"},
		{"percent", 0.714, "71 %"},
		{"c", -2, "−2 °C"}, {"c", 4.25, "4.2 °C"}, {"c", -0.04, "0 °C"}, {"kg_told", 70, "70 kg"}, {"kg_told", 2.5, "2.5 kg"},
		{"m2", 4.8, "4.8 m²"},
		{"m", 1.25, "1.2 m"},
		{"l", 9, "9.0 L"},
		{"mm", 61.4, "61 mm"},
		{"odds", 0.72, "seven years in ten"},
		{"odds", 1.0, "nearly every year"},
		{"weeks", 1, "1 week"},
		{"weeks", 3, "3 weeks"},
		{"braces", 1, "{v} 1"},
	} {
		if got := c.Text(P(tc.key, Args{"v": tc.value})); got != tc.want {
			t.Errorf("%s of %v: got %q, want %q", tc.key, tc.value, got, tc.want)
		}
	}
}

// The categories are those of the CLDR plural rules for English and Polish
// (unicode.org, Language Plural Rules: English 1 one, 0 and 1.5 other; Polish
// 1 one, 2-4 and 22 few, 5 and 12 many, 1.5 other).
func TestTextCountsInTheLanguageOfTheCatalogue(t *testing.T) {
	content := `{"n": {"one": "one", "few": "few", "many": "many", "other": "other", "by": "n"}}`
	english := sampleTexts(t, language.English, content)
	polish := sampleTexts(t, language.Polish, content)
	for _, tc := range []struct {
		n               any
		english, polish string
	}{
		{1, "one", "one"}, {0, "other", "many"}, {2, "other", "few"}, {5, "other", "many"},
		{12, "other", "many"}, {22, "other", "few"}, {1.5, "other", "other"}, {"?", "other", "other"},
	} {
		p := P("n", Args{"n": tc.n})
		if got := english.Text(p); got != tc.english {
			t.Errorf("English %v: got %s, want %s", tc.n, got, tc.english)
		}
		if got := polish.Text(p); got != tc.polish {
			t.Errorf("Polish %v: got %s, want %s", tc.n, got, tc.polish)
		}
	}
}

func TestTextOfAnUnknownKeyIsNotSilent(t *testing.T) {
	got := English().Text(P("no.such_key", Args{"n": 3}))
	if got != "no.such_key map[n:3]" {
		t.Errorf("got %q", got)
	}
}

func TestLoadRefuses(t *testing.T) {
	for name, folder := range map[string]fstest.MapFS{
		"a key in two files":       {"x/a.json": {Data: []byte(`{"k": "1"}`)}, "x/b.json": {Data: []byte(`{"k": "2"}`)}},
		"an unfinished brace":      {"x/a.json": {Data: []byte(`{"k": "{n"}`)}},
		"a brace never opened":     {"x/a.json": {Data: []byte(`{"k": "n}"}`)}},
		"a nameless placeholder":   {"x/a.json": {Data: []byte(`{"k": "{}"}`)}},
		"an unknown style":         {"x/a.json": {Data: []byte(`{"k": "{n:furlongs}"}`)}},
		"plurals without a number": {"x/a.json": {Data: []byte(`{"k": {"one": "1", "other": "n"}}`)}},
		"plurals without other":    {"x/a.json": {Data: []byte(`{"k": {"one": "1", "by": "n"}}`)}},
		"what is not JSON":         {"x/a.json": {Data: []byte(`{"k": `)}},
	} {
		if _, err := load(language.English, folder, "x"); err == nil {
			t.Errorf("%s was accepted", name)
		}
	}
}

func TestPseudoKeepsValuesAndMarksTexts(t *testing.T) {
	got := Pseudo().Text(P("words.list_last", Args{"head": "kale", "last": "leek"}))
	if got != "⟦kale ánd leek~⟧" {
		t.Errorf("got %q", got)
	}
}
