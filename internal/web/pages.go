package web

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"
)

//go:embed templates
var templateFiles embed.FS

// pages are the templates, each with the layout and the shared parts.
type pages struct {
	byName map[string]*template.Template
}

// page is one page to be shown.
type page struct {
	Name   string // of its template
	Nav    string // entry of the navigation that is marked as the present one
	Status int    // 0: 200
	Body   any    // what the template is given
}

// framed is what the layout is given.
type framed struct {
	page
	Links []link
	Said  *said
	Home  bool // there is a holding to move about in
}

// link is an entry of the navigation.
type link struct {
	Name, Path string
	Here       bool
}

// navigation is in the order of its links. Each has the text web.nav_<name>.
var navigation = []link{
	{Name: "table", Path: "/"},
	{Name: "plantings", Path: "/plantings"},
	{Name: "plans", Path: "/plans"},
	{Name: "ground", Path: "/ground"},
	{Name: "larder", Path: "/larder"},
	{Name: "crops", Path: "/crops"},
	{Name: "wants", Path: "/wants"},
	{Name: "stores", Path: "/stores"},
	{Name: "weather", Path: "/weather"},
	{Name: "history", Path: "/history"},
}

func loadPages(funcs template.FuncMap) (*pages, error) {
	shared, err := template.New("layout.html").Funcs(funcs).Option("missingkey=error").
		ParseFS(templateFiles, "templates/layout.html", "templates/part_*.html")
	if err != nil {
		return nil, err
	}
	names, err := fs.Glob(templateFiles, "templates/*.html")
	if err != nil {
		return nil, err
	}
	p := &pages{byName: map[string]*template.Template{}}
	for _, file := range names {
		name := strings.TrimSuffix(path.Base(file), ".html")
		if name == "layout" || strings.HasPrefix(name, "part_") {
			continue
		}
		own, err := shared.Clone()
		if err != nil {
			return nil, err
		}
		if p.byName[name], err = own.ParseFS(templateFiles, file); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// render sets a page in the layout.
func (p *pages) render(f framed) ([]byte, error) {
	t, ok := p.byName[f.Name]
	if !ok {
		return nil, fmt.Errorf("no template is called %q", f.Name)
	}
	for _, l := range navigation {
		l.Here = l.Name == f.Nav
		f.Links = append(f.Links, l)
	}
	var b bytes.Buffer
	if err := t.ExecuteTemplate(&b, "layout.html", f); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// renderNamed sets one named part of a page by itself.
func (p *pages) renderNamed(page, part string, body any) ([]byte, error) {
	var b bytes.Buffer
	err := p.byName[page].ExecuteTemplate(&b, part, body)
	return b.Bytes(), err
}
