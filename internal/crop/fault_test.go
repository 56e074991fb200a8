package crop

import (
	"testing"
	"testing/fstest"

	"garner/internal/fault"
)

func TestSmallBookHasNoFault(t *testing.T) {
	book, faults := LoadFrom(smallBook(t))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if n := len(book.Crops()); n != 2 {
		t.Errorf("%d crops, want carrot and radish", n)
	}
}

// Each kind of fault in one row of the book is told once, with file, row and
// column, and radish still loads.
func TestFaultsTellTheirPlace(t *testing.T) {
	const facts = "facts/carrot.csv"
	for _, c := range []struct {
		what, file, old, new string
		column, key          string
		kind                 fault.Kind
	}{
		{"no source", facts, ",leaf_growth,0.22,1/d,crop-physiology,", ",leaf_growth,0.22,1/d,,", "source", "crop.source_missing", fault.Invalid},
		{"unknown source", facts, ",leaf_growth,0.22,1/d,crop-physiology,", ",leaf_growth,0.22,1/d,hearsay,", "source", "crop.source_unknown", fault.NotFound},
		{"unknown parameter", facts, ",leaf_max,3.5,", ",leaf_most,3.5,", "parameter", "crop.parameter_unknown", fault.NotFound},
		{"unit slip", facts, ",height_m,0.3,m,", ",height_m,30,cm,", "unit", "crop.unit_differs", fault.Invalid},
		{"no unit", facts, ",height_m,0.3,m,", ",height_m,0.3,,", "unit", "crop.unit_differs", fault.Invalid},
		{"out of range", facts, ",base_c,3,C,", ",base_c,39,C,", "value", "crop.out_of_range", fault.OutOfRange},
		{"depth in centimetres", facts, ",sow_depth_m,0.013,m,olds,carrot", ",sow_depth_m,1.3,m,olds,carrot", "value", "crop.out_of_range", fault.OutOfRange},
		{"seed in a foot of row", facts, ",sow_per_m,208,1/m,", ",sow_per_m,63,1/ft,", "unit", "crop.unit_differs", fault.Invalid},
		{"base above optimum", facts, ",optimum_c,20,C,", ",optimum_c,36,C,", "value", "crop.above", fault.Invalid},
		{"negative share", facts, ",edible_share,0.89,", ",edible_share,-0.89,", "value", "crop.out_of_range", fault.OutOfRange},
		{"no number", facts, ",leaf_max,3.5,", ",leaf_max,three,", "value", "crop.not_a_number", fault.Invalid},
		{"not finite", facts, ",leaf_max,3.5,", ",leaf_max,NaN,", "value", "crop.not_a_number", fault.Invalid},
		{"unknown mark", facts, "CRRT BLAI 3.5,seen,", "CRRT BLAI 3.5,certain,", "mark", "crop.not_in_list", fault.Invalid},
		{"seen nowhere", facts, ",CRRT BLAI 3.5,seen,", ",,seen,", "where", "crop.where_missing", fault.Invalid},
		{"unknown use", facts, "\nearly,days_seed,", "\njam,days_seed,", "use", "crop.use_unknown", fault.NotFound},
		{"given twice", facts, ",leaf_max,3.5,1,", ",extinction,0.5,1,", "parameter", "crop.fact_twice", fault.Invalid},
		{"unknown crop of a name", "names/roots.csv", "mooli,radish,", "mooli,radisch,", "crop", "crop.crop_unknown", fault.NotFound},
		{"name of two crops", "names/roots.csv", "mooli,radish,winter", "carrots,radish,winter", "name", "crop.name_twice", fault.Conflict},
		{"name of two uses", "names/roots.csv", "mooli,radish,winter", `"carrot, early",carrot,table`, "name", "crop.name_twice", fault.Conflict},
		{"unknown use of a name", "names/roots.csv", "mooli,radish,winter", "mooli,radish,autumn", "use", "crop.use_unknown", fault.NotFound},
		{"unknown crop of a use", "uses/roots.csv", "carrot,early,", "carrrot,early,", "crop", "crop.crop_unknown", fault.NotFound},
		{"unknown class", "crops/roots.csv", ",carrot,half-hardy,", ",carrot,half hardy,", "class", "crop.not_in_list", fault.Invalid},
		{"unknown group", "crops/roots.csv", ",half-hardy,roots,table,", ",half-hardy,root,table,", "group", "crop.not_in_list", fault.Invalid},
		{"unknown caution", "crops/roots.csv", ",roots,table,", ",roots,table,do-not-eat", "cautions", "crop.caution_unknown", fault.NotFound},
		{"no common use", "crops/roots.csv", ",half-hardy,roots,table,", ",half-hardy,roots,jam,", "common_use", "crop.use_unknown", fault.NotFound},
		{"unknown family", "crops/roots.csv", ",Apiaceae,carrot,", ",Umbelliferae,carrot,", "family", "crop.family_unknown", fault.NotFound},
		{"family twice", "families.csv", "\nCaprifoliaceae,", "\nBrassicaceae,", "family", "crop.family_twice", fault.Invalid},
		{"family in no group", "families.csv", "carrot family,roots,", "carrot family,root,", "rotation_group", "crop.not_in_list", fault.Invalid},
		{"family without a source", "families.csv", "ice-plant family,anywhere,judgement,", "ice-plant family,anywhere,,", "source", "crop.source_missing", fault.Invalid},
		{"family without a name", "families.csv", "ice-plant family,anywhere", ",anywhere", "name", "crop.cell_empty", fault.Invalid},
		{"crop twice", "crops/roots.csv", "\nradish,radish,radishes,", "\ncarrot,radish,radishes,", "id", "crop.crop_twice", fault.Invalid},
		{"id with a blank", "crops/roots.csv", "\ncarrot,", "\nmy carrot,", "id", "crop.id_shape", fault.Invalid},
		{"unknown pattern", "uses/roots.csv", "pulled young,pull,", "pulled young,tug,", "pattern", "crop.not_in_list", fault.Invalid},
		{"unknown method", "uses/roots.csv", "pulled young,pull,seed,", "pulled young,pull,seed;magic,", "methods", "crop.not_in_list", fault.Invalid},
		{"no day", "uses/roots.csv", ",03-15,cloche,", ",15 March,cloche,", "reference_date", "crop.not_a_day", fault.Invalid},
		{"no cover", "uses/roots.csv", ",03-15,cloche,", ",03-15,duvet,", "reference_cover", "crop.not_in_list", fault.Invalid},
		{"use twice", "uses/roots.csv", "carrot,storage,", "carrot,early,", "use", "crop.use_twice", fault.Invalid},
		{"negative loss", "storage/roots.csv", "carrot,,damp sand,4.4,167,2,-1,0.05,", "carrot,,damp sand,4.4,167,2,-1,-0.05,", "loss_share", "crop.storage_out_of_range", fault.OutOfRange},
		{"unknown store", "storage/roots.csv", "carrot,,damp sand,", "carrot,,attic,", "method", "crop.not_in_list", fault.Invalid},
		{"unknown step", "preparing/ways.csv", ";cellar,trim_tops,", ";cellar,trim_top,", "step", "crop.not_in_list", fault.Invalid},
		{"prepared for no way", "preparing/ways.csv", "carrot,damp sand;", "carrot,dry sand;", "method", "crop.not_in_list", fault.Invalid},
		{"cured backwards", "preparing/ways.csv", "trim_tops,,,", "trim_tops,17,14,", "days_to", "crop.storage_out_of_range", fault.OutOfRange},
		{"cured too warm", "preparing/ways.csv", "trim_tops,,,,,", "trim_tops,,,10,60,", "to_c", "crop.storage_out_of_range", fault.OutOfRange},
		{"store twice", "storage/roots.csv", "carrot,,clamp,", "carrot,,damp sand,", "method", "crop.storage_twice", fault.Invalid},
		{"unknown scope", "defaults.csv", "class,hardy,raise_c,", "kind,hardy,raise_c,", "scope", "crop.not_in_list", fault.Invalid},
		{"source twice", "sources/roots.csv", "\nbrewster-1979,", "\nswat,", "key", "crop.source_twice", fault.Invalid},
		{"source without a work", "sources/roots.csv", "\npayson,", "\n,", "citation", "crop.source_empty", fault.Invalid},
		{"lower above higher", "parameters.csv", "base_c,C,-5,18,crop,no dev", "base_c,C,x,18,crop,no dev", "min", "crop.not_a_number", fault.Invalid},
	} {
		t.Run(c.what, func(t *testing.T) {
			files, row := with(t, smallBook(t), c.file, c.old, c.new)
			book, faults := LoadFrom(files)
			found := faultAt(faults, c.file, row, c.column)
			if found == nil {
				t.Fatalf("no fault at %s row %d %s among:\n%v", c.file, row, c.column, faults)
			}
			if found.Phrase.Key != c.key || found.Kind != c.kind {
				t.Errorf("got %s (kind %d), want %s (kind %d)", found.Phrase.Key, found.Kind, c.key, c.kind)
			}
			if _, ok := book.Crop("radish"); !ok && c.file != "parameters.csv" && c.what != "crop twice" {
				t.Error("radish did not load")
			}
		})
	}
}

