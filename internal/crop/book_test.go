package crop

import (
	"embed"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"sync"
	"testing"
)

//go:embed testdata
var testdata embed.FS

var loaded = sync.OnceValues(Load)

func load(t testing.TB) *Book {
	t.Helper()
	book, err := loaded()
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// record is a row of a test table by column.
type record map[string]string

func (r record) number(t *testing.T, column string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s: %v", column, err)
	}
	return value
}

func readTestdata(t *testing.T, name string) []record {
	t.Helper()
	file, err := testdata.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	list := make([]record, len(rows)-1)
	for i, cells := range rows[1:] {
		list[i] = record{}
		for k, cell := range cells {
			list[i][rows[0][k]] = cell
		}
	}
	return list
}

func TestEveryParameterHasItsPlaceInUse(t *testing.T) {
	fields := useFields()
	for _, p := range load(t).Parameters() {
		delete(fields, p.Name)
		if p.Unit == "" || p.Meaning == "" || p.Min >= p.Max {
			t.Errorf("%s: unit %q, meaning %q, range %g to %g", p.Name, p.Unit, p.Meaning, p.Min, p.Max)
		}
	}
	for name := range fields {
		t.Errorf("%s of Use is no parameter of the book", name)
	}
}

// What stands in the use is what its provenance says, and both are in range.
func TestEveryNumberHasItsProvenance(t *testing.T) {
	book := load(t)
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, p := range book.Parameters() {
				fact := u.Fact(p.Name)
				if !applies(p.Name, u) {
					if fact != (Fact{}) {
						t.Errorf("%s %s: %s does not apply and has %v", c.ID, u.Name, p.Name, fact)
					}
					continue
				}
				if fact == (Fact{}) && needs[p.Name].optional {
					continue
				}
				if fact.Value != p.get(u) || fact.Unit != p.Unit || fact.Mark == "" {
					t.Errorf("%s %s: %s is %g, provenance %+v", c.ID, u.Name, p.Name, p.get(u), fact)
				}
				if _, ok := book.Source(fact.Source); !ok {
					t.Errorf("%s %s: %s has no source", c.ID, u.Name, p.Name)
				}
				if fact.Value < p.Min || fact.Value > p.Max || math.IsNaN(fact.Value) {
					t.Errorf("%s %s: %s is %g, out of range", c.ID, u.Name, p.Name, fact.Value)
				}
			}
		}
	}
}

// No source is listed for nothing.
func TestEverySourceIsUsed(t *testing.T) {
	book := load(t)
	used := map[string]bool{}
	for _, c := range book.cautions {
		used[c.Source] = true
	}
	for _, f := range book.families {
		used[f.Source] = true
	}
	for _, steps := range book.preparing {
		for _, p := range steps {
			used[p.Source] = true
		}
	}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, fact := range u.resolved.facts {
				if fact != nil {
					used[fact.Source] = true
				}
			}
			for _, s := range u.Storage {
				used[s.Source] = true
			}
		}
	}
	for key := range citedBeside(t) {
		used[key] = true
	}
	for _, s := range book.Sources() {
		if !used[s.Key] {
			t.Errorf("the source %s is listed and no number comes from it", s.Key)
		}
	}
}

// citedBeside are the sources that data of other packages name: they keep one
// list with the book.
func citedBeside(t *testing.T) map[string]bool {
	t.Helper()
	files, err := filepath.Glob("../*/data/*.csv")
	if err != nil || len(files) == 0 {
		t.Fatalf("%v, %v", files, err)
	}
	cited := map[string]bool{}
	for _, name := range files {
		file, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(file).ReadAll()
		file.Close()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for i, column := range rows[0] {
			if column != "source" {
				continue
			}
			for _, row := range rows[1:] {
				cited[row[i]] = true
			}
		}
	}
	return cited
}

