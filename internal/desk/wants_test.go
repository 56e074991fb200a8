package desk_test

import (
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/larder"
	"garner/internal/words"
)

// What must never lack leads when it is likely to; what would be nice to have is
// not spoken of.
func TestAFloorLeadsAndNiceToHaveDoesNot(t *testing.T) {
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	r, err := desk.Outlook(h, desk.OutlookOptions{Years: 10})
	if err != nil {
		t.Fatal(err)
	}
	if r.Lead.Key == "desk.lead_floor" || len(r.Thin) == 0 || len(r.Thin[0].Lacks) == 0 {
		t.Fatalf("the lead is %+v", r.Lead)
	}
	worst := r.Thin[0].Lacks[0]
	for i := range h.Wants {
		if h.Wants[i].Vegetable == worst {
			h.Wants[i].Importance = larder.Floor
		}
	}
	held, err := desk.Outlook(h, desk.OutlookOptions{Years: 10})
	if err != nil {
		t.Fatal(err)
	}
	if held.Lead.Key != "desk.lead_floor" || !strings.HasPrefix(words.English().Text(held.Lead), "Never to lack") {
		t.Errorf("with %s never to lack the lead is %s", worst, words.English().Text(held.Lead))
	}
	for i := range h.Wants {
		if h.Wants[i].Vegetable == worst {
			h.Wants[i].Importance = larder.Nice
		}
	}
	nice, err := desk.Outlook(h, desk.OutlookOptions{Years: 10})
	if err != nil {
		t.Fatal(err)
	}
	for _, thin := range nice.Thin {
		for _, name := range thin.Lacks {
			if name == worst {
				t.Errorf("nice to have and yet told to lack: %s", name)
			}
		}
	}
	if nice.HomeGrownShare != r.HomeGrownShare {
		t.Error("how much is held to a want changes what is eaten")
	}
}

// What is bought counts as bought: neither as short nor as home-grown.
func TestWhatIsBoughtIsNotHomeGrown(t *testing.T) {
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	before, err := desk.Outlook(h, desk.OutlookOptions{Years: 5})
	if err != nil {
		t.Fatal(err)
	}
	for i := range h.Wants {
		h.Wants[i].BuyKgPerWeek = 1000
	}
	after, err := desk.Outlook(h, desk.OutlookOptions{Years: 5})
	if err != nil {
		t.Fatal(err)
	}
	if before.HomeGrownShare != after.HomeGrownShare {
		t.Errorf("home-grown is %g of it, was %g", after.HomeGrownShare, before.HomeGrownShare)
	}
	for i, v := range after.Vegetables {
		for k := range v.WantKg {
			if v.ShortKg[k] != 0 {
				t.Fatalf("%s is short in week %d with all that lacks bought", v.Name, k)
			}
			if v.BoughtKg != nil && !close(v.BoughtKg[k], before.Vegetables[i].ShortKg[k]) {
				t.Fatalf("%s, week %d: %g bought, %g lacked", v.Name, k, v.BoughtKg[k], before.Vegetables[i].ShortKg[k])
			}
		}
	}
}

func close(a, b float64) bool { return a-b < 1e-5 && b-a < 1e-5 }
