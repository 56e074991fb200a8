package printed

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"garner/internal/crop"
	"garner/internal/fault"
)

// folder is an invented place: mild and maritime, at 51 N.
func folder() fstest.MapFS {
	var normals strings.Builder
	normals.WriteString("region_id,month,tmin_c,tmax_c,precip_mm,sunshine_h\n")
	for i, m := range [][2]float64{{2, 7}, {2, 8}, {3, 10}, {5, 14}, {8, 17}, {11, 20}, {13, 22}, {12, 22}, {10, 19}, {8, 15}, {5, 10}, {2, 8}} {
		fmt.Fprintf(&normals, "here,%d,%g,%g,60,\n", i+1, m[0], m[1])
	}
	return fstest.MapFS{
		"regions.csv": {Data: []byte("region_id,lat,lon,elevation_m,station\nhere,51,-1,80,the airfield\nnowhere,1,1,,\n")},
		"normals.csv": {Data: []byte(normals.String())},
		"dates.csv": {Data: []byte(`region_id,crop,method,start,end,season,precision,orig_text,source
here,carrot,direct,03-15,07-10,all,half-month,mid-March to early July,invented
here,broccoli,,04-01,,spring,month,April,invented
here,kale,start indoors,02-01,,spring,day,1 February,invented
here,moonwort,direct,02-01,,spring,day,1 February,invented
nowhere,carrot,direct,02-29,,spring,day,29 February,invented
`)},
	}
}

func TestRead(t *testing.T) {
	p, err := Read(folder())
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Regions) != 1 || len(p.Dates) != 5 || p.Regions[0].Location.ElevationM != 80 || p.Regions[0].Normals[6].TMaxC != 22 {
		t.Errorf("%+v", p)
	}
	if p.Dates[0].Start != 74 || p.Dates[0].End != 191 || p.Dates[4].Start != 59 {
		t.Errorf("days of the year: %+v", p.Dates)
	}
}

func TestReadPlantingDatesTellsEveryFault(t *testing.T) {
	for _, c := range []struct{ file, text, want string }{
		{"dates.csv", "", "dates.csv"},
		{"dates.csv", "region_id,crop\n", "method"},
		{"dates.csv", "region_id,crop,method,start,end,season,precision,orig_text,source\nhere,carrot,direct,13-01,,spring,day,,\nhere,carrot,direct,,May,spring,day,,\n", "May"},
		{"normals.csv", "region_id,month,tmin_c,tmax_c,precip_mm,sunshine_h\nhere,13,1,2,3,\n", "13"},
		{"regions.csv", "region_id,lat,lon,elevation_m,station\nhere,north,-1,80,x\n", "north"},
	} {
		files := folder()
		files[c.file] = &fstest.MapFile{Data: []byte(c.text)}
		_, err := Read(files)
		if err == nil {
			t.Errorf("%s %q was read", c.file, c.text)
			continue
		}
		var one *fault.Error
		var all fault.List
		if !errors.As(err, &one) && !errors.As(err, &all) {
			t.Errorf("%s: %v is no fault", c.file, err)
		}
		if !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v does not name %s", c.file, err, c.want)
		}
	}
	files := folder()
	delete(files, "regions.csv")
	if _, err := Read(files); err == nil {
		t.Error("a folder without regions was read")
	}
}

func FuzzRead(f *testing.F) {
	whole := folder()
	f.Add(whole["regions.csv"].Data, whole["normals.csv"].Data, whole["dates.csv"].Data)
	f.Fuzz(func(t *testing.T, regions, normals, dates []byte) {
		p, err := Read(fstest.MapFS{"regions.csv": {Data: regions}, "normals.csv": {Data: normals}, "dates.csv": {Data: dates}})
		if err != nil {
			return
		}
		for _, d := range p.Dates {
			if d.Start < 0 || d.Start > 365 || d.End < 0 || d.End > 365 {
				t.Fatalf("%+v lies outside the year", d)
			}
		}
	})
}

// The number of workers and a second run change nothing; a crop that the book
// does not know counts as without an answer.
func TestWindowsAreTheSameForAnyNumberOfWorkers(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	p, err := Read(folder())
	if err != nil {
		t.Fatal(err)
	}
	pace := Pace{Years: 4, Step: 7}
	one, err := Windows(p, book, pace, 1)
	if err != nil {
		t.Fatal(err)
	}
	two, err := Windows(p, book, pace, 3)
	if err != nil {
		t.Fatal(err)
	}
	if len(one) != 4 || len(two) != 4 {
		t.Fatalf("%d and %d rows, want 4: both ends of carrot, broccoli, the unknown", len(one), len(two))
	}
	for i := range one {
		if one[i] != two[i] {
			t.Errorf("row %d: %+v with one worker, %+v with three", i, one[i], two[i])
		}
	}
	if !one[0].Answer || one[0].Group == "" || one[3].Answer {
		t.Errorf("rows: %+v", one)
	}
}
