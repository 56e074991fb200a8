package exchange

import (
	"fmt"
	"slices"
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

// Beds over each other are warned of once, at the later of the two; a pot may
// stand on a bed, a crown may reach over one, and a wall through one is told.
func TestWhatLiesOverABed(t *testing.T) {
	files := hand(t)
	files["sites.csv"] = strings.Replace(files["sites.csv"], "62,valley,,,", "62,valley,20,12,", 1)
	files["beds.csv"] = "id,site,name,kind,length_m,width_m,shape,x_m,y_m,turn_deg\n" +
		"low,home,Low,bed,4,1,,5,4,\ncross,home,Cross,bed,4,1,,5,4,90\nbeside,home,Beside,bed,4,1,,9,4,\npot,home,Pot,container,0.5,0.5,round,4,4,\nfar,home,Far,bed,4,1,,15,4,\n"
	files["features.csv"] = "id,site,name,kind,x_m,y_m,length_m,width_m,turn_deg,height_m\n" +
		"pear,home,Pear,deciduous tree,5,8,9,9,,4\nwall,home,Wall,wall,15,4,3,0.3,90,2\nalong,home,Along,wall,15,4.65,4,0.3,,2\n"
	for name := range files { // what leans on the beds of the hand-made holding
		if name != "sites.csv" && name != "beds.csv" && name != "features.csv" && name != "holding.csv" && !strings.HasPrefix(name, "weather") {
			if heads, _, found := strings.Cut(files[name], "\n"); found && strings.HasSuffix(name, ".csv") {
				files[name] = heads + "\n"
			}
		}
	}
	files["holding.csv"] = strings.Replace(files["holding.csv"], ",main", ",", 1)
	_, report := CheckFolder(inFolder(files), testBook(t))
	for _, e := range report.Faults {
		t.Errorf("fault %v at %v", e.Phrase, e.At)
	}
	var got []string
	for _, w := range report.Warnings {
		if strings.HasPrefix(w.Phrase.Key, "exchange.beds") || strings.HasPrefix(w.Phrase.Key, "exchange.feature") {
			got = append(got, fmt.Sprint(w.Phrase.Key, " ", w.At.File, " ", w.At.Row))
		}
	}
	if want := []string{"exchange.beds_overlap beds.csv 3", "exchange.feature_in_bed features.csv 3"}; !slices.Equal(got, want) {
		t.Errorf("warned of %q, want %q", got, want)
	}
}
