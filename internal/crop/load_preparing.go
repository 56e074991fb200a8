package crop

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/words"
)

// preparingSteps are the things that are done before storing. The list is closed; each
// has its text.
var preparingSteps = []string{
	"dry_necks", "cure_warm_dry", "cure_warm_damp", "cure_dark", "trim_tops", "twist_tops", "leave_tuft", "trim_leaves", "keep_stalk", "sort_green",
	"dry_hard", "freeze_dry_seed", "pack_damp", "heap", "fill_nets", "hang", "one_layer", "sound_only", "bag", "scald", "dry_through", "jar_tested", "brine", "mulch",
}

// preparingRange is what the columns of preparing may hold.
var preparingRange = []struct {
	from, to string
	most     float64
}{{"days_from", "days_to", 60}, {"from_c", "to_c", 40}}

func (l *loader) loadPreparing() {
	for _, t := range l.folder("preparing", "crop", "method", "step", "days_from", "days_to", "from_c", "to_c", "source", "where", "mark", "note") {
		for r := range t.rows {
			l.loadPreparingRow(r)
		}
	}
}

func (l *loader) loadPreparingRow(r row) {
	before := len(l.faults)
	if r.get("crop") != "" {
		l.cropOf(r)
	}
	l.oneOf(r, "step", preparingSteps)
	l.provenance(r)
	days, warmth := l.spanOf(r, 0), l.spanOf(r, 1)
	p := Preparing{Step: r.get("step"), DaysFrom: days[0], DaysTo: days[1], FromC: warmth[0], ToC: warmth[1],
		Source: r.get("source"), Where: r.get("where"), Mark: r.get("mark")}
	for _, method := range l.methodsOf(r) {
		if len(l.faults) == before {
			key := wayOf{r.get("crop"), method}
			l.book.preparing[key] = append(l.book.preparing[key], p)
		}
	}
}

// methodsOf reads the ways of keeping that a row of preparing is about.
func (l *loader) methodsOf(r row) []string {
	methods := r.list("method")
	if len(methods) == 0 {
		l.refuse(r.at("method"), fault.Invalid, "crop.cell_empty", nil)
	}
	for _, m := range methods {
		if !slices.Contains(storageMethods, m) {
			l.refuse(r.at("method"), fault.Invalid, "crop.not_in_list", words.Args{"column": "method", "given": m, "list": joined(storageMethods)})
		}
	}
	return methods
}

// spanOf reads a pair of columns that are both blank or hold a span.
func (l *loader) spanOf(r row, which int) (span [2]float64) {
	limit := preparingRange[which]
	if r.get(limit.from) == "" && r.get(limit.to) == "" {
		return span
	}
	from, fine := l.value(r, limit.from)
	to, also := l.value(r, limit.to)
	if fine && also && !(from > 0 && from <= to && to <= limit.most) {
		l.refuse(r.at(limit.to), fault.OutOfRange, "crop.storage_out_of_range",
			words.Args{"column": limit.to, "given": to, "min": from, "max": limit.most})
	}
	return [2]float64{from, to}
}
