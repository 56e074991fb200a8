package crop

import (
	"strings"
	"testing"
	"testing/fstest"

	"garner/internal/fault"
)

// likeBook is a small book of carrot, radish and parsnip with a like.csv of the
// given rows.
func likeBook(t *testing.T, rows string) fstest.MapFS {
	files := smallBook(t, "parsnip")
	files[likeFile] = &fstest.MapFile{Data: []byte("crop,like,note\n" + rows)}
	return files
}

// without drops a row from a file.
func without(t *testing.T, files fstest.MapFS, name, row string) fstest.MapFS {
	t.Helper()
	changed, _ := with(t, files, name, row, "")
	return changed
}

// factRow returns the row of a facts file that starts so.
func factRow(t *testing.T, files fstest.MapFS, crop, start string) string {
	t.Helper()
	for line := range strings.Lines(string(files["facts/"+crop+".csv"].Data)) {
		if strings.HasPrefix(line, start) {
			return line
		}
	}
	t.Fatalf("%s has no row that starts %q", crop, start)
	return ""
}

func TestCropTakesWhatItLacksFromTheOneItIsLike(t *testing.T) {
	files := likeBook(t, "radish,parsnip,\nparsnip,carrot,\n")
	for _, crop := range []string{"radish", "parsnip"} {
		files = without(t, files, "facts/"+crop+".csv", factRow(t, files, crop, ",leaf_max,"))
	}
	files = without(t, files, "facts/radish.csv", factRow(t, files, "radish", ",base_c,"))
	book, faults := LoadFrom(files)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	carrot, parsnip, radish := use(t, book, "carrot", "table"), use(t, book, "parsnip", ""), use(t, book, "radish", "winter")
	if radish.LeafMax != carrot.LeafMax || parsnip.LeafMax != carrot.LeafMax {
		t.Errorf("greatest leaf area index: carrot %g, parsnip %g, radish %g", carrot.LeafMax, parsnip.LeafMax, radish.LeafMax)
	}
	if radish.BaseC != parsnip.BaseC || radish.Fact("base_c").Mark != "borrowed" {
		t.Errorf("base temperature of radish %g, of parsnip %g", radish.BaseC, parsnip.BaseC)
	}
	got, want := radish.Fact("leaf_max"), carrot.Fact("leaf_max")
	if got.Mark != "borrowed" || got.Source != want.Source || got.Where != "from carrot: "+want.Where {
		t.Errorf("provenance %+v, want that of carrot %+v as borrowed", got, want)
	}
	if f := parsnip.Fact("base_c"); f.Mark == "borrowed" {
		t.Error("a number of its own has given way to one of its like")
	}
}

// A number of the crop it is like goes before that of the group; one that is
// fitted to the like does not.
func TestLikeGoesBeforeTheGroup(t *testing.T) {
	files := likeBook(t, "radish,carrot,\n")
	files, _ = with(t, files, "facts/carrot.csv", "use,parameter,value,unit,source,where,mark,note\n",
		"use,parameter,value,unit,source,where,mark,note\n,days_factor,0.77,1,judgement,,judgement,\ntable,keep_days,9,d,judgement,,judgement,\nstorage,keep_days,8,d,judgement,,judgement,\n")
	files[fittedFile] = &fstest.MapFile{Data: []byte("crop,use,parameter,value,unit,source,where,mark,note\ncarrot,,yield_scale,1.4,1,judgement,,fitted,\n")}
	book, faults := LoadFrom(files)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	radish := use(t, book, "radish", "summer")
	if radish.DaysFactor != 0.77 {
		t.Errorf("days factor %g, want carrot's 0.77", radish.DaysFactor)
	}
	if radish.KeepDays != 9 {
		t.Errorf("keep days %g, want the 9 of carrot's common use", radish.KeepDays)
	}
	if carrot := use(t, book, "carrot", "storage"); carrot.YieldScale != 1.4 || radish.YieldScale != 1 {
		t.Errorf("yield scale of carrot %g and radish %g, want 1.4 and 1", carrot.YieldScale, radish.YieldScale)
	}
}

