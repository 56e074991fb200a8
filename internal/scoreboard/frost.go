package scoreboard

import (
	"math"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/table"
	"garner/internal/words"
)

// frostSlackC is as far off a killing temperature may be: growers' lists go in
// steps of 5 F, laboratory and field differ by as much.
const frostSlackC = 2.0

// Weeks before the night of the trial: warm ones keep a plant soft, cold ones
// harden it. The plants are past their seedling days.
var (
	softening = chamber{meanC: 14, halfC: 3, radiationMJ: 3, dayLengthH: 11}
	hardening = chamber{meanC: 4, halfC: 2, radiationMJ: 3, dayLengthH: 10}
)

const beforeNight = 28

// frost holds the nights that kill against published killing temperatures and
// against those that crops were seen to live through.
func (m *maker) frost() (s Section, err error) {
	c, err := table.OpenCells(m.data, "hardiness.csv", "crop", "use", "measure", "low_c", "high_c", "source", "mark")
	if err != nil {
		return s, err
	}
	known := map[*crop.Use]Span{}
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), c.Text(i, "use"))
		if u == nil || u.Pattern == crop.Perennial {
			continue
		}
		if _, ok := known[u]; !ok {
			known[u] = Span{lethalC(u, hardening), lethalC(u, softening)}
		}
		l := Line{Crop: u.Crop, Published: span(c, i, "low_c", "high_c"), Unit: "C", Slack: frostSlackC,
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		s.Lines = append(s.Lines, chilled(l, c.Text(i, "measure"), u, known[u]).judge())
	}
	return s, c.Err()
}

// chilled says what a published measure asks of the engine. lethal runs from the
// night that kills half of a hardened stand to that of a soft one.
func chilled(l Line, measure string, u *crop.Use, lethal Span) Line {
	hard, soft := exactly(lethal.Low), exactly(lethal.High)
	withstood := Span{math.Inf(-1), l.Published.Low}
	switch measure {
	case "killed below", "half killed":
		l.Check, l.Computed = words.P("scoreboard.frost_kills", nil), lethal
		if measure == "half killed" {
			l.Check, l.Computed = words.P("scoreboard.frost_kills_hardened", nil), hard
		}
	case "killed unhardened":
		l.Check, l.Computed = words.P("scoreboard.frost_kills_soft", nil), soft
	case "died at":
		l.Check, l.Published, l.Computed = words.P("scoreboard.frost_died", nil), Span{l.Published.Low, math.Inf(1)}, hard
	case "damaged by light frost":
		l.Check, l.Published, l.Computed = words.P("scoreboard.frost_tender", nil), Span{-2.2, math.Inf(1)}, soft
	case "withstands light frost", "foliage burned not killed":
		l.Check, l.Published, l.Computed = words.P("scoreboard.frost_light", nil), withstood, hard
	case "gain in a day":
		l.Check, l.Computed, l.Slack = words.P("scoreboard.frost_gain", nil), exactly(dayGainC(u)), 1
	case "loss in a day":
		l.Check, l.Computed, l.Slack = words.P("scoreboard.frost_loss", nil), exactly(dayLossC(u)), 1
	default:
		l.Check, l.Published, l.Computed = words.P("scoreboard.frost_lives", nil), withstood, hard
	}
	return l
}

// lethalC is the night that kills half a stand after weeks in a chamber, found
// by halving [C].
func lethalC(u *crop.Use, before chamber) float64 {
	low, high := -50.0, 12.0
	for range 20 {
		night := (low + high) / 2
		if aliveAfter(u, before, night) < 0.5 {
			low = night
		} else {
			high = night
		}
	}
	return math.Round(5*(low+high)) / 10
}

func aliveAfter(u *crop.Use, before chamber, nightC float64) float64 {
	p := growth.Prepare(endless(u), growth.FromPlant, true)
	s := growth.Begin(p, growth.Fair(u))
	before.keep(p, &s, beforeNight, nil)
	s.Alive = 1 // whatever the weeks before cost
	night := before
	night.meanC = max(nightC, before.meanC)
	night.halfC = night.meanC - nightC
	night.keep(p, &s, 1, nil)
	return s.Alive
}

// dayGainC is how much hardier a soft plant is after one day at 5 and 2 C.
func dayGainC(u *crop.Use) float64 {
	return hardened(u, 0, chamber{meanC: 3.5, halfC: 1.5, radiationMJ: 5, dayLengthH: 10})
}

// dayLossC is how much of its hardiness a plant loses in one day at 20 and 17 C.
func dayLossC(u *crop.Use) float64 {
	return -hardened(u, 1, chamber{meanC: 18.5, halfC: 1.5, radiationMJ: 5, dayLengthH: 10})
}

// hardened is the gain in hardiness over one day in a chamber [C].
func hardened(u *crop.Use, before float64, c chamber) float64 {
	p := growth.Prepare(endless(u), growth.FromPlant, true)
	s := growth.Begin(p, growth.Fair(u))
	s.Harden = before
	c.keep(p, &s, 1, nil)
	return (s.Harden - before) * (u.KillC - u.KillHardenedC)
}
