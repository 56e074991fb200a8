package desk

import (
	"fmt"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// CoverAction is the action of a tried change that lays a cover over the bed of
// its planting; the value is kind;on;off.
const CoverAction = "cover"

// ReadCover reads the value of a tried cover. The column of a fault is kind, on
// or off.
func ReadCover(value string) (cover.Spell, *fault.Error) {
	parts := append(strings.Split(value, ";"), "", "")
	spell := cover.Spell{Kind: cover.Kind(strings.TrimSpace(parts[0])), Off: cal.None}
	if spell.Kind == cover.Open || !slices.Contains(cover.Kinds(), spell.Kind) {
		return spell, fault.New(fault.Invalid, "desk.try_cover_kind", words.Args{"given": parts[0]}).In(fault.Place{Column: "kind"})
	}
	var err error
	if spell.On, err = cal.Parse(strings.TrimSpace(parts[1])); err != nil {
		return spell, fault.New(fault.Invalid, "desk.try_cover_on", words.Args{"given": parts[1]}).In(fault.Place{Column: "on"})
	}
	if off := strings.TrimSpace(parts[2]); off != "" {
		if spell.Off, err = cal.Parse(off); err != nil || spell.Off <= spell.On {
			return spell, fault.New(fault.Invalid, "desk.try_cover_off", words.Args{"given": off, "on": spell.On}).In(fault.Place{Column: "off"})
		}
	}
	return spell, nil
}

// WriteCover writes a cover as the value of a tried change.
func WriteCover(s cover.Spell) string {
	return fmt.Sprintf("%s;%s;%s", s.Kind, s.On, s.Off)
}

// parts are tried changes by what they change.
type parts struct{ plantings, covers, leaves, buys []plan.Change }

// parted takes covers, gaps that are left and what may be bought apart from the
// changes of plantings.
func parted(try []plan.Change) (p parts) {
	for _, c := range try {
		switch c.Action {
		case CoverAction:
			p.covers = append(p.covers, c)
		case LeaveAction:
			p.leaves = append(p.leaves, c)
		case BuyAction:
			p.buys = append(p.buys, c)
		default:
			p.plantings = append(p.plantings, c)
		}
	}
	return p
}

// laid lays tried covers over the beds on which their plantings stand with all
// else that is tried.
func laid(own *holding.Holding, covers []plan.Change, taken map[string]bool) ([]place.CoverSpell, error) {
	if len(covers) == 0 {
		return own.Covers, nil
	}
	resolved, faults := plan.Resolve(own.Plans, own.Plantings, own.Changes, own.Plan)
	if len(faults) > 0 {
		return nil, unplaced(faults)
	}
	out := slices.Clone(own.Covers)
	for _, c := range covers {
		at := slices.IndexFunc(resolved, func(p plan.Planting) bool { return p.ID == c.Planting })
		if at < 0 {
			return nil, fault.New(fault.NotFound, "desk.planting_unknown", words.Args{"planting": c.Planting})
		}
		spell, err := ReadCover(c.Value)
		if err != nil {
			return nil, err
		}
		id := numbered("cover-"+resolved[at].Bed, taken)
		taken[id] = true
		out = append(out, place.CoverSpell{ID: id, Bed: resolved[at].Bed, Spell: spell})
	}
	return out, nil
}

// coverIDs are the ids that covers have.
func coverIDs(h *holding.Holding) map[string]bool {
	taken := map[string]bool{}
	for _, c := range h.Covers {
		taken[c.ID] = true
	}
	return taken
}

// keptCovers is what tried covers come to in the tables: rows more.
func keptCovers(n naming, own *holding.Holding, covers []plan.Change) ([]journal.Change, error) {
	spells, err := laid(own, covers, coverIDs(own))
	if err != nil {
		return nil, err
	}
	before := len(own.Covers)
	with := *own
	with.Covers = spells
	at := 0.0
	if rows := n.rows["covers"]; len(rows) > 0 {
		at = rows[len(rows)-1].Place
	}
	var changes []journal.Change
	for i, row := range exchange.Rows(&with)["covers"][before:] {
		changes = append(changes, journal.Change{Table: "covers", ID: row[0], After: row, Place: at + 1 + float64(i)})
	}
	return changes, nil
}
