package browser_test

import (
	"encoding/json"
	"fmt"
	"os/exec"
	"testing"
)

// litAt asks the browser how many of the map's tones cover the middle of a bed:
// the tones lie upon each other, the darker within the lighter.
const litAt = `(name => {
	const svg = document.querySelector(".only-desk svg.light-map");
	const bed = [...svg.querySelectorAll("text")].find(t => t.textContent.startsWith(name));
	const at = bed.closest("g").getAttribute("transform").match(/translate\(([-\d.]+) ([-\d.]+)\)/);
	const point = new DOMPoint(+at[1], +at[2]);
	return [...svg.querySelectorAll("path.lit1, path.lit2, path.lit3, path.lit4")].filter(p => p.isPointInFill(point)).length;
})`

// From the bed's page to the light, from month to month by links, and what is
// drawn at a bed is the tone that its light has, as garner ground shade tells it.
func TestLightFromMonthToMonth(t *testing.T) {
	beside(t)
	s := lookAtSample(t)
	b := openTab(t, s, desk)
	out, err := exec.Command(program, "ground", "shade", "--sample=main", "--json").Output()
	if err != nil {
		t.Fatal(err)
	}
	var told struct {
		Beds []struct {
			Bed   string
			Light [12]float64
		}
	}
	if err := json.Unmarshal(out, &told); err != nil {
		t.Fatal(err)
	}
	light := map[string][12]float64{}
	for _, bed := range told.Beds {
		light[bed.Bed] = bed.Light
	}
	b.visit("/beds/hb")
	b.follow(`.say a[href^="/ground/light"]`)
	for _, month := range []int{1, 6, 12} {
		b.follow(fmt.Sprintf(".light-months a:nth-of-type(%d)", month))
		for id, name := range map[string]string{"hb": "Wall border", "h4": "Home 4", "h12": "Strawberry bed"} {
			tones := eval[int](b, litAt+`("`+name+`")`)
			share, want := light[id][month-1], 0
			for _, level := range []float64{0.9, 0.75, 0.6, 0.4} {
				if share < level {
					want++
				}
			}
			if tones < want-1 || tones > want+1 { // the middle of a bed and its mean may lie either side of a line
				t.Errorf("%s in month %d: %d tones upon each other, its light is %v", name, month, tones, share)
			}
		}
	}
}

// The light prints on one sheet, with its figures and without its links.
func TestLightPrintsOnOneSheet(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	for _, p := range papers {
		sheets, text := b.print("/ground/light?month=12", p)
		if sheets != 1 {
			t.Errorf("%s: the light takes %d sheets", p.name, sheets)
		}
		printed(t, text, "Light on Larkmeer house garden", "December", "Wall border", "The same in figures")
		notPrinted(t, text, "Wilgenrik share")
	}
}
