package crop

import (
	"errors"
	"strings"
	"testing"

	"garner/internal/fault"
)

// British, American, Australian and New Zealand names of the same plant, and the
// ways in which tables print them (common knowledge, no source).
var sameCrop = [][]string{
	{"courgette", "zucchini", "courgettes"},
	{"squash, summer", "summer squash", "pattypan", "crookneck squash"},
	{"aubergine", "eggplant", "brinjal"},
	{"swede", "rutabaga", "Swedish turnip", "neeps"},
	{"French bean", "bean, bush", "snap bean", "green beans", "string bean", "bean, pole"},
	{"runner bean", "scarlet runner", "bean, runner"},
	{"broad bean", "fava bean", "bean, fava"},
	{"dry bean", "haricot bean", "bean, dry"},
	{"chard", "silverbeet", "Swiss chard"},
	{"leaf beet", "perpetual spinach", "spinach beet"},
	{"rocket", "arugula", "roquette"},
	{"spring onion", "scallion", "onion, green", "bunching onion, Japanese"},
	{"Welsh onion", "perennial onion"},
	{"beetroot", "beet", "beets", "red beet"},
	{"coriander", "cilantro"},
	{"sweet pepper", "capsicum", "bell pepper"},
	{"chilli", "hot pepper", "chile pepper"},
	{"pak choi", "bok choy", "buk choy"},
	{"tatsoi", "tat soi", "rosette pak choi"},
	{"Chinese cabbage", "napa cabbage", "wombok"},
	{"sweetcorn", "corn", "sweet corn"},
	{"mangetout", "snow pea", "sugar snap pea"},
	{"pea shoots", "pea tips"},
	{"dry peas", "peas to dry", "marrowfat peas", "soup pea"},
	{"field bean", "tic bean", "horse bean"},
	{"calabrese", "broccoli", "American broccoli"},
	{"celeriac", "celery root", "knob celery"},
	{"lamb's lettuce", "corn salad", "mache"},
	{"winter purslane", "miner's lettuce", "claytonia"},
	{"forced chicory", "witloof", "Belgian endive", "chicory to force"},
	{"radicchio", "red chicory"},
	{"Jerusalem artichoke", "sunchoke"},
	{"oca", "New Zealand yam"},
	{"sweet potato", "kumara"},
	{"seakale", "sea kale"},
	{"perennial kale", "tree kale"},
	{"blackberry", "brambles"},
	{"redcurrant", "red currants"},
	{"whitecurrants", "white currant"},
	{"blackcurrant", "black currant"},
	{"sour cherry", "tart cherry", "Morello cherry"},
	{"plum", "damson", "greengage"},
	{"mint", "spearmint"},
	{"winter rye", "grazing rye", "cereal rye"},
	{"vetch", "winter tares"},
	{"white mustard", "mustard (green manure)"},
}

func TestNamesOfTheSameCropFindTheSame(t *testing.T) {
	book := load(t)
	for _, names := range sameCrop {
		first, _, err := book.Find(names[0])
		if err != nil {
			t.Errorf("%q: %v", names[0], err)
			continue
		}
		for _, name := range names[1:] {
			if c, _, err := book.Find(name); err != nil || c != first {
				t.Errorf("%q is not %s: %v, %v", name, first.ID, c, err)
			}
		}
	}
}

// Names people use for one use of a crop find that use.
func TestCommonNamesFindTheUse(t *testing.T) {
	book := load(t)
	for name, want := range map[string]string{
		"everbearing strawberry": "strawberry/everbearing",
		"perpetual strawberries": "strawberry/everbearing",
		"hardneck garlic":        "garlic/hardneck",
		"early leeks":            "leek/early",
		"early potatoes":         "potato/early",
		"winter radishes":        "radish/winter",
		"winter radish":          "radish/winter",
		"mangetout":              "pea/mangetout",
		"ridge cucumber":         "cucumber/outdoor",
		"spring greens":          "cabbage/greens",
		"summer squash":          "courgette/squash",
		"pea shoots":             "pea/shoots",
		"witloof chicory":        "chicory/forced",
		"white currants":         "redcurrant/white",
		"cooking cherries":       "cherry/sour",
		"early apples":           "apple/early",
		"Bramley":                "apple/keeping",
		"field beans":            "field-bean/table",
	} {
		c, u, err := book.Find(name)
		if err != nil {
			t.Errorf("%q: %v", name, err)
		} else if got := c.ID + "/" + u.Name; got != want {
			t.Errorf("%q is %s, want %s", name, got, want)
		}
	}
}

// A botanical name finds its crop, or tells all the crops that share it.
func TestBotanicalNamesAreFound(t *testing.T) {
	book := load(t)
	for _, c := range book.Crops() {
		found, _, err := book.Find(c.Botanical)
		var shared *fault.Error
		switch {
		case err == nil && found == c:
		case errors.As(err, &shared) && shared.Kind == fault.Conflict && strings.Contains(shared.Phrase.Args["crops"].(string), c.Name):
		default:
			t.Errorf("%q of %s: %v, %v", c.Botanical, c.ID, found, err)
		}
	}
	for name, id := range map[string]string{
		"Malus domestica": "apple", "Oxalis tuberosa": "oca", "Zingiber officinale": "ginger", "Crambe maritima": "seakale",
		"Rosmarinus officinalis": "rosemary", "Salvia rosmarinus": "rosemary", "Ribes rubrum": "redcurrant", "Prunus cerasus": "cherry",
	} {
		if c, _, err := book.Find(name); err != nil || c.ID != id {
			t.Errorf("%q is not %s: %v, %v", name, id, c, err)
		}
	}
}

// A misspelt name is answered with those that are near.
func TestMisspeltNamesAreAnsweredWithNearOnes(t *testing.T) {
	book := load(t)
	for given, want := range map[string]string{
		"courgete": "courgette", "rosemarry": "rosemary", "gnger": "ginger", "black bery": "blackberry", "phacelea": "phacelia",
	} {
		_, _, err := book.Find(given)
		var unknown *fault.Error
		if !errors.As(err, &unknown) || unknown.Kind != fault.NotFound {
			t.Errorf("%q: got %v, want a fault of what is not found", given, err)
			continue
		}
		if near, _ := unknown.Phrase.Args["near"].(string); !strings.Contains(near, want) {
			t.Errorf("%q: near is %q, without %s", given, near, want)
		}
	}
}
