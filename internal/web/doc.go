// Package web serves the pages: it renders what the desk answers and reads forms.
// It holds no formulas, keeps nothing between requests and reaches storage only
// through the desk.
//
// # How to add a page
//
//  1. templates/<page>.html defines "title" and "main"; both are given the
//     page's body. Every text comes from the catalogue: {{t "web.beds_title"}},
//     {{t "web.beds_count" "n" .N}}, {{tn "web.kind_" .Kind}} for a name out of a
//     closed list, {{phrase .Why}} for a words.Phrase. Texts lie in
//     internal/words/data/en/web*.json. No inline script and no inline style.
//  2. <page>.go holds a handler func(v *visit) error and its body type. It asks
//     v.office and ends with v.show(page{Name: "beds", Nav: "ground", Body: b}),
//     v.kept(entry, path) after a change was written, or v.moveTo(path). An error
//     it returns becomes a page with the right status (fault.go).
//  3. routes.go names the route.
//     A page that needs another frame (navigation and main of its own) defines
//     "frame" as well, which is given the whole (see layout.html) and uses the
//     parts "nav" and "said".
//  4. style/<page>.css holds its style; all files are joined, look.css first.
//  5. script/<page>.ts is imported by script/main.ts when the page lives on it.
//     Without script every page reads and every form posts.
//
// Templates named part_*.html are shared by all pages. Functions of templates are
// in funcs.go. Forms carry {{.Entry}} from v.entry(): an id made when the form was
// shown, so that a form sent twice writes once.
package web