// Each fault of like.csv is told with row and column; the rows before it hold
// and every crop loads.
func TestFaultsOfLike(t *testing.T) {
	for _, c := range []struct {
		what, rows string
		row        int
		column     string
		key        string
		kind       fault.Kind
	}{
		{"unknown crop", "raddish,carrot,\n", 2, "crop", "crop.crop_unknown", fault.NotFound},
		{"unknown like", "radish,carot,\n", 2, "like", "crop.crop_unknown", fault.NotFound},
		{"like itself", "radish,radish,\n", 2, "like", "crop.like_ring", fault.Invalid},
		{"ring of two", "radish,carrot,\ncarrot,radish,\n", 3, "like", "crop.like_ring", fault.Invalid},
		{"ring of three", "radish,carrot,\ncarrot,parsnip,\nparsnip,radish,\n", 4, "like", "crop.like_ring", fault.Invalid},
		{"twice", "radish,carrot,\nradish,parsnip,\n", 3, "crop", "crop.like_twice", fault.Invalid},
	} {
		t.Run(c.what, func(t *testing.T) {
			book, faults := LoadFrom(likeBook(t, c.rows))
			if len(faults) != 1 {
				t.Fatalf("%d faults, want one:\n%v", len(faults), faults)
			}
			want := fault.Place{File: likeFile, Row: c.row, Column: c.column}
			if faults[0].At != want || faults[0].Phrase.Key != c.key || faults[0].Kind != c.kind {
				t.Errorf("got %v, want %s at %v", faults[0], c.key, want)
			}
			if n := len(book.Crops()); n != 3 {
				t.Errorf("%d crops loaded, want 3", n)
			}
		})
	}
}

// What a ring would have lent is missing, and the rest of the book loads.
func TestRingLendsNothing(t *testing.T) {
	files := likeBook(t, "parsnip,parsnip,\n")
	files = without(t, files, "facts/parsnip.csv", factRow(t, files, "parsnip", ",leaf_max,"))
	book, faults := LoadFrom(files)
	if len(faults) != 2 || faultIn(faults, likeFile) == nil || faults[1].Phrase.Key != "crop.fact_missing" {
		t.Fatalf("want the ring and the missing number, got:\n%v", faults)
	}
	if _, ok := book.Crop("parsnip"); ok || len(book.Crops()) != 2 {
		t.Error("want carrot and radish, without parsnip")
	}
}

// A lent number that does not agree with the crop's own is told at the row that
// says whom it is like.
func TestLentContradictionIsToldAtTheLike(t *testing.T) {
	files := likeBook(t, "radish,carrot,\n")
	files = without(t, files, "facts/radish.csv", factRow(t, files, "radish", ",optimum_c,"))
	files, _ = with(t, files, "facts/radish.csv", factRow(t, files, "radish", ",ceiling_c,"), ",ceiling_c,20,C,judgement,,judgement,\n")
	files, _ = with(t, files, "facts/carrot.csv", factRow(t, files, "carrot", ",optimum_c,"), ",optimum_c,21,C,judgement,,judgement,\n")
	_, faults := LoadFrom(files)
	if len(faults) == 0 || faults[0].At != (fault.Place{File: likeFile, Row: 2, Column: "like"}) || faults[0].Phrase.Key != "crop.above" {
		t.Errorf("want the contradiction at %s row 2, got:\n%v", likeFile, faults)
	}
}

// A number that the like gives wrongly is told once, there.
func TestFaultOfTheLenderIsToldOnce(t *testing.T) {
	files := likeBook(t, "radish,carrot,\n")
	files = without(t, files, "facts/radish.csv", factRow(t, files, "radish", ",height_m,"))
	files, _ = with(t, files, "facts/carrot.csv", ",height_m,0.3,m,", ",height_m,30,cm,")
	if _, faults := LoadFrom(files); len(faults) != 1 || faults[0].At.File != "facts/carrot.csv" {
		t.Errorf("want one fault, in the facts of carrot, got:\n%v", faults)
	}
}