// Use over crop over group over class.
func TestNearerNumbersHold(t *testing.T) {
	book := load(t)
	table, storage := use(t, book, "carrot", "table"), use(t, book, "carrot", "storage")
	if table.DaysSeed == storage.DaysSeed {
		t.Error("carrots for the table and for store take the same days")
	}
	if table.BaseC != storage.BaseC {
		t.Error("the base temperature of carrot differs between its uses")
	}
	if f := table.Fact("days_factor"); f.Mark != "fitted" || f.Source != "own-window-fit" || f.Value != table.DaysFactor {
		t.Errorf("days factor of roots: %+v", f)
	}
	if sp := use(t, book, "sweet potato", ""); sp.Fact("soil_minimum_c").Source == "own-window-fit" {
		t.Error("the crop's own least soil temperature does not go before the class's")
	}
}

func use(t *testing.T, b *Book, crop, name string) *Use {
	t.Helper()
	c, _, err := b.Find(crop)
	if err != nil {
		t.Fatal(err)
	}
	u, err := c.Use(name)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

func TestPlantsPerM2(t *testing.T) {
	u := Use{InRowM: 0.1, BetweenRowM: 0.25}
	if got := u.PlantsPerM2(); math.Abs(got-40) > 1e-9 {
		t.Errorf("10 by 25 cm gives %g plants per m2, want 40", got)
	}
}

// The published yield of a crop of one pull lies between a stand of just usable
// pieces and one of pieces half as large again as full size.
func TestYieldFitsStandAndPiece(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			if u.Pattern != Pull {
				continue
			}
			stand := u.PlantsPerM2() * (1 - u.StandLoss) / 1000
			if low, high := stand*u.UsableG, 1.5*stand*u.PieceG; u.YieldKgM2 < low || u.YieldKgM2 > high {
				t.Errorf("%s %s: %.1f kg/m2 of %.0f plants per m2 of %g to %g g give %.1f to %.1f",
					c.ID, u.Name, u.YieldKgM2, u.PlantsPerM2(), u.UsableG, u.PieceG, low, high)
			}
		}
	}
}

// Plants are ready sooner after planting out than after sowing.
func TestPlantingOutIsQuickerThanSowing(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			if u.DaysSeed > 0 && u.DaysPlant > u.DaysSeed {
				t.Errorf("%s %s: %g days from planting out, %g from sowing", c.ID, u.Name, u.DaysPlant, u.DaysSeed)
			}
		}
	}
}

// Loading twice gives the same book.
func TestLoadingIsRepeatable(t *testing.T) {
	first, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(first, load(t)) {
		t.Error("two loads of the book differ")
	}
}

// The usual size at the table lies from the smallest worth picking to the full
// one.
func TestTableSizeLiesBetween(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			if u.TableG != 0 && (u.TableG < u.UsableG || u.TableG > u.PieceG) {
				t.Errorf("%s %s: %g g at the table, usable from %g, full size %g", c.ID, u.Name, u.TableG, u.UsableG, u.PieceG)
			}
		}
	}
}

// What is sown or set in place has its depth, and what is pulled its size at the
// table, dry seed apart.
func TestOptionalNumbersAreGivenWhereTheyMakeSense(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			if sown := u.Allows(Seed) || u.Allows(Set); sown && u.Fact("sow_depth_m") == (Fact{}) {
				t.Errorf("%s %s: no depth of sowing", c.ID, u.Name)
			}
			if pulled := u.Pattern == Pull || u.Pattern == LeafThenHead; pulled && u.DryMatter < 0.8 && u.TableG == 0 {
				t.Errorf("%s %s: no size at the table", c.ID, u.Name)
			}
		}
	}
}

// A row is sown with at least a seed for each plant that will stand in it.
func TestRowIsSownThickEnough(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			if u.Allows(Seed) && u.SowPerM*u.InRowM < 0.99 {
				t.Errorf("%s %s: %g seeds in a metre of row, plants %g m apart", c.ID, u.Name, u.SowPerM, u.InRowM)
			}
		}
	}
}
