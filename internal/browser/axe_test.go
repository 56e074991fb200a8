package browser_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// axe is the text of the checker; it comes with the tools of the script.
var axe = sync.OnceValues(func() (string, error) {
	text, err := os.ReadFile(filepath.Join(root, "node_modules/axe-core/axe.min.js"))
	return string(text), err
})

// violation is one rule broken at some places of a page.
type violation struct {
	ID    string `json:"id"`
	Help  string `json:"help"`
	Nodes []struct {
		HTML    string `json:"html"`
		Target  []any  `json:"target"`
		Summary string `json:"failureSummary"`
	} `json:"nodes"`
}

// Whole runs are by these sets of rules, with text at 7 : 1 beside them. In the
// other theme only the colours differ.
var (
	wholeRun   = `{resultTypes: ["violations"], runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"], preload: false, rules: {"color-contrast": {enabled: false}, "color-contrast-enhanced": {enabled: true}}}`
	coloursRun = `{resultTypes: ["violations"], runOnly: {type: "rule", values: ["color-contrast-enhanced", "link-in-text-block"]}, preload: false}`
)

// loadAxe puts the checker into the page.
func (b *tab) loadAxe() {
	b.t.Helper()
	text, err := axe()
	if err != nil {
		b.t.Fatalf("axe-core is not there: make web (%v)", err)
	}
	eval[bool](b, text+"\n;true")
}

// accessible fails for each rule that the page breaks.
func (b *tab) accessible(t *testing.T, options string) {
	t.Helper()
	raw := eval[string](b, `axe.run(document, `+options+`).then(r => JSON.stringify(r.violations))`)
	var found []violation
	if err := json.Unmarshal([]byte(raw), &found); err != nil {
		t.Fatal(err)
	}
	for _, v := range found {
		for i, n := range v.Nodes {
			if i == 3 {
				t.Errorf("%s: and %d more", v.ID, len(v.Nodes)-i)
				break
			}
			t.Errorf("%s: %s\n%v %s\n%s", v.ID, v.Help, n.Target, shortened(n.HTML), n.Summary)
		}
	}
}

func shortened(html string) string {
	html = strings.Join(strings.Fields(html), " ")
	return html[:min(len(html), 200)]
}