func faultAt(faults fault.List, file string, row int, column string) *fault.Error {
	for _, f := range faults {
		if f.At == (fault.Place{File: file, Row: row, Column: column}) {
			return f
		}
	}
	return nil
}

// A number that was refused is not told again as missing.
func TestOneFaultIsToldOnce(t *testing.T) {
	files, _ := with(t, smallBook(t), "facts/carrot.csv", ",height_m,0.3,m,", ",height_m,30,cm,")
	if _, faults := LoadFrom(files); len(faults) != 1 {
		t.Errorf("%d faults, want one:\n%v", len(faults), faults)
	}
}

func TestMissingNumberIsTold(t *testing.T) {
	files, _ := with(t, smallBook(t), "facts/carrot.csv", "early,days_seed,60,d,knott-days,carrot 50-95 d,memory,early kinds pulled young\n", "")
	book, faults := LoadFrom(files)
	if len(faults) != 1 || faults[0].Phrase.Key != "crop.fact_missing" || faults[0].At.File != "uses/roots.csv" {
		t.Fatalf("want one missing number at the row of the use, got:\n%v", faults)
	}
	carrot, ok := book.Crop("carrot")
	if !ok || len(carrot.Uses) != 3 {
		t.Error("the other uses of carrot did not load")
	}
}

