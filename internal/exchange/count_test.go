package exchange

import (
	"testing"

	"garner/internal/fault"
)

// More in store than was picked, a count above its batch and one in pieces are
// kept and warned of, each in its place.
func TestBatchesAreHeldToTheirPicks(t *testing.T) {
	files := hand(t)
	files["records.csv"] = "id,date,what,planting,store,batch,value,unit\n" +
		"a,2027-02-25,picked,p4,,,2,kg\nb,2027-02-25,counted,,sand,b1,30,kg\nc,2027-02-26,counted,,sand,,12,pieces\n"
	files["batches.csv"] = "id,store,crop,use,kg,stored,planting\nb1,sand,carrot,storage,22.5,2026-10-28,\n" +
		"b2,sand,carrot,early,1.5,2027-02-25,p4\nb3,sand,carrot,early,1.5,2027-02-26,p4\n"
	_, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 0 {
		t.Fatal(report.Faults)
	}
	told := map[string]int{}
	for _, w := range report.Warnings {
		told[w.Phrase.Key] = w.At.Row
	}
	for key, row := range map[string]int{"exchange.batch_above_picks": 4, "exchange.count_above_batch": 3, "exchange.count_unit": 4} {
		if told[key] != row {
			t.Errorf("%s is told in row %d, want %d: %v", key, told[key], row, report.Warnings)
		}
	}
}

// A batch whose crop does not keep in its store has no life to reckon with: it is
// refused where it stands, with the ways there are.
func TestABatchWhereItsCropDoesNotKeep(t *testing.T) {
	files := hand(t)
	change(t, files, "stores.csv", ",damp sand,", ",hung,")
	_, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 1 || report.Faults[0].Phrase.Key != "exchange.batch_does_not_keep" ||
		report.Faults[0].At != (fault.Place{File: "batches.csv", Row: 2, Column: "store"}) {
		t.Fatalf("%v", report.Faults)
	}
	checkWords(t, report.Faults[0])
}

// Stock that cannot come from the store, and more plants for seed than there
// are, are warned of.
func TestPlantingStockThatCannotBe(t *testing.T) {
	files := hand(t)
	files["plantings.csv"] = "id,plan,bed,crop,use,method,date,area_m2,stock,seed_plants\n" +
		"p1,main,h1,carrot,early,seed,2027-03-05,1.5,own,\np3,main,f1,carrot,storage,seed,2027-05-25,1,,90000\n" +
		"p4,main,t1,carrot,early,seed,2027-02-20,0.6,,\np5,main,t1,carrot,early,seed,2027-02-15,2,,\n"
	_, report := CheckFolder(inFolder(files), testBook(t))
	told := map[string]int{}
	for _, w := range report.Warnings {
		told[w.Phrase.Key] = w.At.Row
	}
	if told["exchange.stock_unweighed"] != 2 || told["exchange.seed_plants_above"] != 3 {
		t.Errorf("faults %v, warnings %v", report.Faults, report.Warnings)
	}
}
