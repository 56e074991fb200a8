package soilcare

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/words"
)

// Offer is a way to cover ground where nothing for the table fits.
type Offer struct {
	Kind   string   // green manure, mulch, sheet
	Crop   string   // id of the green manure
	Start  cal.Date // first day it can go on
	Last   cal.Date // last day to sow or lay it
	OffBy  cal.Date // day it is cut, turned in or taken off; None: it stays
	Phrase words.Phrase
}

// The kinds of offer.
const (
	GreenManure = "green manure"
	Mulch       = "mulch"
	Sheet       = "sheet"
)

// Bare returns what ground can be covered with that is free from a day until it
// is wanted again (None: not yet known); the green manures first, the one that
// can be sown soonest first. Whether a green manure clashes with what stands before
// and after is the rotation's to tell. Dates of sowing are those of the British
// Isles, half a year off in the south.
func Bare(book *crop.Book, from, until cal.Date, south bool) ([]Offer, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	var out []Offer
	for _, g := range f.green {
		if o, ok := f.sow(book, &g, from, until, south); ok {
			out = append(out, o)
		}
	}
	slices.SortStableFunc(out, func(a, b Offer) int { return cmp.Compare(a.Start, b.Start) })
	if !until.IsSet() {
		return append(out, Offer{Kind: Mulch, Start: from, Last: cal.None, OffBy: cal.None, Phrase: words.P("soilcare.offer_mulch_open", nil)},
			Offer{Kind: Sheet, Start: from, Last: cal.None, OffBy: cal.None, Phrase: words.P("soilcare.offer_sheet_open", nil)}), nil
	}
	if until-from >= f.days("mulch_least") {
		out = append(out, Offer{Kind: Mulch, Start: from, Last: until - f.days("mulch_least"), OffBy: cal.None,
			Phrase: words.P("soilcare.offer_mulch", words.Args{"last": until - f.days("mulch_least")})})
	}
	if until-from >= f.days("sheet_least") {
		off := until - f.days("turn_round")
		out = append(out, Offer{Kind: Sheet, Start: from, Last: off - f.days("sheet_least") + f.days("turn_round"), OffBy: off,
			Phrase: words.P("soilcare.offer_sheet", words.Args{"off": off})})
	}
	return out, nil
}

// sow offers a green manure when there is a day to sow it on and the weeks for
// it to stand before it must be cut.
func (f *facts) sow(book *crop.Book, g *green, from, until cal.Date, south bool) (Offer, bool) {
	c, ok := book.Crop(g.crop)
	if !ok {
		return Offer{}, false
	}
	first, last := g.season(from, south)
	start := max(from, first)
	args := words.Args{"crop": c.Plural, "start": start, "low": g.weeksLow, "high": g.weeksHigh}
	if !until.IsSet() {
		args["last"] = last
		return Offer{Kind: GreenManure, Crop: g.crop, Start: start, Last: last, OffBy: cal.None, Phrase: words.P("soilcare.offer_green_open", args)}, true
	}
	off := until - cal.Date(7*g.weeksHigh)
	last = min(last, off-f.days("green_least"))
	if start > last {
		return Offer{}, false
	}
	args["last"], args["off"] = last, off
	return Offer{Kind: GreenManure, Crop: g.crop, Start: start, Last: last, OffBy: off, Phrase: words.P("soilcare.offer_green", args)}, true
}

// season is the sowing season that a day lies in or that comes next.
func (g *green) season(day cal.Date, south bool) (first, last cal.Date) {
	shift := cal.Date(0)
	if south {
		shift = 182
	}
	for year := day.Year() - 1; ; year++ {
		first, last = g.from.In(year)+shift, g.last.In(year)+shift
		if last >= day {
			return first, last
		}
	}
}

// TurnRound returns the days from clearing a bed until it can be sown or planted
// again [d]: its own, else as usual; never less than those of a stale seedbed
// when one is made.
func TurnRound(b place.Bed, staleSeedbed bool) (int, error) {
	f, err := known()
	if err != nil {
		return 0, err
	}
	days := b.TurnRoundD
	if days == 0 {
		days = int(f.value("turn_round"))
	}
	if staleSeedbed {
		days = max(days, int(f.value("stale_seedbed")))
	}
	return days, nil
}
