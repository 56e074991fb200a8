package printed

import (
	"strings"
	"sync"

	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/window"
)

// Pace is how thoroughly windows are computed.
type Pace struct {
	Years int // of generated weather
	Step  int // days between trial sowings, 0: as garner window
}

// The two paces: the one garner window uses, and a coarse one for fitting.
var (
	FullPace   = Pace{Years: window.UsualYears}
	CoarsePace = Pace{Years: 30, Step: 7}
)

// Row is one published date with what the engine makes of it.
type Row struct {
	Date    *Date
	End     string // first, last, inside
	From    int    // the days of the common year that the print leaves open
	To      int
	Counted bool   // false: told apart
	Group   string // of the crop
	Off     int    // signed days from the printed interval to the nearest window
	Answer  bool   // false: the engine gave no window
}

// Within is the distance from the printed interval that counts as agreement [d].
const Within = 21

// Agrees tells whether a row lies within 21 days.
func (r *Row) Agrees() bool { return r.Answer && abs(r.Off) <= Within }

// either are the crops that are commonly both sown and planted: where a row does
// not say, either reading may be the one that fits.
var either = []string{"cabbage", "broccoli", "cauliflower", "brussels", "calabrese", "collard", "kale", "kohlrabi", "celery", "lettuce", "endive", "onion", "leek"}

// methods are the readings of a row, the stated or commonest first.
func methods(d *Date) []string {
	stated := map[string]string{"direct": "seed", "transplant": "plant", "set/clove": "set", "crowns": "crown"}[d.Method]
	out := []string{stated}
	if stated != "" {
		return out
	}
	for _, e := range either {
		if strings.Contains(strings.ToLower(d.Crop), e) {
			return append(out, "seed", "plant")
		}
	}
	return out
}

// Exam is a folder of planting dates made ready to be asked of many books.
type Exam struct {
	pace    Pace
	dates   []*Date
	regions map[string]*Region
	places  map[string]*window.Place
	known   map[question][]window.Window
}

// NewExam makes a folder ready. Rows of seedbeds and of sowing indoors are left
// out.
func NewExam(p *PlantingDates, pace Pace) (*Exam, error) {
	e := &Exam{pace: pace, regions: map[string]*Region{}, places: map[string]*window.Place{}, known: map[question][]window.Window{}}
	for i := range p.Regions {
		r := &p.Regions[i]
		at, err := window.GeneratedPlace(r.Location, r.Normals, window.UsualSeed, pace.Years, 1, cover.Open)
		if err != nil {
			return nil, err
		}
		e.regions[r.ID], e.places[r.ID] = r, at
	}
	for i := range p.Dates {
		if d := &p.Dates[i]; e.regions[d.Region] != nil && d.asked() && len(claims(d, e.regions[d.Region])) > 0 {
			e.dates = append(e.dates, d)
		}
	}
	return e, nil
}

// Rows computes the rows of the dates that a condition lets through with a
// book, which must know the crops. Windows are kept, so that a book that shares
// uses with one asked before computes only what differs.
func (e *Exam) Rows(book *crop.Book, workers int, in func(*Date) bool) []Row {
	a := &asker{book: book, Exam: e}
	var dates []*Date
	for _, d := range e.dates {
		if in(d) {
			dates = append(dates, d)
		}
	}
	a.askAll(dates, workers)
	var rows []Row
	for _, d := range dates {
		rows = append(rows, a.rows(d, e.regions[d.Region])...)
	}
	return rows
}

// Keep drops the windows kept of uses that are not of a book.
func (e *Exam) Keep(book *crop.Book) {
	of := map[*crop.Use]bool{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			of[u] = true
		}
	}
	for q := range e.known {
		if !of[q.use] {
			delete(e.known, q)
		}
	}
}

// Windows computes all rows of a folder of planting dates. The book must know
// the crops.
func Windows(p *PlantingDates, book *crop.Book, pace Pace, workers int) ([]Row, error) {
	e, err := NewExam(p, pace)
	if err != nil {
		return nil, err
	}
	return e.Rows(book, workers, func(*Date) bool { return true }), nil
}

// question is a crop started one way in one region.
type question struct {
	region string
	use    *crop.Use
	start  growth.Start
}

// asker asks one book.
type asker struct {
	book *crop.Book
	*Exam
}

// ask resolves a printed name and method to a question; false when the book has
// no such crop or it is not started that way.
func (a *asker) ask(d *Date, method string) (question, bool) {
	c, use, err := a.book.Find(d.Crop)
	if err != nil {
		return question{}, false
	}
	if method == "" {
		method = use.Methods[0]
	}
	if !use.Allows(method) {
		for _, u := range c.Uses {
			if u.Allows(method) {
				return question{d.Region, u, growth.StartOf(method)}, true
			}
		}
		return question{}, false
	}
	return question{d.Region, use, growth.StartOf(method)}, true
}

// askAll computes every window once, shared out to workers.
func (a *asker) askAll(dates []*Date, workers int) {
	var all []question
	for _, d := range dates {
		for _, m := range methods(d) {
			if q, ok := a.ask(d, m); ok {
				if _, twice := a.known[q]; !twice {
					a.known[q] = nil
					all = append(all, q)
				}
			}
		}
	}
	answers := make([][]window.Window, len(all))
	var wait sync.WaitGroup
	next := make(chan int)
	for range max(1, workers) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for i := range next {
				q := all[i]
				answers[i] = window.Find(window.Question{Use: q.use, Start: q.start, Place: a.places[q.region],
					Years: a.pace.Years, Step: a.pace.Step, Chance: window.UsualChance}).Windows
			}
		}()
	}
	for i := range all {
		next <- i
	}
	close(next)
	wait.Wait()
	for i, q := range all {
		a.known[q] = answers[i]
	}
}

// rows holds a printed row against the windows of its readings.
func (a *asker) rows(d *Date, r *Region) []Row {
	var readings [][]window.Window
	group := ""
	for _, m := range methods(d) {
		if q, ok := a.ask(d, m); ok {
			readings = append(readings, a.known[q])
			group = q.use.Group
		}
	}
	return rowsOf(d, r, group, readings)
}

// rowsOf holds every claim of a printed row against the windows of its readings.
func rowsOf(d *Date, r *Region, group string, readings [][]window.Window) (out []Row) {
	for _, c := range claims(d, r) {
		row := Row{Date: d, End: c.end, From: c.from, To: c.to, Counted: c.counted, Group: group}
		row.Off, row.Answer = nearest(c, readings)
		out = append(out, row)
	}
	return out
}

// nearest is the smallest signed distance from a claim to any window; false
// when the first reading gives none.
func nearest(c claim, readings [][]window.Window) (off int, ok bool) {
	if len(readings) == 0 || len(readings[0]) == 0 {
		return 0, false
	}
	best := 1 << 30
	for _, windows := range readings {
		for _, w := range windows {
			if g := gap(c, w); abs(g) < abs(best) {
				best = g
			}
		}
	}
	return best, true
}

// gap is the signed distance from a claim to one window.
func gap(c claim, w window.Window) int {
	switch c.end {
	case "first":
		return outside(c.from, c.to, w.First)
	case "last":
		return outside(c.from, c.to, w.Last)
	}
	if outside(w.First, w.Last, c.from) == 0 || outside(w.First, w.Last, c.to) == 0 || outside(c.from, c.to, w.First) == 0 {
		return 0
	}
	from, to := outside(w.First, w.Last, c.from), outside(w.First, w.Last, c.to)
	if abs(from) < abs(to) {
		return -from
	}
	return -to
}
