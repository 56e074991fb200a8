package scoreboard

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/calibrate"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/table"
	"garner/internal/words"
)

// What the scoreboard of the crop book must reach: the share of the rows that
// meet the published range [%].
const (
	daysGoal   = 90
	yieldsGoal = 85
)

// sampling is what the median of fifteen years may be out by, as a share.
const sampling = 0.05

// byBasis are the phrases of the bases that days are counted from.
var byBasis = map[string]string{"from_sow": "scoreboard.days_from_sow", "from_transplant": "scoreboard.days_from_transplant",
	"from_set": "scoreboard.days_from_set", "crop_cycle": "scoreboard.days_cycle", "unstated": "scoreboard.days_unstated"}

// days holds the days of a crop's uses, from the quickest sowing to the
// reference planting, against the published range of the same basis. A basis
// that is not stated may be either, from sowing or from planting out. Uses that
// stand the winter are left out: their days hold a standstill that the tables
// leave out; so is the whole cycle of leaves that are cut, which ends in seed.
func (m *maker) days() (s Section, err error) {
	c, err := table.OpenCells(m.data, "days_to_maturity.csv", "crop", "basis", "min_days", "max_days", "source", "how")
	if err != nil {
		return s, err
	}
	var h hulls
	for i := range c.Rows {
		basis, _, _ := strings.Cut(c.Text(i, "basis"), " ")
		if u := m.find(c.Text(i, "crop"), ""); u != nil && byBasis[basis] != "" {
			h.add(u.Crop+basis, Line{Crop: u.Crop, Check: words.P(byBasis[basis], nil), Unit: "d",
				Published: span(c, i, "min_days", "max_days"), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "how")})
		}
	}
	computed, err := m.daysComputed()
	if err != nil {
		return s, err
	}
	for _, l := range h.lines {
		if span, ok := computed[l.Crop+l.Check.Key]; ok {
			l.Computed = span
			l.Slack = sampling * max(l.Published.Low, l.Published.High)
			s.Lines = append(s.Lines, l.judge())
		}
	}
	s.wantShare(daysGoal)
	return s, c.Err()
}

// daysComputed are the days of every crop by the key of their basis.
func (m *maker) daysComputed() (map[string]Span, error) {
	harvests, err := m.grown()
	if err != nil {
		return nil, err
	}
	out := map[string]Span{}
	for _, h := range harvests {
		if h.Ready == 0 || h.Quick > 10000 || h.Use.Pattern == crop.Perennial || standsWinter(&h) {
			continue
		}
		start, raised := growth.StartOf(h.Use.ReferenceMethod), 0.0
		if start == growth.FromPlant {
			raised = h.Use.RaiseDays
		}
		direct := map[growth.Start]string{growth.FromSeed: "from_sow", growth.FromPlant: "from_transplant", growth.FromSet: "from_set"}[start]
		slow := max(h.Days, h.Quick)
		span := func(basis string, s Span) {
			key := h.Use.Crop + byBasis[basis]
			if known, ok := out[key]; ok {
				s = s.join(known)
			}
			out[key] = s
		}
		span(direct, Span{h.Quick, slow})
		span("unstated", Span{h.Quick, slow + raised})
		if h.Use.Pattern != crop.Cut {
			span("crop_cycle", Span{h.Quick + raised, slow + raised})
		}
	}
	return out, nil
}

// Published yields are of wide rows, where the two bed trials read run one and
// a half to three times higher per square metre; and a single figure stands for
// a range.
const (
	bedsOverRows = 2.0
	singleFigure = 0.3
)

// yields holds the yields of a crop's uses in the open against published ones.
// Crops under cover are left out: no figure read is of crops under cover.
func (m *maker) yields() (s Section, err error) {
	c, err := table.OpenCells(m.data, "yields.csv", "crop", "kg_per_m2_low", "kg_per_m2_high", "basis", "source", "how")
	if err != nil {
		return s, err
	}
	var h hulls
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), "")
		if u == nil {
			continue
		}
		span := span(c, i, "kg_per_m2_low", "kg_per_m2_high")
		if span.Low == span.High {
			span.Low, span.High = span.Low*(1-singleFigure), span.High*(1+singleFigure)
		}
		if strings.Contains(c.Text(i, "basis"), "row") {
			span.High *= bedsOverRows
		}
		h.add(u.Crop, Line{Crop: u.Crop, Check: words.P("scoreboard.yield", nil), Unit: "kg/m2", Published: span,
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "how")})
	}
	computed, err := m.yieldsComputed()
	if err != nil {
		return s, err
	}
	for _, l := range h.lines {
		if span, ok := computed[l.Crop]; ok {
			l.Computed = span
			l.Slack = sampling * l.Published.High
			s.Lines = append(s.Lines, l.judge())
		}
	}
	s.wantShare(yieldsGoal)
	return s, c.Err()
}

func (m *maker) yieldsComputed() (map[string]Span, error) {
	harvests, err := m.grown()
	if err != nil {
		return nil, err
	}
	out := map[string]Span{}
	for _, h := range harvests {
		if h.Use.ReferenceCover != "open" || h.YieldKg <= 0 {
			continue
		}
		s := exactly(h.YieldKg)
		if known, ok := out[h.Use.Crop]; ok {
			s = s.join(known)
		}
		out[h.Use.Crop] = s
	}
	return out, nil
}

// standsWinter tells whether a reference planting is meant to stand the winter or
// lives through midwinter on its way: its days hold a standstill that printed
// days leave out.
func standsWinter(h *calibrate.Harvest) bool {
	if h.Use.SlowFactor == 0 {
		return true
	}
	on, err := cal.ParseMonthDay(h.Use.ReferenceDate)
	return err == nil && on.DayOfYear() < midwinter && float64(on.DayOfYear())+h.Days > midwinter
}

// midwinter is the winter solstice of the reference climate, a day of the common year.
const midwinter = 355
