package web

import (
	"net/url"
	"sort"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// tableBody is what the page of the year at the table is given.
type tableBody struct {
	Household string
	Own       bool   // in the household's own order
	Turned    string // the address of the page in the other order
	Lead      string
	Stale     bool
	Crowded   bool // so many rows that each has one line
	Hours     dayHours
	Axis      string // drawings
	AxisPhone string
	Rows      []tableRow
	Share     tableShare
	Twin      monthTwin
	Tried     *triedBody
	Here      string // its address, for what leads back to it
	Leave     bool   // there are gaps that can be left
	Begin     bool   // nothing is planted or meant to be yet
	Frost     string // tonight's alarm; empty: none
}

// tableRow is one vegetable of the table.
type tableRow struct {
	Name, Title string
	Path        string
	Kg          float64
	Gap         bool
	First       string // its sentence
	More        string // the rest of it, where there is room
	Ribbon      string
	Changed     string // what a tried change does to it; empty: nothing
	Leave       *leaveBody
}

// tableShare is the bottom line.
type tableShare struct {
	Now, Thin, Poor, Good float64
	First                 words.Phrase
	Ribbon                string
}

// crowded is the number of rows from which each has one line.
const crowded = 25

// tablePage shows the year at the table.
func tablePage(v *visit) error {
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return faults
	}
	view, err := v.office.TableView(tried)
	if err != nil {
		return err
	}
	var before *desk.TableView
	if len(tried) > 0 {
		if before, err = v.office.TableView(nil); err != nil {
			return err
		}
	}
	b := v.tableBody(view, before, v.query("order") == "own")
	if before != nil {
		if err := v.compareTables(b, before, view, tried); err != nil {
			return err
		}
	}
	if b.Frost, err = v.frostAlarm(); err != nil {
		return err
	}
	return v.showPart(page{Name: "table", Nav: "table", Body: b})
}

func (v *visit) tableBody(view, before *desk.TableView, own bool) *tableBody {
	b := &tableBody{Household: view.Household, Own: own, Turned: turned(v.r.URL, own), Here: v.here(), Stale: view.Stale, Begin: view.Bare && before == nil,
		Lead:  v.sentence(sharpened(view.Lead, view.Today)),
		Hours: hoursOf(view.Daylight), Twin: monthsOf(view)}
	shown := rowOrder(view, own)
	b.Crowded = len(shown) >= crowded
	b.Axis, b.AxisPhone = v.axes(view)
	drawn := v.rowRibbons(view, shown, byName(before), b.Crowded)
	for i, r := range shown {
		row := v.tableRow(view, r)
		if r.Gap != nil && before == nil && !view.Stale {
			b.Leave = true
			row.Leave = v.leaveOf(r.Name, r.Plural, "/", view.Today, r.Gap)
		}
		row.Ribbon = drawn[i]
		b.Rows = append(b.Rows, row)
	}
	b.Share = tableShare{Now: view.ShareNow, Thin: view.ThinShare, Poor: view.ThinPoor, Good: view.ThinGood,
		First: words.Sharp(view.Thinnest, view.Today), Ribbon: v.shareRibbon(view)}
	return b
}

func (v *visit) tableRow(view *desk.TableView, r *desk.RibbonView) tableRow {
	row := tableRow{Name: r.Name, Title: capital(r.Plural), Path: vegetablePath(r.Name), Kg: fullWant(r.WantKg), Gap: r.Gap != nil}
	first, more := rowWords(r, view.Today)
	row.First = v.sentence(first)
	if more != nil {
		row.More = v.words.Text(*more)
	}
	return row
}

// byName finds the vegetables of a table, nil when there is none.
func byName(view *desk.TableView) map[string]*desk.RibbonView {
	out := map[string]*desk.RibbonView{}
	if view != nil {
		for i := range view.Vegetables {
			out[view.Vegetables[i].Name] = &view.Vegetables[i]
		}
	}
	return out
}

// vegetablePath is the address of a vegetable's page.
func vegetablePath(name string) string { return "/vegetable/" + url.PathEscape(name) }

