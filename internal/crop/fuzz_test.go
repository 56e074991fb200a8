package crop

import (
	"maps"
	"slices"
	"testing"
	"testing/fstest"
)

// Whatever stands in one file of the book, the loader tells every fault with a
// place and what it does load is whole and in range.
func FuzzLoadBook(f *testing.F) {
	files := smallBook(f)
	files[likeFile] = &fstest.MapFile{Data: []byte("crop,like,note\nradish,carrot,\n")}
	files[fittedFile] = &fstest.MapFile{Data: []byte("crop,use,parameter,value,unit,source,where,mark,note\ncarrot,,yield_scale,1.1,1,judgement,,fitted,\n")}
	names := slices.Sorted(maps.Keys(files))
	for i, name := range names {
		f.Add(byte(i), files[name].Data)
	}
	at := func(name string) byte { return byte(slices.Index(names, name)) }
	f.Add(at("facts/carrot.csv"), []byte("use,parameter,value,unit,source,where,mark,note\n,base_c,3,C,ecocrop,TMIN 3,seen,\n"))
	f.Add(at("facts/carrot.csv"), []byte("use;parameter;value;unit;source;where;mark;note\n;base_c;3,5;C;ecocrop;TMIN 3;seen;\n"))
	f.Add(at("facts/carrot.csv"), []byte("\xef\xbb\xbfuse,parameter,value,unit,source,where,mark,note\r\nearly,base_c,1e309,C,,,,\r\n"))
	f.Add(at(likeFile), []byte("crop,like,note\nradish,carrot,\ncarrot,radish,\nradish,radish,\ncarrot,carrot,\nleek,carrot,\n"))
	f.Add(at("families.csv"), []byte("family,name,rotation_group,source,mark,note\nApiaceae,,roots,,,\n"))
	f.Add(at("parameters.csv"), []byte("0"))
	f.Add(at("parameters.csv"), []byte("name,unit,min,max,scope,meaning\nbase_c,C,18,-5,crop,\nage_yield_9,1,0,1,crop,\n"))
	f.Fuzz(func(t *testing.T, which byte, text []byte) {
		name := names[int(which)%len(names)]
		changed := maps.Clone(files)
		changed[name] = &fstest.MapFile{Data: text}
		book, faults := LoadFrom(changed)
		for _, told := range faults {
			if told.At.File == "" || told.Phrase.Key == "" {
				t.Errorf("a fault without a place or a phrase: %v", told)
			}
		}
		if _, ok := book.Crop("radish"); !ok && name == "facts/carrot.csv" {
			t.Error("radish did not load")
		}
		checkWhole(t, book)
	})
}

// checkWhole tells what is missing or beyond its range in a book that was
// loaded, with faults or without.
func checkWhole(t *testing.T, book *Book) {
	t.Helper()
	for _, c := range book.Crops() {
		if got, ok := book.Crop(c.ID); !ok || got != c || len(c.Uses) == 0 {
			t.Errorf("%s is listed and cannot be found, or has no use", c.ID)
		}
		for _, u := range c.Uses {
			if bad, _ := contradiction(u); bad != nil {
				t.Error(bad)
			}
			for _, p := range book.Parameters() {
				fact := u.Fact(p.Name)
				if fact == (Fact{}) && needs[p.Name].optional {
					continue
				}
				if applies(p.Name, u) && (fact.Source == "" || fact.Value != p.get(u) || fact.Value < p.Min || fact.Value > p.Max) {
					t.Errorf("%s %s: %s is %+v", c.ID, u.Name, p.Name, fact)
				}
			}
		}
	}
}
