package leftout

import (
	"bytes"
	"errors"
	"os"
	"reflect"
	"strings"
	"testing"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/printed"
)

func testBook(t *testing.T) *crop.Book {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	return book
}

func testFree(t *testing.T) []Free {
	t.Helper()
	free, err := FreeNumbers()
	if err != nil {
		t.Fatal(err)
	}
	return free
}

// small is the published dates of some regions and crops.
func small(t *testing.T, regions, crops string) *printed.PlantingDates {
	t.Helper()
	all, err := printed.Published()
	if err != nil {
		t.Fatal(err)
	}
	p := &printed.PlantingDates{}
	for _, r := range all.Regions {
		if strings.Contains(regions, r.ID) {
			p.Regions = append(p.Regions, r)
		}
	}
	for _, d := range all.Dates {
		if strings.Contains(regions, d.Region) && strings.Contains(crops, d.Crop) {
			p.Dates = append(p.Dates, d)
		}
	}
	return p
}

// Every free number is a default that some use of the book takes, so that none
// is fitted in vain, and its prior is within the book's range.
func TestFreeNumbersAreDefaultsOfTheBook(t *testing.T) {
	book := testBook(t)
	for _, f := range testFree(t) {
		moved := book.WithDefaults([]crop.Default{{Scope: f.Scope, Name: f.Name, Parameter: f.Parameter, Value: f.Min}})
		if moved == book && book.WithDefaults([]crop.Default{{Scope: f.Scope, Name: f.Name, Parameter: f.Parameter, Value: f.Max}}) == book {
			t.Errorf("%s %s: %s moves nothing", f.Scope, f.Name, f.Parameter)
		}
		for _, p := range book.Parameters() {
			if p.Name == f.Parameter && (f.Min < p.Min || f.Max > p.Max) {
				t.Errorf("%s %s: %s from %g to %g, the book allows %g to %g", f.Scope, f.Name, f.Parameter, f.Min, f.Max, p.Min, p.Max)
			}
		}
		if _, ok := book.Source(f.Source); !ok {
			t.Errorf("%s %s: no source %q", f.Name, f.Parameter, f.Source)
		}
	}
}

// A number of a crop's own does not move with the default.
func TestOwnNumbersDoNotMove(t *testing.T) {
	book := testBook(t)
	_, own, err := book.Find("carrot")
	if err != nil {
		t.Fatal(err)
	}
	moved := book.WithDefaults([]crop.Default{{Scope: "group", Name: own.Group, Parameter: "days_seed", Value: 1}, {Scope: "class", Name: own.Class, Parameter: "soil_minimum_c", Value: 9}})
	_, changed, err := moved.Find("carrot")
	if err != nil {
		t.Fatal(err)
	}
	if changed.DaysSeed != own.DaysSeed || changed.SoilMinimumC != 9 || own.SoilMinimumC == 9 {
		t.Errorf("days %g and %g, soil %g and %g", own.DaysSeed, changed.DaysSeed, own.SoilMinimumC, changed.SoilMinimumC)
	}
}

func TestPriceRisesWithTheDistance(t *testing.T) {
	before := -1.0
	for off := 0; off <= 60; off += 5 {
		now := price(&printed.Row{Answer: true, Off: off})
		if now < before || now != price(&printed.Row{Answer: true, Off: -off}) {
			t.Errorf("off by %d costs %g, less far %g", off, now, before)
		}
		before = now
	}
	if none := price(&printed.Row{}); none != before {
		t.Errorf("no window costs %g, as far as can be %g", none, before)
	}
	if got := misfit([]printed.Row{{Counted: false, Answer: true, Off: 40}}); got != 0 {
		t.Errorf("a date told apart costs %g", got)
	}
}

// The dates of the region left out do not touch the fit: changed beyond
// recognition, they leave every number as it was. Nor does the number of workers.
func TestTheRegionLeftOutIsNotSeen(t *testing.T) {
	book, free := testBook(t), testFree(t)[:5]
	fit := func(p *printed.PlantingDates, workers int) []float64 {
		exam, err := printed.NewExam(p, printed.Pace{Years: 8, Step: 14})
		if err != nil {
			t.Fatal(err)
		}
		return Fit(exam, book, free, func(d *printed.Date) bool { return d.Region != "SC-PIED" }, workers)
	}
	p := small(t, "KS-E SC-PIED", "spinach beet tomato bean, snap")
	want := fit(p, 1)
	if reflect.DeepEqual(want, priors(free)) {
		t.Error("nothing was fitted")
	}
	for i := range p.Dates {
		if d := &p.Dates[i]; d.Region == "SC-PIED" {
			d.Start, d.End = 180, 190
		}
	}
	if got := fit(p, 2); !reflect.DeepEqual(got, want) {
		t.Errorf("with other dates in the region left out %v, before %v", got, want)
	}
}

