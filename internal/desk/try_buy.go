package desk

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/larder"
	"garner/internal/plan"
	"garner/internal/words"
)

// BuyAction is the action of a tried change that lets some be bought: its planting is
// the vegetable, or the name of a group; its field the first day and its value
// first;last;kg, with the kg a week that may be bought in these days.
const BuyAction = "buy"

// ReadBuy reads what may be bought in a tried change.
func ReadBuy(vegetable, value string) (plan.Change, *fault.Error) {
	p, wrong := boughtOf(value)
	if wrong != nil {
		return plan.Change{}, wrong
	}
	return plan.Change{Action: BuyAction, Planting: vegetable, Field: p.From.String(), Value: WriteBuy(p)}, nil
}

// WriteBuy writes what may be bought as the value of a tried change.
func WriteBuy(p larder.Purchase) string {
	return WriteSpan(p.From, p.To) + ";" + strconv.FormatFloat(p.KgPerWeek, 'f', -1, 64)
}

// Bought is what may be bought in a tried change, without what it is of.
func Bought(c plan.Change) larder.Purchase {
	p, _ := boughtOf(c.Value) // it was read before
	return p
}

func boughtOf(value string) (p larder.Purchase, wrong *fault.Error) {
	refused := fault.New(fault.Invalid, "desk.try_buy", words.Args{"given": value})
	at := strings.LastIndex(value, ";")
	if at < 0 {
		return p, refused
	}
	kg, err := strconv.ParseFloat(strings.TrimSpace(value[at+1:]), 64)
	if err != nil || !(kg > 0 && kg <= mostBoughtKg) {
		return p, refused
	}
	if p.From, p.To, wrong = spanOf(value[:at]); wrong != nil {
		return p, refused
	}
	p.KgPerWeek = kg
	return p, nil
}

// mostBoughtKg is what a household may buy of one thing in a week, at most [kg].
const mostBoughtKg = 1e4

// boughtWith are the purchases of a holding with those that are tried.
func boughtWith(h *holding.Holding, buys []plan.Change) ([]larder.Purchase, error) {
	out := slices.Clone(h.Purchases)
	taken := map[string]bool{}
	for _, p := range out {
		taken[p.ID] = true
	}
	for _, c := range buys {
		p, wrong := boughtOf(c.Value)
		if wrong != nil {
			return nil, wrong
		}
		p.Vegetable = c.Planting
		if at := slices.IndexFunc(h.Groups, func(g larder.Group) bool { return g.Name == c.Planting }); at >= 0 {
			p.Vegetable, p.Group = "", h.Groups[at].ID
		}
		p.ID = idFor("purchases", map[string]string{"vegetable": p.Vegetable, "group": p.Group}, taken)
		taken[p.ID] = true
		out = append(out, p)
	}
	return out, nil
}

// keptBuys is what tried purchases come to in the tables: rows more.
func keptBuys(n naming, h *holding.Holding, buys []plan.Change) ([]journal.Change, error) {
	with := *h
	var err error
	if with.Purchases, err = boughtWith(h, buys); err != nil {
		return nil, err
	}
	at := 0.0
	if rows := n.rows["purchases"]; len(rows) > 0 {
		at = rows[len(rows)-1].Place
	}
	var changes []journal.Change
	for i, row := range exchange.Rows(&with)["purchases"][len(h.Purchases):] {
		changes = append(changes, journal.Change{Table: "purchases", ID: row[0], After: row, Place: at + 1 + float64(i)})
	}
	return changes, nil
}
