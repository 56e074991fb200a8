package web

import (
	"net/url"
	"strings"

	"garner/internal/desk"
)

// carryBody is the page of next year, made from this one.
type carryBody struct {
	View   *desk.CarryView
	Lead   []string
	Wrong  []carryWrong
	Left   []carryLeft
	Hidden []hiddenField
}

// carryWrong is what clashes or went wrong, with the ways to mend it.
type carryWrong struct {
	Says  string
	Leave string // address of the page without it; empty for a cover
	Beds  []carryInto
}

// carryInto is a bed a sowing could be put in.
type carryInto struct{ Bed, Path string }

// carryLeft is what is left out, with the address of the page with it.
type carryLeft struct{ Name, Path string }

// The values of the address and of the form.
const (
	leaveName = "leave" // a planting of this year
	intoName  = "into"  // a planting of this year and the bed it is to have, planting:bed
)

// carryPage shows next year. Nothing is written.
func carryPage(v *visit) error {
	asked := v.r.URL.Query()
	view, err := v.office.CarryView(carryOptions(asked))
	if err != nil {
		return err
	}
	entry, err := v.entry()
	if err != nil {
		return err
	}
	b := &carryBody{View: view, Hidden: []hiddenField{{"entry", entry}}}
	for _, name := range []string{leaveName, intoName} {
		for _, value := range asked[name] {
			b.Hidden = append(b.Hidden, hiddenField{name, value})
		}
	}
	for _, p := range view.Lead {
		b.Lead = append(b.Lead, capital(v.sentence(p)))
	}
	for i := range view.Wrong {
		b.Wrong = append(b.Wrong, v.carryWrong(&view.Wrong[i], asked))
	}
	for _, l := range view.Out {
		b.Left = append(b.Left, carryLeft{capital(l.Name), carryPath(asked, leaveName, l.Planting, "")})
	}
	return v.show(page{Name: "carry", Nav: "plans", Body: b})
}

func (v *visit) carryWrong(t *desk.CarryTrouble, asked url.Values) carryWrong {
	w := carryWrong{Says: capital(v.sentence(t.Says))}
	if !t.Sowing {
		return w
	}
	w.Leave = carryPath(asked, leaveName, "", t.Planting)
	for i, bed := range t.Others {
		w.Beds = append(w.Beds, carryInto{t.Beds[i], carryPath(asked, intoName, "", t.Planting+":"+bed)})
	}
	return w
}

// carryPath is the page with one value less, or one more.
func carryPath(asked url.Values, name, less, more string) string {
	q := url.Values{}
	for _, key := range []string{leaveName, intoName} {
		for _, value := range asked[key] {
			if key != name || value != less {
				q.Add(key, value)
			}
		}
	}
	if more != "" {
		q.Add(name, more)
	}
	if len(q) == 0 {
		return "/plans/next"
	}
	return "/plans/next?" + q.Encode()
}

// carryOptions reads what is left out and which beds are told; of two beds for one
// sowing the last counts.
func carryOptions(asked url.Values) desk.CarryOptions {
	o := desk.CarryOptions{Leave: map[string]bool{}, Into: map[string]string{}}
	for _, id := range asked[leaveName] {
		o.Leave[id] = true
	}
	for _, pair := range asked[intoName] {
		id, bed, _ := strings.Cut(pair, ":")
		o.Into[id] = bed
	}
	return o
}

// keepCarried writes next year as a draft.
func keepCarried(v *visit) error {
	kept, _, err := v.office.KeepCarried(v.author(), carryOptions(v.r.PostForm))
	if err != nil {
		return err
	}
	v.kept(kept, "/plans")
	return nil
}

// putInForce makes another plan the one the table shows.
func putInForce(v *visit) error {
	kept, err := v.office.PutInForce(v.author(), v.field("plan"))
	if err != nil {
		return err
	}
	v.kept(kept, "/plans")
	return nil
}
