package desk

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/pairing"
	"garner/internal/plan"
	"garner/internal/words"
)

// PairView is a planting with those that stand under or between it, or on whose
// ground it stands.
type PairView struct {
	ID, Name     string
	Bed, BedName string
	Today        cal.Date
	Relation     plan.Relation
	To           string
	Pairs        []PairPart
	Others       []PairName // of the same bed, on whose ground it could stand
}

// PairName is a planting by its name.
type PairName struct{ ID, Name string }

// PairPart is one pair, the upper being that on whose ground the other stands.
type PairPart struct {
	Upper, Lower PairSide
	Relation     plan.Relation
	From, Until  cal.Date // both are on their ground
	Ratio        float64  // beds grown apart that give as much
	Weeks        []PairWeek
	StripOn      cal.Date // asked about; None: there is no time for it
	StripShare   float64
	ClearOn      cal.Date
	Stripped     *PairOffer
	Cleared      *PairOffer
}

// PairSide is one of the two.
type PairSide struct {
	PairName
	Crop   string // by what it is: "lamb's lettuce cut as rosettes"
	Feeds  bool
	AreaM2 float64
	Past   bool // was put in before today
	pairing.Side
}

// PairWeek, PairOffer and PairWhen are as package pairing has them.
type (
	PairWhen  = pairing.When
	PairWeek  = pairing.Week
	PairOffer = pairing.Offer
)

// PairAsked is what is asked about the upper crop; dates that are None take the
// usual ones.
type PairAsked struct {
	StripOn    cal.Date
	StripShare float64 // 0: the usual
	ClearOn    cal.Date
}

// UsualStripShare is the share of the leaf that comes off with the lower leaves,
// when nobody says how much.
const UsualStripShare = 0.4 // judgement: the lower leaves that hang over the ground

// pairYears is how many futures a pair is looked at in.
const pairYears = 100

