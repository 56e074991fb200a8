package desk

import (
	"reflect"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/plan"
)

// An answer is another with another try, revision of the holding or day, and the
// same with the same ones.
func TestAnswersAreNamedByAllThatMayChangeThem(t *testing.T) {
	o := demoOffice(t)
	date := plan.Change{Action: "set", Planting: "pot-27m", Field: "date", Value: "2027-06-22"}
	area := plan.Change{Action: "set", Planting: "pot-27m", Field: "area_m2", Value: "4"}
	cover := plan.Change{Action: CoverAction, Planting: "pot-27m", Value: "fleece;2027-04-01;2027-04-20"}
	names := map[num.Digest]string{}
	add := func(what string, a *asked) {
		name := a.answer("form").Sum()
		if other, taken := names[name]; taken {
			t.Errorf("%s has the name of %s", what, other)
		}
		names[name] = what
	}
	asked := func(try ...plan.Change) *asked {
		a, err := o.ask(try)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	add("as it stands", asked())
	add("a date", asked(date))
	add("a date and an area", asked(date, area))
	add("a cover", asked(cover))
	later, other := asked(), asked()
	later.setting.Today++
	other.version++
	add("the next day", later)
	add("after an entry", other)
	if first, again := asked(date, area), asked(date, area); first.answer("form").Sum() != again.answer("form").Sum() {
		t.Error("the same question has two names")
	}
}

// What holds ground without growing is laid anew as well when it is tried
// otherwise.
func TestGroundAnswersATryOfWhatDoesNotGrow(t *testing.T) {
	h := *sampleHolding(t)
	p := plan.New("gone", h.Plan)
	p.Bed, p.Crop, p.Use, p.Date, p.ClearBy, p.AreaM2 = "h10", "carrot", "table", cal.Of(2027, 2, 20), cal.Of(2027, 2, 20), 1
	h.Plantings = append(append([]plan.Planting{}, h.Plantings...), p)
	free := func(o *Office, try ...plan.Change) (out []FreeStretch) {
		for _, b := range groundOf(t, o, "home", try...).Beds {
			if b.ID == "h10" {
				out = b.Free
			}
		}
		return out
	}
	larger := plan.Change{Action: "set", Planting: "gone", Field: "area_m2", Value: "3"}
	asked := NewOffice(newShelf(&h))
	free(asked)
	got, want := free(asked, larger), free(NewOffice(newShelf(&h)), larger)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// A mistake of ours beside a request is told to who asked, and the next who asks
// is answered.
func TestAMistakeBesideARequestIsTold(t *testing.T) {
	o := demoOffice(t)
	name := num.NewDigester("mistaken").Sum()
	var none []int
	_, there, err := workedOut(o, name, time.Hour, func() (int, error) { return none[0], nil })
	if !there || fault.KindOf(err) != fault.Internal {
		t.Errorf("a mistake gives %v (there: %t)", err, there)
	}
	if v, there, err := workedOut(o, name, time.Hour, func() (int, error) { return 7, nil }); v != 7 || !there || err != nil {
		t.Errorf("after a mistake there is %d (%v)", v, err)
	}
}
