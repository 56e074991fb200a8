package browser_test

import "testing"

// faultyAnswer puts a job off to a day that is past.
func faultyAnswer(t *testing.T, b *tab) {
	unfolded(t, b)
	b.fill(`[id="f-until-chit_pot-27t"]`, "2026-12-01")
	b.press(`[id="job-chit_pot-27t"] button[value="put off"]`)
	b.wait("it is told", `document.querySelector("[id='f-until-chit_pot-27t-wrong']") !== null`)
}

// A job of one's own is added and ticked, another is put off once what that costs was
// asked, and one step back brings it back; the list stays where it is looked at.
func TestAWeekIsAnswered(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/own_jobs/new")
			h.enter("#f-name", "Sharpen the spade")
			h.day("#f-date", "2027-02-02", "02022027")
			h.enter("#f-minutes", "15")
			h.goOn(".row-form button.main")
			h.says("Sharpen the spade")
			h.visit("/week?days=35")
			h.says("Sharpen the spade")
			h.tap(w, `.job[id^="job-own_"] button.tick`)
			h.wait("the spade is done", `document.querySelector("#answered .struck")?.textContent.includes("Sharpen the spade") ?? false`)
			h.wait("it is said", `document.querySelector(".said p").textContent.includes("job done")`)
			job := `[id="job-chit_pot-27t"]`
			h.unfold(job + " details")
			h.day(`[id="f-until-chit_pot-27t"]`, "2027-02-02", "02022027")
			h.goOn(job + ` button[formmethod="get"]`)
			h.wait("the cost is told", `document.querySelector("`+`[id='job-chit_pot-27t'] .cost`+`") !== null`)
			h.tap(w, job+` button[value="put off"]`)
			h.wait("it is put off", `document.querySelector("[id='job-chit_pot-27t'] .says").textContent.includes("Put off to")`)
			h.tap(w, ".said form button")
			h.wait("it is as it was", `!document.querySelector("[id='job-chit_pot-27t'] .says").textContent.includes("Put off to")`)
			h.quiet()
		})
	}
}

// tap presses a button that answers in place where there is script, and with a new
// page where there is none.
func (h hand) tap(w way, selector string) {
	h.t.Helper()
	switch {
	case w.keyboard:
		h.tabTo(selector)
		h.do(enter())
	case len(w.before) > 0:
		h.follow(selector)
	default:
		h.press(selector)
	}
}

// With script a tap leaves the list where it is.
func TestATapDoesNotMoveTheList(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), phone)
	b.visit("/week?days=28")
	const wash = `document.querySelector("[id^='job-wash-pots']").getBoundingClientRect().top`
	eval[bool](b, `(document.querySelector("[id='job-chit_pot-27t']").scrollIntoView({block: "center"}), true)`)
	before := eval[float64](b, wash)
	b.press(`[id="job-chit_pot-27t"] button.tick`)
	b.wait("it is done", `document.querySelector("#answered .struck") !== null`)
	next := eval[float64](b, `document.activeElement.getBoundingClientRect().top`)
	if after := eval[float64](b, wash); after > before+1 || next < 0 || next > float64(phone.height) {
		t.Errorf("what follows moved from %g to %g, the next is at %g", before, after, next)
	}
}

// The week's sheet and the sowing list are clean on paper.
func TestTheWeekOnPaper(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	for _, p := range papers {
		t.Run(p.name, func(t *testing.T) {
			b.t = t
			sheets, text := b.print("/week", p)
			if sheets != 1 {
				t.Errorf("a quiet week takes %d sheets", sheets)
			}
			printed(t, text, "Week of 4 January", "Home 2", "winter leeks", "Seen on the round")
			notPrinted(t, text, "Put off", "Show", "Lists beside")
			if sheets, text = b.print("/week?people=2", p); sheets != 2 {
				t.Errorf("two people have %d sheets", sheets)
			}
			printed(t, text, "Sheet 1 of 2", "Sheet 2 of 2")
			_, text = b.print("/week/sowings", p)
			printed(t, text, "What is to be sown", "Summer cabbage", "cells")
		})
	}
}