// A run that was broken off goes on where it stopped and comes to the same.
func TestRunGoesOn(t *testing.T) {
	book, free := testBook(t), testFree(t)[:2]
	p := small(t, "KS-E SC-PIED", "spinach")
	stop := errors.New("broken off")
	var kept []Fold
	keep := func(all []Fold) error {
		kept = append([]Fold(nil), all...)
		return nil
	}
	whole, err := Run(p, book, free, nil, 1, keep)
	if err != nil || len(whole) != 3 || len(kept) != 3 {
		t.Fatalf("%d fits, %d kept, %v", len(whole), len(kept), err)
	}
	_, err = Run(p, book, free, nil, 1, func(all []Fold) error { _ = keep(all); return stop })
	if !errors.Is(err, stop) || len(kept) != 1 {
		t.Fatalf("%d kept, %v", len(kept), err)
	}
	read, err := readFolds(WriteFolds(free, kept), free)
	if err != nil {
		t.Fatal(err)
	}
	made := 0
	again, err := Run(p, book, free, read, 1, func([]Fold) error { made++; return nil })
	if err != nil || made != 2 || !reflect.DeepEqual(again, whole) {
		t.Errorf("made %d more, %v: %v, want %v", made, err, again, whole)
	}
	free[0].Prior += 0.25
	made = 0
	if _, err = Run(p, book, free, read, 1, func([]Fold) error { made++; return nil }); err != nil || made != 3 {
		t.Errorf("with another prior %d of 3 fits were made anew, %v", made, err)
	}
}

func TestFoldsThatLackNumbersAreMadeAnew(t *testing.T) {
	free := testFree(t)
	text := WriteFolds(free[:3], []Fold{{LeftOut: "KS-E", Values: make([]float64, 3)}})
	folds, err := readFolds(text, free)
	if err != nil || len(folds) != 0 {
		t.Errorf("%d fits, %v", len(folds), err)
	}
	if _, err = readFolds([]byte("left_out,digest,scope,name,parameter,value\nKS-E,x,class,hardy,soil_minimum_c,warm\n"), free); err == nil {
		t.Error("a word was read as a number")
	}
	if _, err = readFolds([]byte("left_out,value\n"), free); err == nil {
		t.Error("a file without its columns was read")
	}
}

func TestBadFreeNumbersAreRefused(t *testing.T) {
	head := strings.Join(freeColumns, ",") + "\n"
	for _, text := range []string{
		"scope,name\n",
		head + "class,hardy,soil_minimum_c,warm,1,0,8,judgement,judgement\n",
		head + "class,hardy,soil_minimum_c,9,1,0,8,judgement,judgement\n",
		head + "class,hardy,soil_minimum_c,5,0,0,8,judgement,judgement\n",
	} {
		if _, err := readFree([]byte(text)); err == nil {
			t.Errorf("%q was read", text)
		}
	}
}

// The kept fits are of the regions that are printed, one each and one to all, and
// the book's defaults are those of the fit to all.
func TestTheBookHoldsTheFitToAll(t *testing.T) {
	free := testFree(t)
	folds, err := Folds(free)
	if err != nil {
		t.Fatal(err)
	}
	dates, err := printed.Published()
	if err != nil {
		t.Fatal(err)
	}
	if len(folds) != len(dates.Regions)+1 {
		t.Errorf("%d fits of %d regions", len(folds), len(dates.Regions))
	}
	file, err := os.ReadFile("../crop/data/defaults.csv")
	if err != nil {
		t.Fatal(err)
	}
	again, err := Rewrite(file, free, folds)
	if err != nil || !bytes.Equal(again, file) {
		t.Errorf("the defaults are not those of the fit, %v; make calibrate-windows", err)
	}
}

func TestARegionWithoutItsFitIsRefused(t *testing.T) {
	_, err := blind(small(t, "KS-E", "spinach"), testBook(t), testFree(t), nil, printed.CoarsePace, 1)
	var f *fault.Error
	if !errors.As(err, &f) || f.Kind != fault.NotFound {
		t.Errorf("%v", err)
	}
}
