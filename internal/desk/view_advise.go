package desk

import (
	"time"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/words"
)

// AdviseQuery asks what to put into ground of a bed.
type AdviseQuery struct {
	Bed    string   // id
	From   cal.Date // None: today
	Until  cal.Date // None: until the ground is held again
	AreaM2 float64  // 0: what is free
}

// AdviseView is what ground could be used for, the most worth first.
type AdviseView struct {
	Bed, BedName string
	Today        cal.Date
	From, Until  cal.Date // Until None: open
	AreaM2       float64
	Uses         int // of the book that were looked at
	Years        int // of weather
	Candidates   []CandidateView
	Offers       []OfferView
}

// CandidateView is one crop that could fill the ground.
type CandidateView struct {
	ID        string            // of the planting it would be
	Cells     map[string]string // its row of plantings.csv
	Crop, Use string
	Name      string // "maincrop carrots"
	Vegetable string
	Method    string
	Date      cal.Date
	AreaM2    float64
	Odds      float64 // of a usable crop
	Ready     Odds
	DropKg    float64  // drop in expected shortage over the table
	Portions  float64  // the same in portions
	FillFrom  cal.Date // weeks it fills; None: here and there
	FillTo    cal.Date
	ShortKg   float64 // lacks a week in them as it stands
	LeftKg    float64 // lacks a week in them with it
	Last      cal.Date
	RaiseFrom cal.Date // to sow what is planted out; None: sown in place
	Late      bool     // plants must be had
	SeedG     float64
	Seeds     float64
	Plants    float64
	Lot       *plan.Lot // on hand for it
	Enough    bool
	Reason    words.Phrase
	Clash     *words.Phrase
	Remarks   []words.Phrase
}

// OfferView is a way to cover the ground.
type OfferView struct {
	Kind, Crop  string
	Name        string // of a green manure
	Start, Last cal.Date
	OffBy       cal.Date // None: it stays
	Says        words.Phrase
}

// AdviseView ranks what could be put into ground of a bed.
func (o *Office) AdviseView(q AdviseQuery, try []plan.Change) (*AdviseView, error) {
	return o.AdviseViewWithin(q, try, forEver)
}

// AdviseViewWithin is AdviseView for somebody who waits so long and no longer: the
// view is nil when it is still being worked out then, and found the next time.
func (o *Office) AdviseViewWithin(q AdviseQuery, try []plan.Change, patience time.Duration) (*AdviseView, error) {
	return o.advised(q, try, (*advise.Adviser).Rank, "advise 1", patience)
}

// RefillView ranks what a hole could be filled with: plants and seed on hand
// first, then seed that is still in time.
func (o *Office) RefillView(q AdviseQuery, try []plan.Change) (*AdviseView, error) {
	return o.RefillViewWithin(q, try, forEver)
}

// RefillViewWithin is RefillView for somebody who waits so long and no longer.
func (o *Office) RefillViewWithin(q AdviseQuery, try []plan.Change, patience time.Duration) (*AdviseView, error) {
	return o.advised(q, try, (*advise.Adviser).Refill, "refill 1", patience)
}

type ranking func(*advise.Adviser, advise.Space) (*advise.Advice, error)

// advised answers a question, or returns the answer when it is at hand.
func (o *Office) advised(q AdviseQuery, try []plan.Change, rank ranking, form string, patience time.Duration) (*AdviseView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	key := a.adviceKey(form, q)
	if v, known := o.views.advices.get(key); known {
		return v, nil
	}
	v, _, err := weighed(o, key, patience, func() (*AdviseView, error) {
		adviser, err := o.adviser(a)
		if err != nil {
			return nil, err
		}
		v, err := adviseView(a, adviser, q, rank)
		if err == nil {
			o.views.advices.keep(key, v)
		}
		return v, err
	})
	return v, err
}

// adviceKey names a question with all that its answer depends on.
func (a *asked) adviceKey(form string, q AdviseQuery) num.Digest {
	d := a.answer(form)
	d.Text(q.Bed)
	d.Int(int64(q.From))
	d.Int(int64(q.Until))
	d.Float(q.AreaM2)
	return d.Sum()
}

func adviseView(a *asked, adviser *advise.Adviser, q AdviseQuery, rank ranking) (*AdviseView, error) {
	s, err := adviser.Space(advise.Asked{Bed: q.Bed, From: q.From, Until: q.Until, AreaM2: q.AreaM2})
	if err != nil {
		return nil, err
	}
	r, err := rank(adviser, s)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	v := &AdviseView{Bed: s.Bed, BedName: n.bed(s.Bed), Today: adviser.Today, From: s.From, Until: s.Until, AreaM2: s.AreaM2,
		Uses: r.Tried, Years: a.setting.Years}
	for i := range r.Candidates {
		v.Candidates = append(v.Candidates, candidateView(n, &r.Candidates[i]))
	}
	for i := range r.Offers {
		f := &r.Offers[i]
		view := OfferView{Kind: f.Kind, Crop: f.Crop, Start: f.Start, Last: f.Last, OffBy: f.OffBy, Says: f.Phrase}
		if c, ok := a.setting.Book.Crop(f.Crop); ok {
			view.Name = c.Plural
		}
		v.Offers = append(v.Offers, view)
	}
	return v, nil
}

func candidateView(n *namer, c *advise.Candidate) CandidateView {
	p := &c.Planting
	v := CandidateView{ID: p.ID, Cells: plantingCells(p), Crop: p.Crop, Use: p.Use, Name: n.use(p.Crop, p.Use), Vegetable: c.Use.Vegetable,
		Method: string(p.Method), Date: p.Date, AreaM2: p.AreaM2, Odds: c.Odds, Ready: Odds(c.Ready), DropKg: c.DropKg,
		FillFrom: cal.None, FillTo: cal.None, ShortKg: c.Fills.ShortKg, LeftKg: c.Fills.LeftKg, Last: c.Last, RaiseFrom: c.RaiseFrom,
		Late: c.Late, SeedG: c.SeedG, Seeds: c.SeedG * c.Use.SeedsPerGram, Plants: c.Plants, Lot: c.Lot, Enough: c.Enough, Reason: c.Reason, Clash: c.Clash, Remarks: c.Remarks}
	if c.Fills.Weeks > 0 {
		v.FillFrom, v.FillTo = c.Fills.First, c.Fills.Last
	}
	if c.Use.PortionG > 0 {
		v.Portions = c.DropKg * 1000 / c.Use.PortionG
	}
	return v
}
