package web

import (
	"net/url"
	"strconv"
	"strings"
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// nextBody is the page of what to put into ground of a bed.
type nextBody struct {
	Bed, BedName, BedPath string
	Path                  string
	Title                 string
	Lead                  []string
	Hand                  bool   // of what is on hand only
	Other                 string // the address of the other choice
	Fields                []fieldBody
	Best, More            []nextLine
	Offers                []words.Phrase
	Coming                string // the page's own address while the ranking is being worked out
	Tried                 []string
}

// nextLine is one candidate.
type nextLine struct {
	N              int
	Name           string
	BookPath       string
	Worth          string // drawing
	How            string
	Reason, Mended string
	Need           string
	Clash          string
	Remarks        []string
	Accept, Try    string // text of the button; address
	Hidden         []hiddenField
}

// bestShown is how many candidates are shown without being asked for, each crop
// in its best use.
const bestShown = 8

// advicePatience is how long a page waits for advice that is being worked out for
// the first time; it shows the rest then, and the advice when it is there.
const advicePatience = 1500 * time.Millisecond

// nextPage shows what could be put into ground of a bed, the most worth first.
func nextPage(v *visit) error {
	q, faults := v.nextQuery()
	tried, wrong := readTried(v.r.URL.Query())
	if faults = append(faults, wrong...); len(faults) > 0 {
		return faults
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	its, found := bedWith(h, q.Bed)
	if !found {
		return fault.New(fault.NotFound, "desk.row_unknown", words.Args{"kind": words.P("desk.kind_beds", nil), "id": q.Bed})
	}
	b := &nextBody{Bed: its.ID, BedName: its.Name, BedPath: bedPath(its.ID), Path: bedPath(its.ID) + "/next", Hand: v.query("hand") != ""}
	if b.BedName == "" {
		b.BedName = its.ID
	}
	b.Title = v.say("web.next_title", words.Args{"bed": b.BedName})
	ask := v.office.AdviseViewWithin
	if b.Hand {
		ask = v.office.RefillViewWithin
	}
	view, err := ask(q, tried, advicePatience)
	if err != nil && listOf(err) == nil && (fault.KindOf(err) != fault.NotFound || desk.LacksWeather(err)) {
		return err
	}
	if err := v.nextFill(b, q, view, err, tried); err != nil {
		return err
	}
	return v.showPart(page{Name: "next", Nav: "ground", Body: b})
}

// nextFill puts the answer, or why there is none, on the page.
func (v *visit) nextFill(b *nextBody, q desk.AdviseQuery, view *desk.AdviseView, wrong error, tried []plan.Change) error {
	b.Fields = v.nextFields(q, view)
	b.Other = v.otherChoice(b)
	switch {
	case wrong != nil:
		for _, e := range faultsOf(wrong) {
			b.Lead = append(b.Lead, v.words.Text(e.Phrase))
		}
		return nil
	case view == nil:
		b.Coming = v.here()
		return nil
	}
	if len(tried) > 0 {
		b.Tried = append(b.Tried, v.say("web.next_tried", nil))
	}
	b.Lead = v.nextLead(view)
	shown := map[string]bool{}
	for i := range view.Candidates {
		line, err := v.nextLine(i, view, tried)
		if err != nil {
			return err
		}
		crop := view.Candidates[i].Crop
		if len(b.Best) < bestShown && !shown[crop] {
			shown[crop] = true
			b.Best = append(b.Best, line)
		} else {
			b.More = append(b.More, line)
		}
	}
	for i := range view.Offers {
		b.Offers = append(b.Offers, view.Offers[i].Says)
	}
	return nil
}

// faultsOf are the faults an error holds.
func faultsOf(err error) fault.List {
	if list := listOf(err); list != nil {
		return list
	}
	if one, ok := err.(*fault.Error); ok {
		return fault.List{one}
	}
	return nil
}

// nextQuery reads what the address asks.
func (v *visit) nextQuery() (desk.AdviseQuery, fault.List) {
	q := desk.AdviseQuery{Bed: v.r.PathValue("id"), From: cal.None, Until: cal.None}
	var faults fault.List
	for _, day := range []struct {
		name string
		at   *cal.Date
	}{{"from", &q.From}, {"until", &q.Until}} {
		if given := v.query(day.name); given != "" {
			d, err := cal.Parse(given)
			if err != nil {
				faults = append(faults, fault.New(fault.Invalid, "web.next_date", words.Args{"given": given}))
				continue
			}
			*day.at = d
		}
	}
	if given := strings.Replace(v.query("area"), ",", ".", 1); given != "" {
		m2, err := strconv.ParseFloat(given, 64)
		if err != nil || !(m2 > 0 && m2 <= mostAreaM2) {
			faults = append(faults, fault.New(fault.Invalid, "web.next_area", words.Args{"given": given}))
		}
		q.AreaM2 = m2
	}
	return q, faults
}

// mostAreaM2 is more than any bed has.
const mostAreaM2 = 100_000

// nextFields are the fields in which the ground can be asked about otherwise.
func (v *visit) nextFields(q desk.AdviseQuery, view *desk.AdviseView) []fieldBody {
	from, until, area := q.From, q.Until, q.AreaM2
	if view != nil {
		from, until, area = view.From, view.Until, view.AreaM2
	}
	text := func(d cal.Date) string {
		if !d.IsSet() {
			return ""
		}
		return d.String()
	}
	m2 := ""
	if area > 0 {
		m2 = strconv.FormatFloat(area, 'f', -1, 64)
	}
	return []fieldBody{
		{Name: "from", Label: v.say("web.next_from", nil), Kind: kindDate, Value: text(from)},
		{Name: "until", Label: v.say("web.next_until", nil), Kind: kindDate, Value: text(until)},
		{Name: "area", Label: v.say("web.next_ground", nil), Kind: kindNumber, Value: m2, Unit: v.say("web.next_m2", nil)},
	}
}

// otherChoice is the address of the same ground with all crops, or with what is on
// hand.
func (v *visit) otherChoice(b *nextBody) string {
	q := url.Values{}
	for _, f := range b.Fields {
		if f.Value != "" {
			q.Set(f.Name, f.Value)
		}
	}
	if !b.Hand {
		q.Set("hand", "yes")
	}
	return b.Path + "?" + q.Encode()
}

// Sizes of the bar of a worth [px].
const (
	worthWidth  = 300.0
	worthHeight = 30.0
)

func (v *visit) worthDraw(kg, most float64) string {
	f := v.words.Format()
	return draw.Worth(kg, most, draw.WorthOptions{WidthPX: worthWidth, HeightPX: worthHeight, Figure: f.Forecast(kg),
		Label: v.say("web.next_worth_label", words.Args{"kg": kg})})
}

// acceptNext makes a candidate a planting.
func acceptNext(v *visit) error {
	cells := map[string]string{}
	for name := range v.r.PostForm {
		cells[name] = v.field(name)
	}
	cells["bed"] = v.r.PathValue("id")
	kept, err := v.office.Accept(v.author(), cells)
	if err != nil {
		return err
	}
	v.kept(kept, bedPath(cells["bed"]))
	return nil
}
