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

// BuyAction is the action of a tried change that lets more be bought: its planting is
// the vegetable, or the name of a group; its field the want's id and its value
// want;kg, with the kg a week that may be bought then.
const BuyAction = "buy"

// ReadBuy reads what may be bought in a tried change.
func ReadBuy(vegetable, value string) (plan.Change, *fault.Error) {
	want, kg, wrong := boughtOf(value)
	if wrong != nil {
		return plan.Change{}, wrong
	}
	return plan.Change{Action: BuyAction, Planting: vegetable, Field: want, Value: WriteBuy(want, kg)}, nil
}

// WriteBuy writes what may be bought as the value of a tried change.
func WriteBuy(want string, kg float64) string {
	return want + ";" + strconv.FormatFloat(kg, 'f', -1, 64)
}

// BoughtKg is what may be bought a week in a tried change [kg].
func BoughtKg(c plan.Change) float64 {
	_, kg, _ := boughtOf(c.Value) // it was read before
	return kg
}

func boughtOf(value string) (want string, kg float64, wrong *fault.Error) {
	want, text, _ := strings.Cut(value, ";")
	kg, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if want = strings.TrimSpace(want); err != nil || want == "" || !(kg >= 0 && kg <= mostBoughtKg) {
		return "", 0, fault.New(fault.Invalid, "desk.try_buy", words.Args{"given": value})
	}
	return want, kg, nil
}

// mostBoughtKg is what a household may buy of one thing in a week, at most [kg].
const mostBoughtKg = 1e4

// boughtWith are the wants of a holding with what may be bought in those tried.
func boughtWith(h *holding.Holding, buys []plan.Change) ([]larder.Want, error) {
	if len(buys) == 0 {
		return h.Wants, nil
	}
	out := slices.Clone(h.Wants)
	for _, c := range buys {
		id, kg, wrong := boughtOf(c.Value)
		if wrong != nil {
			return nil, wrong
		}
		at := slices.IndexFunc(out, func(w larder.Want) bool { return w.ID == id })
		if at < 0 {
			return nil, fault.New(fault.NotFound, "desk.try_buy_want", words.Args{"want": id})
		}
		out[at].BuyKgPerWeek = kg
	}
	return out, nil
}

// keptBuys is what tried purchases come to in the tables.
func keptBuys(n naming, h *holding.Holding, buys []plan.Change) ([]journal.Change, error) {
	with := *h
	var err error
	if with.Wants, err = boughtWith(h, buys); err != nil {
		return nil, err
	}
	after := exchange.Rows(&with)["wants"]
	var changes []journal.Change
	for _, c := range buys {
		if made := changeOf("wants", n.rows["wants"], after, c.Field); made != nil {
			changes = append(changes, *made)
		}
	}
	return changes, nil
}
