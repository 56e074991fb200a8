package exchange

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

// packed makes a zip of files by name.
func packed(t testing.TB, files map[string]string) []byte {
	t.Helper()
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for name, content := range files {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(content)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestZipsThatAreNoHoldingAreRefusedEarly(t *testing.T) {
	plus := func(name, content string) []byte {
		files := hand(t)
		files[name] = content
		return packed(t, files)
	}
	many := hand(t)
	for i := range mostFiles {
		many[fmt.Sprintf("weather/%d.csv", i)] = "a\n"
	}
	cases := map[string]struct {
		raw []byte
		key string
	}{
		"no zip":          {[]byte("id,name\n"), "exchange.not_a_zip"},
		"empty":           {nil, "exchange.not_a_zip"},
		"cut off":         {plus("x.csv", "a\n")[:500], "exchange.not_a_zip"},
		"climbing out":    {plus("../beds.csv", "a\n"), "exchange.bad_path"},
		"from the root":   {plus("/etc/beds.csv", "a\n"), "exchange.bad_path"},
		"backslashes":     {plus(`..\beds.csv`, "a\n"), "exchange.bad_path"},
		"a drive":         {plus(`c:beds.csv`, "a\n"), "exchange.bad_path"},
		"many files":      {packed(t, many), "exchange.too_many_files"},
		"a hundred MB":    {plus("weather/more.csv", strings.Repeat("0", mostBytes)), "exchange.too_large"},
		"a lying size":    {lying(t), "exchange.unreadable_file"},
		"a picture":       {plus("beds.csv", "\x89PNG\r\n\x1a\n\x00\x00"), "table.binary"},
		"the folder only": {packed(t, map[string]string{"a/": ""}), "exchange.table_missing"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			h, report := ReadZip(bytes.NewReader(c.raw), int64(len(c.raw)))
			if h != nil || len(report.Faults) == 0 || report.Faults[0].Phrase.Key != c.key {
				t.Errorf("%v, want %s", report.Faults, c.key)
			}
			for _, f := range report.Faults {
				checkWords(t, f)
			}
		})
	}
	if _, report := ReadZip(bytes.NewReader(nil), mostBytes+1); report.Faults[0].Phrase.Key != "exchange.too_large" {
		t.Error(report.Faults)
	}
}

// lying makes a zip whose directory says that a large file is small.
func lying(t *testing.T) []byte {
	raw := packed(t, map[string]string{"holding.csv": strings.Repeat("0", 1<<20)})
	at := bytes.LastIndex(raw, []byte("PK\x01\x02"))
	binary.LittleEndian.PutUint32(raw[at+24:], 10)
	return raw
}

func TestTwoFilesOfOneNameAreRefused(t *testing.T) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for range 2 {
		if _, err := z.Create("beds.csv"); err != nil {
			t.Fatal(err)
		}
	}
	z.Close()
	_, report := ReadZip(bytes.NewReader(out.Bytes()), int64(out.Len()))
	if len(report.Faults) != 1 || report.Faults[0].Phrase.Key != "exchange.file_twice" {
		t.Error(report.Faults)
	}
}

func TestFoldersThatAreNoHoldingAreRefusedEarly(t *testing.T) {
	many := fstest.MapFS{}
	for i := range mostEntries {
		many[fmt.Sprintf("photos/%d.jpg", i)] = &fstest.MapFile{}
	}
	large := inFolder(hand(t))
	large["weather/more.csv"] = &fstest.MapFile{Data: make([]byte, mostBytes)}
	for key, folder := range map[string]fstest.MapFS{"exchange.too_many_files": many, "exchange.too_large": large} {
		_, report := ReadFolder(folder)
		if len(report.Faults) != 1 || report.Faults[0].Phrase.Key != key {
			t.Errorf("%v, want %s", report.Faults, key)
		}
	}
}
