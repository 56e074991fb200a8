package exchange

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"strings"
	"testing"
	"testing/fstest"
	_ "time/tzdata" // as in the program, so that zones are known on any machine

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
)

// hand returns the files of the holding under testdata, written by hand, which
// a test may alter.
func hand(t testing.TB) map[string]string {
	t.Helper()
	files := map[string]string{}
	root := os.DirFS("testdata/hand")
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		content, err := fs.ReadFile(root, name)
		files[name] = string(content)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func inFolder(files map[string]string) fstest.MapFS {
	folder := fstest.MapFS{}
	for name, content := range files {
		folder[name] = &fstest.MapFile{Data: []byte(content)}
	}
	return folder
}

func written(files map[string][]byte) fstest.MapFS {
	folder := fstest.MapFS{}
	for name, content := range files {
		folder[name] = &fstest.MapFile{Data: content}
	}
	return folder
}

func mustRead(t testing.TB, fsys fs.FS) *holding.Holding {
	t.Helper()
	h, report := ReadFolder(fsys)
	if !report.OK() {
		t.Fatal(report.Faults)
	}
	return h
}

func mustWrite(t testing.TB, h *holding.Holding) map[string][]byte {
	t.Helper()
	files, err := Write(h)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func testBook(t testing.TB) *crop.Book {
	t.Helper()
	book, err := crop.Load()
	if book == nil {
		t.Fatal(err)
	}
	return book
}

// change replaces the one place of a file where old stands.
func change(t testing.TB, files map[string]string, name, old, new string) {
	t.Helper()
	if strings.Count(files[name], old) != 1 {
		t.Fatalf("%s holds %q %d times", name, old, strings.Count(files[name], old))
	}
	files[name] = strings.Replace(files[name], old, new, 1)
}

// sameRows compares holdings, rows of weather files left out of account.
var sameRows = cmpopts.IgnoreFields(climate.Observation{}, "Row")

func TestHandMadeHoldingIsSound(t *testing.T) {
	h, report := CheckFolder(inFolder(hand(t)), testBook(t))
	if len(report.Faults)+len(report.Warnings) > 0 {
		t.Fatalf("faults:\n%v\nwarnings:\n%v", report.Faults, report.Warnings)
	}
	want := map[string]int{"holding": 1, "sites": 2, "beds": 4, "water_sources": 2, "moisture_readings": 3, "covers": 3, "crops": 1, "varieties": 2, "plans": 3, "plantings": 5, "changes": 5, "wishes": 3, "own_jobs": 2, "job_answers": 2,
		"wants": 2, "groups": 2, "members": 2, "visits": 2, "gaps_left": 1, "purchases": 1, "stores": 1, "batches": 1, "records": 4, "weather": 1, "weather_files": 1, "column_maps": 1, "weather/normals.csv": 12, "weather/days.csv": 4, "weather/station.csv": 2}
	if diff := cmp.Diff(want, report.Rows); diff != "" {
		t.Error(diff)
	}
	if faults := Check(h, testBook(t)); len(faults) > 0 {
		t.Error(faults)
	}
}

func TestReadFillsEveryField(t *testing.T) {
	h := mustRead(t, inFolder(hand(t)))
	switch {
	case h.Name != "Elm Row, back gardens", h.Today.String() != "2027-03-01", h.Eaters != 3.5,
		h.Sites[1].Location.LongitudeDeg != -2.75, h.Beds[1].Light != 0.6, h.Covers[0].Off.IsSet(),
		h.Covers[1].Off.String() != "2027-05-10", h.Overrides[0].Value != "84", h.Varieties[1].Name != `Old "Keeper"`,
		h.Plans[2].Base != "more", h.Plantings[4].Method != "", h.Plantings[3].Relation != "between",
		h.Plantings[2].DateWithinD != 5, h.Plantings[2].AreaWithin != 0.25,
		h.Changes[1].Order != 2, h.Wants[1].From.String() != "10-01", h.Stores[0].CapacityKg != 80,
		h.Batches[0].Stored.String() != "2026-10-28", h.Records[1].Unit != "kg",
		!strings.HasSuffix(h.Records[3].Note, "froze,\nand thawed by noon."),
		h.Weather[0].Normals[6].TMaxC != 22.1, h.Weather[0].Own().Record.Days[2].RainMM.Known, h.Weather[0].Forecast != nil,
		h.Files[0].LeftOut != 2, h.Files[0].Record.Days[1].TMaxC != climate.Is(6), h.Maps[0].RainUnit != "in":
		t.Errorf("%+v", h)
	}
}

// A home station's days count before the record; a day that it does not tell, and
// a day that only it tells, are there as well.
func TestWeatherFilesAreLaidOverTheRecord(t *testing.T) {
	w := mustRead(t, inFolder(hand(t))).Weather[0]
	days := w.Record.Days
	if len(days) != 5 || days[2].TMinC != climate.Is(1.5) || days[2].RainMM != climate.Is(2.4) || days[3].TMaxC != climate.Is(6) || days[4].TMinC != climate.Is(-2.1) {
		t.Errorf("%+v", days)
	}
	if own := w.Own().Record.Days; len(own) != 4 || own[2].TMinC != climate.Is(2.5) {
		t.Errorf("the record itself is %+v", own)
	}
}

func TestExportIsAFixedPoint(t *testing.T) {
	once := mustWrite(t, mustRead(t, inFolder(hand(t))))
	twice := mustWrite(t, mustRead(t, written(once)))
	if diff := cmp.Diff(once, twice); diff != "" {
		t.Error(diff)
	}
	// The hand-made tables are already in the written form.
	for name, content := range hand(t) {
		if string(once[name]) != content {
			t.Errorf("%s: %s", name, cmp.Diff(content, string(once[name])))
		}
	}
}

func TestZipHoldsTheSameAsTheFolder(t *testing.T) {
	h := mustRead(t, inFolder(hand(t)))
	var first, second bytes.Buffer
	for _, out := range []*bytes.Buffer{&first, &second} {
		if err := WriteZip(out, h); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("the same holding gave two different zips")
	}
	again, report := ReadZip(bytes.NewReader(first.Bytes()), int64(first.Len()))
	if !report.OK() {
		t.Fatal(report.Faults)
	}
	if diff := cmp.Diff(h, again); diff != "" {
		t.Error(diff)
	}
}

func TestOptionalTablesMayBeMissing(t *testing.T) {
	files := hand(t)
	for name := range maps.Clone(files) {
		if name != "holding.csv" && name != "sites.csv" && name != "beds.csv" {
			delete(files, name)
		}
	}
	change(t, files, "holding.csv", ",main", ",")
	change(t, files, "beds.csv", ",butt\n", ",\n")
	files["sites.csv"] = strings.ReplaceAll(files["sites.csv"], "valley", "")
	_, report := CheckFolder(inFolder(files), testBook(t))
	if !report.OK() || len(report.Warnings) != 2 {
		t.Errorf("faults:\n%v\nwarnings:\n%v", report.Faults, report.Warnings)
	}
}

func TestDefaultsFillBlankCells(t *testing.T) {
	files := hand(t)
	files["beds.csv"] = "id,site,name,length_m,width_m\nh1,home,Long bed,6,1.2\nh2,home,b,4,1\nt1,field,c,8,2\nf1,field,d,12,1.2\n"
	h := mustRead(t, inFolder(files))
	if b := h.Beds[0]; b.Kind != "bed" || b.Light != 1 || b.Soil != "fair" || b.Order != 0 {
		t.Errorf("%+v", b)
	}
}

func TestWriteRefusesWhatCouldNotBeReadAgain(t *testing.T) {
	cases := map[string]func(*holding.Holding){
		"exchange.blank":           func(h *holding.Holding) { h.Beds[0].ID = "" },
		"exchange.not_a_number":    func(h *holding.Holding) { h.Beds[0].LengthM = nan },
		"exchange.same_id":         func(h *holding.Holding) { h.Beds[0].ID = "h2" },
		"exchange.bad_file_name":   func(h *holding.Holding) { h.Weather[0].NormalFile = "../n.csv" },
		"exchange.file_is_table":   func(h *holding.Holding) { h.Weather[0].NormalFile = "Beds.csv" },
		"exchange.file_shared":     func(h *holding.Holding) { h.Weather[0].NormalFile = "weather/days.csv" },
		"station.value_impossible": func(h *holding.Holding) { h.Weather[0].Own().Record.Days[0].RainMM = climate.Is(-3) },
	}
	for key, spoil := range cases {
		h := mustRead(t, inFolder(hand(t)))
		spoil(h)
		_, err := Write(h)
		faults, ok := err.(fault.List)
		if !ok || len(faults) == 0 {
			t.Errorf("%s: %v", key, err)
			continue
		}
		found := false
		for _, f := range faults {
			found = found || f.Phrase.Key == key
		}
		if !found {
			t.Errorf("%s: %v", key, err)
		}
		if err := WriteZip(new(bytes.Buffer), h); err == nil {
			t.Errorf("%s: a zip was written", key)
		}
	}
}

// Files written before the plan of a site and its beds was known say the same.
func TestFilesOfEarlierColumnsAreRead(t *testing.T) {
	now := mustWrite(t, mustRead(t, inFolder(hand(t))))
	before := mustWrite(t, mustRead(t, os.DirFS("testdata/before-plans")))
	if diff := cmp.Diff(now, before); diff != "" {
		t.Error(diff)
	}
}
