package draft

import "garner/internal/programme"

// dominated tells whether another profile of the same use is at least as good in
// everything but what goes over: it holds ground within the same weeks, takes no
// other store or cover, and under every future gives for each lot one as heavy that is good
// in the same weeks and perhaps more. Of equal ones the first stays.
func dominated(all []profile, i int) bool {
	for k := range all {
		if k != i && covers(&all[k], &all[i]) && (k < i || !covers(&all[i], &all[k])) {
			return true
		}
	}
	return false
}

func covers(a, b *profile) bool {
	if a.week < b.week || a.free > b.free || a.use != b.use || a.store != nil && a.store != b.store || a.under.Kind != "" && a.under != b.under {
		return false
	}
	for f := range b.lots {
		if !lotsCover(a.lots[f], b.lots[f]) {
			return false
		}
	}
	return true
}

// lotsCover matches each lot with one of the others, in order.
func lotsCover(a, b []programme.Lot) bool {
	at := 0
	for _, l := range b {
		for at < len(a) && !(a[at].First <= l.First && a[at].Last >= l.Last && a[at].Kg >= l.Kg) {
			at++
		}
		if at == len(a) {
			return false
		}
		at++
	}
	return true
}
