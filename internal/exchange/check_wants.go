package exchange

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// checkGapsLeft finds spans that end before they begin.
func (c *checker) checkGapsLeft() {
	for i, l := range c.h.GapsLeft {
		if l.From.IsSet() && l.To.IsSet() && l.To < l.From {
			c.wrong("gaps_left", i, "to", fault.New(fault.Invalid, "exchange.to_before_from", words.Args{"from": l.From, "to": l.To}))
		}
	}
}
