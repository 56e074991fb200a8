package station_test

import (
	"bytes"
	"testing"

	"garner/internal/climate"
	"garner/internal/station"
)

// held fails when what was kept breaks a rule that holds for every format.
func held(t *testing.T, f *station.Found, err error) {
	if err != nil {
		if len(faultsIn(err)) == 0 {
			t.Errorf("an error that is no fault: %v", err)
		}
		return
	}
	for _, list := range [][]string{told(f.Refused), told(f.Doubtful), told(f.Warnings), told(f.Wrong)} {
		for _, s := range list {
			if s == "" {
				t.Error("a fault that says nothing")
			}
		}
	}
	f.DropDoubtful()
	if f.Days == nil {
		return
	}
	for i, o := range f.Days.Days {
		if i > 0 && o.Date <= f.Days.Days[i-1].Date {
			t.Errorf("day %v after %v", o.Date, f.Days.Days[i-1].Date)
		}
		if o.TMinC.Known && o.TMaxC.Known && o.TMinC.Value > o.TMaxC.Value || o.TMinC.Known && o.TMinC.Value < climate.LeastC || o.RainMM.Known && !(o.RainMM.Value >= 0) {
			t.Errorf("%+v", o)
		}
	}
}

func fuzzFormat(f *testing.F, format station.Format, seeds ...string) {
	for _, s := range seeds {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		found, err := station.Read(bytes.NewReader(raw), "f", format, station.Options{Clock: func(int64) int64 { return 3600 }})
		held(t, found, err)
		station.Recognise(raw, nil)
	})
}

func FuzzGHCNDaily(f *testing.F) { fuzzFormat(f, station.GHCNDaily, string(sampleFile(f, "ghcn.dly"))) }

func FuzzGHCNStation(f *testing.F) {
	fuzzFormat(f, station.GHCNStation, string(sampleFile(f, "ghcn_by_station.csv")), string(sampleFile(f, "ghcn_days.csv")))
}

func FuzzEPW(f *testing.F) { fuzzFormat(f, station.EPW, string(sampleFile(f, "epw.epw"))) }

func FuzzISDLite(f *testing.F) { fuzzFormat(f, station.ISDLite, string(sampleFile(f, "isd_lite.txt"))) }

func FuzzArchive(f *testing.F) { fuzzFormat(f, station.Archive, string(sampleFile(f, "archive.csv"))) }

func FuzzHourlyDays(f *testing.F) {
	fuzzFormat(f, station.HourlyCSV, "time,temp_c,rad_mj_m2\n2026-07-01T00:00Z,1,0\n2026-07-01T01:00+01:30,1,9\n")
}

func FuzzColumnMap(f *testing.F) {
	m := station.ColumnMap{Headings: "d | lo | hi | r | w", Date: "d", DateOrder: "dmy", TMin: "lo", TMax: "hi", TempUnit: "F", Rain: "r", RainUnit: "in", Wind: "w", WindUnit: "kn", WindHeightM: 6, Missing: "M"}
	f.Add([]byte("d,lo,hi,r,w\n1.2.2021,30,50,T,3\n2.2.2021,M,-,1,\n"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		found, err := station.Read(bytes.NewReader(raw), "f", station.MappedCSV, station.Options{Maps: []station.ColumnMap{m}})
		held(t, found, err)
	})
}
