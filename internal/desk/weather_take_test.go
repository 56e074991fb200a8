package desk_test

import (
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
)

// readText reads a weather file that is a text.
func readText(t testing.TB, o *desk.Office, name, text string) *desk.WeatherFound {
	t.Helper()
	f, err := o.ReadWeather(desk.WeatherInput{Name: name, Open: func() (io.ReadCloser, error) { return io.NopCloser(strings.NewReader(text)), nil }}, desk.WeatherHow{})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func take(t testing.TB, o *desk.Office, entry string, how desk.WeatherTake, found ...*desk.WeatherFound) *desk.KeptEntry {
	t.Helper()
	e, err := o.TakeWeather(by(entry), found, how)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

const (
	twoDays = "date,tmin_c,tmax_c\n2026-02-01,1,5\n2026-02-02,2,6\n"
	badDays = "date,tmin_c,tmax_c\n2026-03-01,1,5\n2026-03-01,2,6\n2026-03-02,2,warm\n2026-03-04,2,6\n"
)

// Several files are one entry; when any of them is wrong none is kept; the good
// rows are kept on request; and all of it can be undone.
func TestWeatherFilesAreOneEntryOrNone(t *testing.T) {
	o := office(t)
	start := export(t, o)
	good, bad := readText(t, o, "good.csv", twoDays), readText(t, o, "bad.csv", badDays)
	if _, err := o.TakeWeather(by("a"), []*desk.WeatherFound{good, bad}, desk.WeatherTake{}); err == nil || export(t, o) != start {
		t.Fatalf("something was kept, %v", err)
	} else if list, ok := err.(fault.List); !ok || len(list) != 2 || list[0].At.Row != 3 || list[1].At.Column != "tmax_c" {
		t.Errorf("%v", err)
	}
	take(t, o, "b", desk.WeatherTake{KeepGood: true}, good, bad)
	entries, err := o.Entries(10)
	if err != nil || entries[0].ID != "b" {
		t.Fatalf("%v, %v", entries, err)
	}
	h, err := o.Holding()
	if err != nil || len(h.Files) < 2 {
		t.Fatalf("%+v, %v", h.Files, err)
	}
	last := h.Files[len(h.Files)-1]
	if last.Name != "bad.csv" || last.LeftOut != 2 || len(last.Record.Days) != 3 {
		t.Errorf("%+v", last)
	}
	if _, err := o.Undo(by("c"), "b"); err != nil || export(t, o) != start {
		t.Errorf("undone, and not as it was: %v", err)
	}
}

// The same file again says nothing new; a longer one is laid over it; removed, its
// days are gone.
func TestAWeatherFileAgain(t *testing.T) {
	o := office(t)
	start := export(t, o)
	take(t, o, "a", desk.WeatherTake{}, readText(t, o, "f.csv", twoDays))
	if e := take(t, o, "b", desk.WeatherTake{}, readText(t, o, "f.csv", twoDays)); len(e.Changes) > 0 {
		t.Errorf("%+v", e.Changes)
	}
	take(t, o, "c", desk.WeatherTake{}, readText(t, o, "f.csv", "date,tmin_c,tmax_c\n2026-02-02,3,7\n2026-02-03,2,6\n"))
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	f := h.Files[len(h.Files)-1]
	if len(f.Record.Days) != 3 || f.Record.Days[1].TMinC != climate.Is(3) {
		t.Errorf("%+v", f.Record.Days)
	}
	if _, err := o.RemoveWeatherFile(by("d"), f.ID); err != nil || export(t, o) != start {
		t.Errorf("removed, and not as it was: %v", err)
	}
	if _, err := o.RemoveWeatherFile(by("e"), f.ID); fault.KindOf(err) != fault.NotFound {
		t.Error(err)
	}
}

// Hours of a file are kept with their days under the file they came from, merged
// when more of the station comes, told again the same, and gone with the file.
func TestHoursOfAFileAreKept(t *testing.T) {
	o := office(t)
	start := export(t, o)
	hours := func(first cal.Date, days int) string {
		b := strings.Builder{}
		b.WriteString("time,temp_c,rh_pct\n")
		for i := range 24 * days {
			fmt.Fprintf(&b, "%sT%02d:00,%d,93\n", first+cal.Date(i/24), i%24, 12+i%3)
		}
		return b.String()
	}
	first := cal.Of(2026, 6, 1)
	found := readText(t, o, "h.csv", hours(first, 3))
	if found.HourDays != 3 {
		t.Errorf("%d days by the hour are told", found.HourDays)
	}
	take(t, o, "a", desk.WeatherTake{}, found)
	take(t, o, "b", desk.WeatherTake{}, readText(t, o, "h.csv", hours(first+2, 2)))
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	f := h.Files[len(h.Files)-1]
	if f.Name != "h.csv" || len(f.Hours) != 4*24 || f.Hours[0].Date != first {
		t.Fatalf("%s has %d hours", f.Name, len(f.Hours))
	}
	at := slices.IndexFunc(h.Weather, func(w holding.WeatherSource) bool { return w.ID == f.Weather })
	if w := &h.Weather[at]; len(w.Hours) < 4*24 || len(w.Own().Hours)+4*24 != len(w.Hours) {
		t.Errorf("the source has %d hours, of its own %d", len(w.Hours), len(w.Own().Hours))
	}
	if e := take(t, o, "c", desk.WeatherTake{}, readText(t, o, "h.csv", hours(first+2, 2))); len(e.Changes) > 0 {
		t.Errorf("the same again: %+v", e.Changes)
	}
	if _, err := o.RemoveWeatherFile(by("d"), f.ID); err != nil || export(t, o) != start {
		t.Errorf("removed, and not as it was: %v", err)
	}
}

// A household that begins has no days; a file gives them to its site, and the
// table is computed with them.
func TestRainAloneGoesBesideWhatIsKnown(t *testing.T) {
	o := office(t)
	text := "ID,DATE,ELEMENT,DATA_VALUE\n"
	for i := range 40 {
		text += fmt.Sprintf("XX000000001,%s,PRCP,%d\n", strings.ReplaceAll((cal.Of(2026, 1, 1)+cal.Date(i)).String(), "-", ""), 10*(i%4))
	}
	f := readText(t, o, "rain.csv", text)
	if f.Days != 40 || f.Faulty() {
		t.Fatalf("%+v", f)
	}
	take(t, o, "a", desk.WeatherTake{}, f)
	view, err := o.WeatherFiles()
	if err != nil || view.Sites[0].All == nil {
		t.Fatalf("%+v, %v", view, err)
	}
	if _, err := o.TableView(nil); err != nil {
		t.Error(err)
	}
}

// A watched folder takes a file in once it rests, leaves bad ones alone, takes a
// changed one anew, and does not bring back what was undone.
func TestWatchedFolder(t *testing.T) {
	o := office(t)
	start := export(t, o)
	dir := t.TempDir()
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	w := desk.NewWatcher(dir, o, "Mara")
	now := time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC)
	look := func(want string) {
		t.Helper()
		now = now.Add(time.Minute)
		w.Look(now)
		var got []string
		for _, f := range w.View().Files {
			got = append(got, f.Name+" "+string(f.State))
		}
		if strings.Join(got, ", ") != want {
			t.Fatalf("%s, not %s", strings.Join(got, ", "), want)
		}
	}
	write("good.csv", twoDays)
	write("bad.csv", badDays)
	write("notes.txt", "dear diary\n")
	write(".hidden.csv", twoDays)
	look("bad.csv waiting, good.csv waiting, notes.txt waiting")
	look("bad.csv bad, good.csv taken, notes.txt unknown")
	if v := w.View(); len(v.Files[0].Faults) != 2 || v.Wrong != nil {
		t.Errorf("%+v", v)
	}
	look("bad.csv bad, good.csv taken, notes.txt unknown")
	entries, err := o.Entries(3)
	if err != nil || entries[0].Who != "Mara" || entries[0].Device != "folder" {
		t.Fatalf("%+v, %v", entries, err)
	}
	if _, err := o.Undo(by("u"), entries[0].ID); err != nil || export(t, o) != start {
		t.Fatal(err)
	}
	w = desk.NewWatcher(dir, o, "Mara") // as after a restart
	look("bad.csv waiting, good.csv waiting, notes.txt waiting")
	look("bad.csv bad, good.csv same, notes.txt unknown")
	if export(t, o) != start {
		t.Error("what was undone came back")
	}
	write("good.csv", twoDays+"2026-02-03,1,4\n")
	look("bad.csv bad, good.csv same, notes.txt unknown")
	look("bad.csv bad, good.csv taken, notes.txt unknown")
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	look("bad.csv bad, good.csv taken, notes.txt unknown")
	if w.View().Wrong == nil {
		t.Error("a folder that is gone is told")
	}
}

// thirtyYears is a made-up station of thirty years in GHCN-Daily: minimum,
// maximum, rain and wind of 10,958 days.
func thirtyYears() string {
	var b strings.Builder
	for year := 1990; year < 2020; year++ {
		for month := 1; month <= 12; month++ {
			for k, element := range []string{"TMAX", "TMIN", "PRCP", "AWND"} {
				fmt.Fprintf(&b, "XX000000009%d%02d%s", year, month, element)
				for day := range 31 {
					v := -9999
					if date := cal.Of(year, month, 1) + cal.Date(day); date.Month() == month {
						mean := 100 - 80*math.Cos(2*math.Pi*float64(date.DayOfYear())/365)
						v = []int{int(mean) + 40 + day%7, int(mean) - 40 - day%5, day % 3 * 37, 30}[k]
					}
					fmt.Fprintf(&b, "%5d   ", v)
				}
				b.WriteByte('\n')
			}
		}
	}
	return b.String()
}

// Reading, keeping and what follows: the holding with the days, ready for the next
// page.
func BenchmarkImportThirtyYears(b *testing.B) {
	text := thirtyYears()
	for b.Loop() {
		b.StopTimer()
		o := office(b)
		b.StartTimer()
		f := readText(b, o, "s.dly", text)
		if take(b, o, "a", desk.WeatherTake{}, f); f.Days != 10957 {
			b.Fatal(f.Days)
		}
		if _, err := o.Holding(); err != nil {
			b.Fatal(err)
		}
	}
}

// The same of twenty years of hours, which are kept without a limit but the file's size.
func BenchmarkImportTwentyYearsOfHours(b *testing.B) {
	var text strings.Builder
	text.WriteString("time,temp_c,rh_pct,rain_mm,wind_ms\n")
	for i := range 20 * 365 * 24 {
		mean := 10 - 8*math.Cos(2*math.Pi*float64(i/24)/365)
		fmt.Fprintf(&text, "%vT%02d:00,%.1f,%d,%.1f,%.1f\n", cal.Of(2004, 1, 1)+cal.Date(i/24), i%24, mean+float64(i%24)/4, 60+i%40, float64(i%7)/5, 1+float64(i%5))
	}
	for b.Loop() {
		b.StopTimer()
		o := office(b)
		b.StartTimer()
		f := readText(b, o, "h.csv", text.String())
		if take(b, o, "a", desk.WeatherTake{}, f); f.HourDays != 20*365 {
			b.Fatal(f.HourDays)
		}
		if _, err := o.Holding(); err != nil {
			b.Fatal(err)
		}
	}
}
