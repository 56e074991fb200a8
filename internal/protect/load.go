package protect

import (
	"embed"
	"io/fs"
	"slices"
	"sync"

	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/table"
)

//go:embed data/*.csv
var data embed.FS

// Pest is a pest that a cover can keep out.
type Pest struct {
	ID, Name string
	Hosts    []string // families and ids of crops
	GapMM    float64  // widest gap that keeps it out [mm]
	Winters  bool     // in the ground where its hosts stood
	Source   string   // key of a source of the crop book
	Mark     string
}

// laying is how a kind of cover is laid.
type laying struct {
	gear   string
	arched bool    // over hoops
	endsM  float64 // more at each end [m]
	edgesM float64 // more at each side [m]
	hoopM  float64 // hoops apart [m]; 0: none
}

type facts struct {
	pests      []Pest
	pollinated []string
	laid       map[cover.Kind]laying
}

var known = sync.OnceValues(func() (*facts, error) { return read(data) })

func read(files fs.FS) (*facts, error) {
	f := facts{laid: map[cover.Kind]laying{}}
	p, err := table.OpenCells(files, "data/pests.csv", "id", "name", "hosts", "keeps_out_mm", "winters", "source", "mark", "where")
	if err != nil {
		return nil, err
	}
	for r := range p.Rows {
		f.pests = append(f.pests, Pest{p.Text(r, "id"), p.Text(r, "name"), p.List(r, "hosts"),
			p.Within(r, "keeps_out_mm", 0.1, 60), p.Text(r, "winters") == "yes", p.Text(r, "source"), p.Text(r, "mark")})
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	b, err := table.OpenCells(files, "data/pollinated.csv", "crop", "source", "mark")
	if err != nil {
		return nil, err
	}
	for r := range b.Rows {
		f.pollinated = append(f.pollinated, b.Text(r, "crop"))
	}
	l, err := table.OpenCells(files, "data/laying.csv", "cover", "gear", "arched", "ends_m", "edges_m", "hoop_m", "source", "mark", "where")
	if err != nil {
		return nil, err
	}
	for r := range l.Rows {
		f.laid[cover.Kind(l.Text(r, "cover"))] = laying{l.Text(r, "gear"), l.Text(r, "arched") == "1",
			l.Within(r, "ends_m", 0, 3), l.Within(r, "edges_m", 0, 1), l.Within(r, "hoop_m", 0, 5)}
	}
	return &f, l.Err()
}

// Pests are the pests that covers can keep out.
func Pests() []Pest {
	f, err := known()
	if err != nil {
		return nil
	}
	return slices.Clone(f.pests)
}

// Strikes tells whether a crop is a host of the pest.
func (p *Pest) Strikes(c *crop.Crop) bool {
	return slices.Contains(p.Hosts, c.ID) || slices.Contains(p.Hosts, c.Family)
}