// Several faults in several files are all told.
func TestAllFaultsAreTold(t *testing.T) {
	files, _ := with(t, smallBook(t), "facts/carrot.csv", ",height_m,0.3,m,", ",height_m,30,cm,")
	files, _ = with(t, files, "facts/radish.csv", ",leaf_max,3.5,", ",leaf_max,35,")
	files, _ = with(t, files, "names/roots.csv", "mooli,radish,", "mooli,radisch,")
	if _, faults := LoadFrom(files); len(faults) != 3 {
		t.Errorf("%d faults, want three:\n%v", len(faults), faults)
	}
}

func TestSheetsThatCannotBeRead(t *testing.T) {
	for _, c := range []struct{ what, file, text string }{
		{"empty", "facts/carrot.csv", ""},
		{"binary", "facts/carrot.csv", "\x00\x01\x02\x03"},
		{"no column for the unit", "facts/carrot.csv", "use,parameter,value,source,where,mark,note\n"},
		{"open quotes", "names/roots.csv", "name,crop,use\n\"mooli,radish,\n"},
		{"facts of no crop", "facts/carott.csv", "use,parameter,value,unit,source,where,mark,note\n"},
	} {
		files := smallBook(t)
		files[c.file] = &fstest.MapFile{Data: []byte(c.text)}
		if _, faults := LoadFrom(files); len(faults) == 0 || faults[0].At.File != c.file && faultIn(faults, c.file) == nil {
			t.Errorf("%s: no fault names %s:\n%v", c.what, c.file, faults)
		}
	}
	if book, faults := LoadFrom(fstest.MapFS{}); len(faults) == 0 || len(book.Crops()) != 0 {
		t.Error("an empty folder gives no fault")
	}
}

func faultIn(faults fault.List, file string) *fault.Error {
	for _, f := range faults {
		if f.At.File == file {
			return f
		}
	}
	return nil
}