// PairView returns how a planting and its neighbours on the same ground do by
// each other.
func (o *Office) PairView(id string, try []plan.Change, q PairAsked) (*PairView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	p, known := n.plantings[id]
	if !known {
		return nil, fault.New(fault.NotFound, "desk.planting_unknown", words.Args{"planting": id})
	}
	v := &PairView{ID: id, Name: n.planting(id), Bed: p.Bed, BedName: n.bed(p.Bed), Today: a.setting.Today, Relation: p.Relation, To: p.To}
	v.Others = n.hosts(&p)
	pairs := n.pairsOf(&p)
	if len(pairs) == 0 {
		return v, nil
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	for _, pair := range pairs {
		part, err := o.pairPart(a, t, n, pair, q)
		if err != nil {
			return nil, err
		}
		if part != nil {
			v.Pairs = append(v.Pairs, *part)
		}
	}
	return v, nil
}

// pair is two plantings on the same ground.
type pair struct{ upper, lower plan.Planting }

// pairsOf are the pairs that a planting belongs to: first that in which it is
// the lower one, then those that stand on its ground, in order of date.
func (n *namer) pairsOf(p *plan.Planting) []pair {
	var own, others []pair
	for _, q := range n.plantings {
		if q.Relation != plan.Under && q.Relation != plan.Between {
			continue
		}
		host, known := n.plantings[q.To]
		switch {
		case !known || host.Bed != q.Bed || host.ID == q.ID:
		case q.ID == p.ID:
			own = append(own, pair{host, q})
		case host.ID == p.ID:
			others = append(others, pair{host, q})
		}
	}
	sort.Slice(others, func(i, k int) bool {
		a, b := &others[i].lower, &others[k].lower
		if a.Date != b.Date {
			return a.Date < b.Date
		}
		return a.ID < b.ID
	})
	return append(own, others...)
}

// hosts are the plantings of the same bed that are there in the time of a
// planting, in order of date.
func (n *namer) hosts(p *plan.Planting) []PairName {
	var found []plan.Planting
	for _, q := range n.plantings {
		if q.ID == p.ID || q.Bed != p.Bed || q.To == p.ID {
			continue
		}
		if from, until := pairing.Together(&q, p, p.Date+endless); from < until {
			found = append(found, q)
		}
	}
	sort.Slice(found, func(i, k int) bool {
		if found[i].Date != found[k].Date {
			return found[i].Date < found[k].Date
		}
		return found[i].ID < found[k].ID
	})
	var out []PairName
	for _, q := range found {
		out = append(out, PairName{q.ID, n.planting(q.ID)})
	}
	return out
}

// endless is how long a planting without an end is taken to be there [d].
const endless = 365

func (o *Office) pairPart(a *asked, t *outlook.Table, n *namer, p pair, q PairAsked) (*PairPart, error) {
	part := &PairPart{Relation: p.lower.Relation, StripOn: cal.None, ClearOn: cal.None, StripShare: q.StripShare}
	part.From, part.Until = pairing.Together(&p.upper, &p.lower, t.From+cal.Date(7*t.Weeks))
	if !inTable(t, p.upper.ID) || !inTable(t, p.lower.ID) {
		return nil, nil
	}
	part.ask(a, n, p, q)
	answer, err := o.pairAnswer(t, pairing.Question{Table: t, Upper: &p.upper, Lower: &p.lower, Futures: pairYears,
		StripOn: part.StripOn, StripShare: part.StripShare, ClearOn: part.ClearOn})
	if err != nil {
		return nil, err
	}
	part.Ratio, part.Weeks, part.Stripped, part.Cleared = answer.Ratio, answer.Weeks, answer.Stripped, answer.Cleared
	part.Upper = n.pairSide(&p.upper, answer.Upper, a.setting.Today)
	part.Lower = n.pairSide(&p.lower, answer.Lower, a.setting.Today)
	return part, nil
}

// ask fills in the days that nobody told.
func (p *PairPart) ask(a *asked, n *namer, both pair, q PairAsked) {
	if p.StripShare == 0 {
		p.StripShare = UsualStripShare
	}
	p.StripOn, p.ClearOn = q.StripOn, q.ClearOn
	if !p.StripOn.IsSet() && both.upper.StripOn.IsSet() {
		p.StripOn, p.StripShare = both.upper.StripOn, both.upper.StripShare
	}
	northern := true
	for _, s := range a.holding.Sites {
		if s.ID == n.beds[both.upper.Bed].Site {
			northern = s.Location.LatitudeDeg >= 0
		}
	}
	if d, ok := pairing.UsualStrip(p.From, p.Until, a.setting.Today, northern); ok && !p.StripOn.IsSet() {
		p.StripOn = d
	}
	if d, ok := pairing.UsualClear(p.From, p.Until, a.setting.Today); ok && !p.ClearOn.IsSet() {
		p.ClearOn = d
	}
}

func inTable(t *outlook.Table, planting string) bool {
	for i := range t.Plantings {
		if t.Plantings[i].Planting == planting {
			return true
		}
	}
	return false
}

func (n *namer) pairSide(p *plan.Planting, s pairing.Side, now cal.Date) PairSide {
	return PairSide{PairName: PairName{p.ID, n.planting(p.ID)}, Crop: n.use(p.Crop, p.Use), Feeds: n.feeds(p.Crop, p.Use),
		AreaM2: p.AreaM2, Past: p.Date <= now, Side: s}
}

// pairAnswer works a pair out, or takes it from what was worked out lately.
func (o *Office) pairAnswer(t *outlook.Table, q pairing.Question) (*pairing.Answer, error) {
	name, known := pairName(t, &q)
	if known {
		if a, kept := o.views.pairs.get(name); kept {
			return a, nil
		}
	}
	o.computing.Lock()
	defer o.computing.Unlock()
	a, err := pairing.Ask(q)
	if err == nil && known {
		o.views.pairs.keep(name, a)
	}
	return a, err
}

// pairName names all that the answer to a question depends on; false when the
// lower planting is not in the table.
func pairName(t *outlook.Table, q *pairing.Question) (num.Digest, bool) {
	of, known := t.PartName(q.Lower.ID)
	d := num.NewDigester("pair")
	d.Digest(of)
	for _, p := range []*plan.Planting{q.Upper, q.Lower} {
		d.Text(p.ID)
		d.Float(p.AreaM2)
	}
	for _, day := range []cal.Date{t.From, q.StripOn, q.ClearOn} {
		d.Int(int64(day))
	}
	d.Int(int64(t.Weeks))
	d.Int(int64(t.Years))
	d.Int(int64(q.Futures))
	d.Float(q.StripShare)
	return d.Sum(), known
}
