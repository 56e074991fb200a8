package cli

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// reporter is told how far a computation is.
type reporter func(done, total int)

// ask opens the holding that a question is about, once the question's flags are
// sound, and shows how far the desk is until it has the answer.
func ask[T any](a *App, from holdingFlags, f *flags, question func(h *holding.Holding, progress reporter) (T, error)) (answer T, err error) {
	if err = f.err(); err != nil {
		return answer, err
	}
	h, err := from.open(a)
	if err != nil {
		return answer, err
	}
	p := a.progress("cli.progress_outlook")
	defer p.clear()
	return question(h, p.report())
}

// span reads --from and --until; either may be left out.
func (f *flags) span(from, until string) (first, end cal.Date) {
	first, end = f.date("--from", from), f.date("--until", until)
	if first.IsSet() && end.IsSet() && end <= first {
		f.refuse(fault.Invalid, words.P("cli.free_order", words.Args{"from": first, "until": end}))
	}
	return first, end
}
