package jobs

import (
	"io/fs"
	"maps"
	"slices"
	"testing"
	"testing/fstest"

	"garner/internal/crop/croptest"
	"garner/internal/words"
)

func TestDataHaveSources(t *testing.T) {
	croptest.Sourced(t, data, 7)
}

// Every kind, reason and tool of the data has its words, and every rule a crop it is
// about.
func TestDataHaveWords(t *testing.T) {
	f, err := known()
	if err != nil {
		t.Fatal(err)
	}
	c := words.English()
	has := func(text string) {
		if !c.Has(text) {
			t.Errorf("no text %s", text)
		}
	}
	for k, facts := range f.kinds {
		has("jobs.title_" + key(string(k)))
		if facts.round {
			has("jobs.round_" + key(string(k)))
			has("jobs.part_" + key(string(k)))
		}
		if facts.asked != "" {
			has("desk.past_" + facts.asked)
		}
	}
	for _, r := range f.care {
		has("jobs.why_" + r.why)
	}
	for _, r := range f.ground {
		has("jobs.why_" + r.why)
	}
	for tool := range f.tools {
		has("jobs.tool_" + key(tool))
	}
	if len(f.picks) == 0 || len(f.stores) == 0 {
		t.Error("no picks or stores")
	}
}

// files are the package's data as a folder that a test may change.
func files(t testing.TB) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	names, err := fs.Glob(data, "data/*.csv")
	if err != nil || len(names) == 0 {
		t.Fatal(err)
	}
	for _, name := range names {
		raw, err := fs.ReadFile(data, name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = &fstest.MapFile{Data: raw}
	}
	return out
}

// What is wrong with the data is told, not taken.
func TestFaultsOfTheData(t *testing.T) {
	for _, c := range []struct{ file, text string }{
		{"kinds", "kind,first_d,last_d,minutes,minutes_m2,minutes_plant,minutes_kg,tools,who,source,mark,where\nsow,1,1,1,0,0,0,,nobody,a,b,c\n"},
		{"kinds", "kind,first_d,last_d,minutes,minutes_m2,minutes_plant,minutes_kg,tools,who,source,mark,where\nsow,1,1,999,0,0,0,,child,a,b,c\n"},
		{"care", "rule,kind,crops,groups,uses,methods,patterns,sky,anchor,offset_d,every_d,until,until_d,from,to,why,source,mark,where\na,hoe,,,,,,,planted,0,7,,0,,,heat,a,b,c\n"},
		{"care", "rule,kind,crops,groups,uses,methods,patterns,sky,anchor,offset_d,every_d,until,until_d,from,to,why,source,mark,where\na,hoe,,,,,,,calendar,0,0,,0,,,heat,a,b,c\n"},
		{"care", "rule,kind,crops,groups,uses,methods,patterns,sky,anchor,offset_d,every_d,until,until_d,from,to,why,source,mark,where\na,dance,,,,,,,planted,0,0,,0,,,heat,a,b,c\n"},
		{"ground", "rule,kind,at\n"},
		{"tools", "tool,barred_by,instead,source,mark,where\nhose,hoses,sieve,a,b,c\n"},
	} {
		changed := files(t)
		changed["data/"+c.file+".csv"] = &fstest.MapFile{Data: []byte(c.text)}
		if _, err := read(changed); err == nil {
			t.Errorf("%s took %q", c.file, c.text)
		}
	}
}

// Whatever stands in one file, the loader either tells a fault or gives rules whose
// names are all known.
func FuzzLoad(f *testing.F) {
	good := files(f)
	names := slices.Sorted(maps.Keys(good))
	for i, name := range names {
		f.Add(byte(i), good[name].Data)
	}
	f.Add(byte(0), []byte("rule\n"))
	f.Fuzz(func(t *testing.T, which byte, text []byte) {
		changed := maps.Clone(good)
		changed[names[int(which)%len(names)]] = &fstest.MapFile{Data: text}
		got, err := read(changed)
		if err != nil {
			return
		}
		for _, r := range got.care {
			if _, ok := got.kinds[r.kind]; !ok || !slices.Contains(anchors, r.anchor) || r.every > 0 && r.until == "" {
				t.Errorf("took the rule %+v", r)
			}
		}
		for _, k := range got.kinds {
			for _, tool := range k.tools {
				if _, ok := got.tools[tool]; !ok {
					t.Errorf("took the tool %q", tool)
				}
			}
		}
	})
}
