package desk

import (
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/larder"
	"garner/internal/plan"
	"garner/internal/words"
)

// LeaveAction is the action of a tried change that leaves a gap: its planting is
// the vegetable, or the name of a group; its field the first day and its value first;last.
const LeaveAction = "leave"

// ReadLeave reads what a tried gap that is left stands for.
func ReadLeave(vegetable, value string) (plan.Change, *fault.Error) {
	c := plan.Change{Action: LeaveAction, Planting: vegetable, Value: strings.TrimSpace(value)}
	first, last, wrong := spanOf(value)
	if wrong != nil {
		return c, wrong
	}
	c.Field, c.Value = first.String(), WriteSpan(first, last)
	return c, nil
}

// WriteSpan writes a span of days as the value of a tried gap that is left.
func WriteSpan(first, last cal.Date) string { return first.String() + ";" + last.String() }

// LeftSpan is the span of a tried gap that is left.
func LeftSpan(c plan.Change) (first, last cal.Date) {
	first, last, _ = spanOf(c.Value) // it was read before
	return first, last
}

func spanOf(value string) (first, last cal.Date, wrong *fault.Error) {
	from, to, _ := strings.Cut(value, ";")
	first, err := cal.Parse(strings.TrimSpace(from))
	if err == nil {
		last, err = cal.Parse(strings.TrimSpace(to))
	}
	if err != nil || last < first {
		return cal.None, cal.None, fault.New(fault.Invalid, "desk.try_leave", words.Args{"given": value})
	}
	return first, last, nil
}

// leftWith are the gaps left of a holding with those that are tried.
func leftWith(h *holding.Holding, leaves []plan.Change) ([]larder.GapLeft, error) {
	out := slices.Clone(h.GapsLeft)
	taken := map[string]bool{}
	for _, l := range out {
		taken[l.ID] = true
	}
	for _, c := range leaves {
		first, last, wrong := spanOf(c.Value)
		if wrong != nil {
			return nil, wrong
		}
		left := larder.GapLeft{Vegetable: c.Planting, From: first, To: last}
		if at := slices.IndexFunc(h.Groups, func(g larder.Group) bool { return g.Name == c.Planting }); at >= 0 {
			left.Vegetable, left.Group = "", h.Groups[at].ID
		}
		if leftAlready(out, &left) {
			continue
		}
		left.ID = idFor("gaps_left", map[string]string{"vegetable": left.Vegetable, "group": left.Group}, taken)
		taken[left.ID] = true
		out = append(out, left)
	}
	return out, nil
}

// leftAlready tells whether a span lies within one that is left.
func leftAlready(left []larder.GapLeft, span *larder.GapLeft) bool {
	return slices.ContainsFunc(left, func(l larder.GapLeft) bool {
		return l.Vegetable == span.Vegetable && l.Group == span.Group && l.From <= span.From && span.To <= l.To
	})
}

// keptLeaves is what tried gaps that are left come to in the tables: rows more.
func keptLeaves(n naming, h *holding.Holding, leaves []plan.Change) ([]journal.Change, error) {
	with := *h
	var err error
	if with.GapsLeft, err = leftWith(h, leaves); err != nil {
		return nil, err
	}
	at := 0.0
	if rows := n.rows["gaps_left"]; len(rows) > 0 {
		at = rows[len(rows)-1].Place
	}
	var changes []journal.Change
	for i, row := range exchange.Rows(&with)["gaps_left"][len(h.GapsLeft):] {
		changes = append(changes, journal.Change{Table: "gaps_left", ID: row[0], After: row, Place: at + 1 + float64(i)})
	}
	return changes, nil
}
