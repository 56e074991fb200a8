package words

import (
	"encoding/json"
	"errors"
	"testing"

	"golang.org/x/text/language"

	"garner/internal/cal"
)

// A phrase that was kept reads as it did before, whatever its values are.
func TestPhraseReadsTheSameAfterItWasKept(t *testing.T) {
	c := sampleTexts(t, language.English, `{
		"a": "{v}", "day": "{v:day}", "kg": "{v:kg}", "none": "well",
		"n": {"one": "{v} bed", "other": "{v} beds", "by": "v"}
	}`)
	for _, p := range []Phrase{
		P("none", nil),
		P("a", Args{"v": "bed 3"}),
		P("n", Args{"v": 1}),
		P("n", Args{"v": 12345}),
		P("kg", Args{"v": 0.254}),
		P("day", Args{"v": cal.Of(2027, 4, 16)}),
		P("a", Args{"v": cal.None}),
		P("a", Args{"v": cal.MonthDay{Month: 3, Day: 15}}),
		P("a", Args{"v": []string{"leeks", "kale", "carrots"}}),
		P("a", Args{"v": []string{}}),
		P("a", Args{"v": P("kg", Args{"v": 2.5})}),
		P("a", Args{"v": []Phrase{P("kg", Args{"v": 2.5}), P("day", Args{"v": cal.Of(2027, 1, 4)})}}),
		P("a", Args{"v": errors.New("cut off")}),
	} {
		raw, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		var back Phrase
		if err := json.Unmarshal(raw, &back); err != nil {
			t.Errorf("%s: %v", raw, err)
			continue
		}
		if got, want := c.Text(back), c.Text(p); got != want {
			t.Errorf("%s reads %q, before it was kept %q", raw, got, want)
		}
	}
}

func TestPhraseRefusesAValueItDoesNotKnow(t *testing.T) {
	var p Phrase
	if err := json.Unmarshal([]byte(`{"key":"a","args":{"v":{"colour":"red"}}}`), &p); err == nil {
		t.Error("a value of an unknown kind was taken")
	}
}
