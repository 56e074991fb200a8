package risk

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"garner/internal/fault"
	"garner/internal/words"
)

// own are the built-in files.
func own(t testing.TB) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	names, err := fs.Glob(data, "data/*.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		raw, err := fs.ReadFile(data, name)
		if err != nil {
			t.Fatal(err)
		}
		out[strings.TrimPrefix(name, "data/")] = &fstest.MapFile{Data: raw}
	}
	return out
}

// Each thing that is wrong with the data is told at its place.
func TestFaultsOfTheData(t *testing.T) {
	cases := []struct{ file, from, to, key string }{
		{"rules.csv", "late-blight,humid_days", "late-blight,damp_days", "risk.data_no_form"},
		{"rules.csv", "severity_sum,wallin,", "severity_sum,willin,", "risk.data_no_table"},
		{"rules.csv", "\nsmith,", "\nhutton,", "risk.data_twice"},
		{"rules.csv", ",seen,high,,\nsmith", ",believed,high,,\nsmith", "risk.data_one_of"},
		{"numbers.csv", "hutton,tmin_c,10,C", "hutton,tmin_c,10,F", "risk.data_one_of"},
		{"numbers.csv", "hutton,tmin_c", "hutton,tmax_c", "risk.data_number"},
		{"numbers.csv", "hutton,tmin_c,10,C,seen,\n", "", "risk.data_lacks_number"},
		{"numbers.csv", "hutton,tmin_c", "huttun,tmin_c", "risk.data_no_rule"},
		{"severity.csv", "wallin,11.6,yes,0,15,0", "wallin,11.6,yes,0,14,0", "risk.data_table_hole"},
		{"severity.csv", "wallin,11.6,yes,0,15,0", "wallin,11.6,yes,0,16,0", "risk.data_hours"},
		{"severity.csv", "wallin,,yes", "wallin,30,yes", "risk.data_table_end"},
		{"pests.csv", ",03-01,average,Norway", ",13-01,average,Norway", "risk.data_start"},
		{"advice.csv", "hutton,blight_varieties", "hutton,prayer", "risk.data_no_measure"},
		{"measures.csv", "\nblight_air,", "\nblight_varieties,", "risk.data_twice"},
		{"blossom.csv", "apple,pink,-2.2,-4.4", "apple,pink,-2.2,-1.4", "risk.data_kill_order"},
		{"heat.csv", "maximum,32,35", "maximum,38,35", "risk.data_heat_order"},
		{"heat.csv", "cloche;low tunnel", "clocke;low tunnel", "risk.data_one_of"},
		{"measures.csv", "blight_air,cultural", "blight_air,spray", "risk.data_one_of"},
	}
	for _, c := range cases {
		files := own(t)
		text := string(files[c.file].Data)
		if !strings.Contains(text, c.from) {
			t.Errorf("%s has no %q", c.file, c.from)
			continue
		}
		files[c.file] = &fstest.MapFile{Data: []byte(strings.Replace(text, c.from, c.to, 1))}
		_, err := LoadFrom(files)
		list, _ := err.(fault.List)
		if !slices.ContainsFunc(list, func(f *fault.Error) bool { return f.Phrase.Key == c.key && f.At.File == c.file }) {
			t.Errorf("%s for %q: %v", c.to, c.from, err)
		}
	}
}

// Everything a rule says has its text.
func TestEveryRuleHasItsTexts(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	c := words.English()
	for _, r := range b.Rules {
		all := []words.Phrase{r.Name(), r.Reads(), ProblemName(r.Problem), r.Short()}
		for _, m := range r.Measures {
			all = append(all, m.Text())
		}
		for i := range r.Events {
			all = append(all, EventName(r.Events[i].Name))
		}
		for _, p := range all {
			if !c.Has(p.Key) {
				t.Errorf("%s: no text for %s", r.ID, p.Key)
			}
		}
	}
}

// few are the built-in files with three rules left, quick to read.
func few(t testing.TB) fstest.MapFS {
	files := own(t)
	for name, file := range files {
		var kept []string
		for i, line := range strings.Split(string(file.Data), "\n") {
			first, _, _ := strings.Cut(line, ",")
			if i == 0 || line == "" || name == "measures.csv" || name == "heat.csv" || name == "blossom.csv" || name == "schedule.csv" || slices.Contains([]string{"hutton", "wallin", "leek-moth"}, first) {
				kept = append(kept, line)
			}
		}
		files[name] = &fstest.MapFile{Data: []byte(strings.Join(kept, "\n"))}
	}
	return files
}

// Whatever stands in one file, the loader tells every fault with its file, and what
// it loads can be run.
func FuzzLoadRules(f *testing.F) {
	files := few(f)
	if _, err := LoadFrom(files); err != nil {
		f.Fatal(err)
	}
	names := slices.Sorted(maps.Keys(files))
	for i, name := range names {
		f.Add(byte(i), files[name].Data)
	}
	f.Add(byte(slices.Index(names, "severity.csv")), []byte("table,to_c,edge_in,hours_from,hours_to,value,mark,source\nwallin,,yes,24,0,0,seen,x\n"))
	f.Add(byte(slices.Index(names, "numbers.csv")), []byte("rule,name,value,unit,mark,source\nhutton,days,0,d,seen,\n"))
	w := record(f, "de_bilt_nl_2000")
	w = New(w.Hours[:24*20])
	f.Fuzz(func(t *testing.T, which byte, text []byte) {
		changed := maps.Clone(files)
		changed[names[int(which)%len(names)]] = &fstest.MapFile{Data: text}
		b, err := LoadFrom(changed)
		if err != nil {
			if list, ok := err.(fault.List); ok {
				for _, x := range list {
					if x.At.File == "" {
						t.Errorf("a fault without a file: %v", x)
					}
				}
			}
			return
		}
		for _, r := range b.Rules {
			r.Readings(w, Options{Since: w.Days[0].Date})
		}
	})
}
