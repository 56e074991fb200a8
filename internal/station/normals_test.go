package station_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
)

const soundNormals = `month,tmin_c,tmax_c,rain_mm,sun_h
1,0.45,5.73,72.2,2.01
2,0.27,6.59,56.1,3.15
3,2.21,10.16,63.1,4.12
4,4.2,14.22,42.6,5.95
5,7.84,18.13,59.5,6.84
6,10.63,20.54,68.2,6.52
7,12.86,22.83,84.6,6.72
8,12.33,22.58,74.8,6.15
9,9.96,19.25,75.8,4.83
10,7.04,14.8,82.1,3.71
11,3.69,9.7,78.1,2.18
12,1.5,6.61,80.2,1.63
`

func rewriteNormals(t *testing.T, n *climate.Normals) string {
	t.Helper()
	var b bytes.Buffer
	if err := station.WriteNormals(&b, n); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestNormalsRoundTrip(t *testing.T) {
	n, err := station.ReadNormals(strings.NewReader(soundNormals), "n.csv")
	if err != nil {
		t.Fatal(err)
	}
	if got := rewriteNormals(t, n); got != soundNormals {
		t.Error(cmp.Diff(soundNormals, got))
	}
	if n[6].SunH != climate.Is(6.72) || n[6].RadiationMJ.Known {
		t.Errorf("July %+v", n[6])
	}
}

func TestNormalsTellAllFaultsAtOnce(t *testing.T) {
	text := strings.NewReplacer(
		"1,0.45,5.73,72.2,2.01", "1,5.73,0.45,72.2,2.01",
		"3,2.21,10.16,63.1,4.12", "3,2.21,,63.1,x",
		"4,4.2,14.22,42.6,5.95", "4,4.2,14.22,-1,178",
		"5,7.84", "4,7.84",
		"9,9.96", "13,9.96",
	).Replace(soundNormals)
	_, err := station.ReadNormals(strings.NewReader(text), "n.csv")
	var got fault.List
	if !errors.As(err, &got) {
		t.Fatal(err)
	}
	want := []string{
		"0:month:station.month_missing", "0:month:station.month_missing",
		"2:tmin_c:station.minimum_above_maximum",
		"4:tmax_c:station.value_missing", "4:sun_h:station.not_a_number",
		"5:rain_mm:station.value_impossible", "5:sun_h:station.monthly_sum",
		"6:month:station.month_twice", "10:month:station.no_such_month",
	}
	if diff := cmp.Diff(want, told(got)); diff != "" {
		t.Error(diff)
	}
}

func TestNormalsRefuseFahrenheitAndHoles(t *testing.T) {
	var hot strings.Builder
	hot.WriteString("month,tmin_c,tmax_c,rain_mm\n")
	for _, row := range strings.Split(strings.TrimSpace(soundNormals), "\n")[1:] {
		hot.WriteString(row[:strings.Index(row, ",")] + ",33,52,50\n")
	}
	_, err := station.ReadNormals(strings.NewReader(hot.String()), "n.csv")
	if keyOf(err) != "station.normals_fahrenheit" {
		t.Error(err)
	}
	_, err = station.ReadNormals(strings.NewReader(strings.Replace(soundNormals, "80.2,1.63", "80.2,", 1)), "n.csv")
	if keyOf(err) != "station.column_has_holes" {
		t.Error(err)
	}
}

func FuzzReadNormals(f *testing.F) {
	f.Add([]byte(soundNormals))
	f.Add([]byte(strings.ReplaceAll(strings.ReplaceAll(soundNormals, ",", ";"), ".", ",")))
	f.Add([]byte("month,tmin_c,tmax_c,rain_mm\n1,1,0,1\n"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		n, err := station.ReadNormals(bytes.NewReader(raw), "n.csv")
		if err != nil {
			return
		}
		once := rewriteNormals(t, n)
		again, err := station.ReadNormals(strings.NewReader(once), "n.csv")
		if err != nil {
			t.Fatalf("what was written is refused: %v\n%s", err, once)
		}
		if twice := rewriteNormals(t, again); once != twice {
			t.Fatalf("%q became %q", once, twice)
		}
	})
}
