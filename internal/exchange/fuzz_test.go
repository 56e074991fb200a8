package exchange

import (
	"bytes"
	"errors"
	"maps"
	"testing"

	"garner/internal/fault"
)

// stable holds what was read to its way back: it can be written, read and
// written the same.
func stable(t *testing.T, files map[string]string) {
	h, report := ReadFolder(inFolder(files))
	if !report.OK() {
		return
	}
	once, err := Write(h)
	if err != nil {
		t.Fatalf("read but not written: %v", err)
	}
	again, report := ReadFolder(written(once))
	if !report.OK() {
		t.Fatalf("written but not read: %v", report.Faults)
	}
	twice, err := Write(again)
	if err != nil {
		t.Fatal(err)
	}
	for name := range once {
		if !bytes.Equal(once[name], twice[name]) {
			t.Fatalf("%s:\n%s\nthen\n%s", name, once[name], twice[name])
		}
	}
}

func FuzzReadZip(f *testing.F) {
	f.Add(packed(f, hand(f)))
	f.Add(packed(f, map[string]string{"a/beds.csv": "id\n", "a/b.png": "x"}))
	f.Add([]byte("PK\x05\x06" + string(make([]byte, 18))))
	f.Fuzz(func(t *testing.T, raw []byte) {
		h, report := ReadZip(bytes.NewReader(raw), int64(len(raw)))
		if report.OK() == (h == nil) {
			t.Fatalf("holding %v with faults %v", h, report.Faults)
		}
	})
}

// One table of a sound holding is replaced by anything.
func FuzzReadTable(f *testing.F) {
	names := []string{"weather/normals.csv", "weather/days.csv"}
	for i := range schemas.Tables {
		names = append(names, schemas.Tables[i].file())
	}
	files := hand(f)
	for i, name := range names {
		f.Add(uint8(i), []byte(files[name]))
	}
	f.Add(uint8(3), []byte("sep=;\nid;bed;kind;on\n1;h1;Mesh;2027-01-01\n"))
	book := testBook(f)
	f.Fuzz(func(t *testing.T, which uint8, content []byte) {
		files := maps.Clone(files)
		files[names[int(which)%len(names)]] = string(content)
		stable(t, files)
		if h, report := CheckFolder(inFolder(files), book); h != nil {
			_ = Check(h, book)
		} else if len(report.Faults) == 0 {
			t.Fatal(errors.New("no holding and no fault"))
		} else if fault.KindOf(report.Faults) == fault.Internal {
			t.Fatal(report.Faults)
		}
	})
}
