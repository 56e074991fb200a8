package exchange

import (
	"strings"
	"testing"
)

// A bed drawn outside its site's plan is told with how to mend it; what stands in
// a bed is only warned of, and a crown that begins above its top is a fault.
func TestWhatIsDrawnIsHeldToThePlan(t *testing.T) {
	files := hand(t)
	files["sites.csv"] = strings.Replace(files["sites.csv"], "62,valley,,,", "62,valley,10,8,", 1)
	files["beds.csv"] = strings.Replace(files["beds.csv"], "0.85,good,1,,,,,", "0.85,good,1,,9,4,,", 1)
	_, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 1 || report.Faults[0].Phrase.Key != "exchange.bed_outside" || report.Faults[0].At.Row != 2 {
		t.Fatalf("%v", report.Faults)
	}
	files["beds.csv"] = strings.Replace(files["beds.csv"], "0.85,good,1,,9,4,,", "0.85,good,1,,5,4,,", 1)
	files["features.csv"] = "id,site,name,kind,x_m,y_m,length_m,width_m,height_m,base_m\n" +
		"pear,home,Pear,deciduous tree,5,4,3,3,4,1\nplum,home,Plum,deciduous tree,-2,4,3,3,4,5\n"
	_, report = CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 1 || report.Faults[0].Phrase.Key != "exchange.base_above_top" {
		t.Errorf("faults %v", report.Faults)
	}
	if len(report.Warnings) != 1 || report.Warnings[0].Phrase.Key != "exchange.feature_in_bed" {
		t.Errorf("warnings %v", report.Warnings)
	}
}