// turned is the address of the table in the other order.
func turned(at *url.URL, own bool) string {
	query := at.Query()
	query.Del(keptQuery)
	query.Set("order", "own")
	if own {
		query.Del("order")
	}
	if len(query) == 0 {
		return "/"
	}
	return "/?" + query.Encode()
}

// rowOrder returns the wanted vegetables: in the household's own order, or those
// first that lack most; before them those of what must never lack, after them
// those of what would be nice to have.
func rowOrder(view *desk.TableView, own bool) []*desk.RibbonView {
	var rows []*desk.RibbonView
	for i := range view.Vegetables {
		if r := &view.Vegetables[i]; fullWant(r.WantKg) > 0 {
			rows = append(rows, r)
		}
	}
	if own {
		return rows
	}
	sort.SliceStable(rows, func(i, k int) bool {
		if (rows[i].Gap != nil) != (rows[k].Gap != nil) {
			return rows[i].Gap != nil
		}
		if a, b := rows[i].Held.Rank(), rows[k].Held.Rank(); a != b && rows[i].Gap != nil {
			return a < b
		}
		return rows[i].GapKg > rows[k].GapKg
	})
	return rows
}

// fullWant is the want of a whole week at its greatest [kg]; it is the height of
// a ribbon.
func fullWant(wantKg []float64) float64 {
	most := 0.0
	for _, kg := range wantKg {
		most = max(most, kg)
	}
	return most
}

// leastKg is the weight from which kilograms to a tenth tell it well.
const leastKg = 0.15

// littleKg tells whether a weight is told in grams in a column of kilograms.
func littleKg(kg float64) bool { return kg > 0 && kg < leastKg }

// dayHours are the longest and the shortest day of the table [h].
type dayHours struct{ Longest, Shortest float64 }

func hoursOf(daylight []float64) dayHours {
	var d dayHours
	for i, h := range daylight {
		if i == 0 || h > d.Longest {
			d.Longest = h
		}
		if i == 0 || h < d.Shortest {
			d.Shortest = h
		}
	}
	return d
}

// monthTwin is the table in figures: the share of each month's want that is
// home-grown.
type monthTwin struct {
	Months []cal.Date
	Rows   []monthRow
}

// monthRow is one vegetable by month; a share under 0 stands where none is
// wanted.
type monthRow struct {
	Title, Path string
	Kg          float64
	Shares      []float64
}

// monthsOf tells the table by month: each wanted vegetable, then all together.
func monthsOf(view *desk.TableView) monthTwin {
	var t monthTwin
	var of []int
	t.Months, of = monthsAlong(view.From, view.Weeks)
	got, want := make([]float64, view.Weeks), make([]float64, view.Weeks)
	for _, r := range rowOrder(view, true) {
		eaten := make([]float64, view.Weeks)
		for k := range eaten {
			eaten[k] = r.FreshKg[k] + r.StoredKg[k]
			got[k], want[k] = got[k]+eaten[k], want[k]+r.WantKg[k]
		}
		t.Rows = append(t.Rows, monthRow{Title: capital(r.Plural), Path: vegetablePath(r.Name), Kg: fullWant(r.WantKg),
			Shares: monthShares(eaten, r.WantKg, of, len(t.Months))})
	}
	t.Rows = append(t.Rows, monthRow{Kg: fullWant(want), Shares: monthShares(got, want, of, len(t.Months))})
	return t
}

// monthShares is the share of each month's want that is eaten.
func monthShares(eaten, wanted []float64, of []int, months int) []float64 {
	got, want := make([]float64, months), make([]float64, months)
	for k := range wanted {
		got[of[k]] += eaten[k]
		want[of[k]] += wanted[k]
	}
	for m := range got {
		if want[m] <= 0 {
			got[m] = -1
			continue
		}
		got[m] /= want[m]
	}
	return got
}

// stepsAWeek is the number of a ribbon's steps in a week.
const stepsAWeek = 4
