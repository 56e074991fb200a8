// Package internal_test holds the tests of the program as a whole: the package
// map and the documents that are kept true by the program.
package internal_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"
)

// module is the path that the program's own imports begin with.
const module = "garner/internal/"

// leaves may be imported by every package.
var leaves = []string{"cal", "num", "fault", "words", "table", "near"}

// values are the packages of the engine that hold mostly plain values.
var values = []string{"sun", "climate", "cover", "crop", "place", "plan", "record", "larder", "observed", "holding"}

// arrows says what each package may import beside the leaves. A package that is
// not here may not exist; a home named here may still be empty. The reasons are
// in docs/architecture.md.
var arrows = map[string][]string{
	"cal":   {},
	"num":   {},
	"words": {"cal"},
	"fault": {"words"},
	"table": {"fault", "words", "cal", "num"},
	"near":  {},

	"sun":    {},
	"crop":   {},
	"ground": {},
	"search": {"programme"},
	"draft": {"programme", "outlook", "space", "rotation", "protect", "season", "growth", "gazetteer", "appetite", "larder", "labour", "holding", "record", "plan", "place",
		"crop", "climate", "cover", "sun"},
	"programme": {},
	"climate":   {"sun"},
	"cover":     {"climate", "sun"},
	"place":     {"sun", "cover", "ground"},
	"plan":      {"place", "crop", "cover"},
	"record":    {"place", "crop", "plan", "cover"},
	"observed":  {"climate", "sun"},
	"labour":    {},
	"larder":    {"crop", "labour"},
	"holding":   {"place", "plan", "record", "larder", "crop", "climate", "cover", "observed", "sun"},

	"growth": {"canopy", "crop", "climate", "sun"},
	"water":  {"climate", "crop", "ground", "sun"},
	"risk":   {"climate", "crop", "cover", "sun"},
	"shade":  {"sun", "place"},
	"canopy": {},
	"season": {"canopy", "growth", "water", "cover", "place", "plan", "crop", "climate", "sun", "larder"},
	"window": {"season", "growth", "cover", "crop", "climate", "sun", "plan"},
	"outlook": {"season", "growth", "larder", "plan", "place", "holding", "crop", "climate", "cover", "sun",
		"ground", "record", "shade", "appetite"},
	"space":    {"outlook", "soilcare", "season", "growth", "plan", "place", "holding", "crop", "record", "cover"},
	"frost":    {"outlook", "protect", "risk", "growth", "holding", "plan", "place", "crop", "climate", "cover"},
	"watering": {"outlook", "season", "growth", "water", "holding", "crop", "place", "plan", "record"},
	"supply":   {"place"},
	"rotation": {"crop", "plan", "record", "place"},
	"soilcare": {"ground", "crop", "plan", "record", "place"},
	"protect":  {"cover", "crop", "plan", "record", "place", "holding"},
	"pairing":  {"outlook", "season", "growth", "plan", "place", "holding", "crop"},
	"calibrate": {"season", "growth", "window", "station", "cover", "crop", "climate", "sun", "plan", "place",
		"record"},
	"printed":    {"window", "growth", "cover", "crop", "climate", "sun"},
	"leftout":    {"printed", "crop"},
	"scoreboard": {"risk", "water", "outlook", "larder", "window", "calibrate", "printed", "leftout", "season", "crop", "growth", "cover", "climate", "sun", "record"},
	"advise":     {"space", "rotation", "soilcare", "protect", "holding", "ground", "growth", "record", "plan", "season", "outlook", "window", "larder", "place", "crop", "climate", "cover", "sun"},
	"mend":       {"advise", "space", "outlook", "protect", "season", "growth", "holding", "larder", "labour", "plan", "place", "cover", "crop"},

	"barren":  {"draft", "cover", "place", "outlook", "season", "growth", "holding", "plan", "crop", "climate"},
	"compare": {"outlook", "space", "larder", "labour"},
	"carry":   {"rotation", "plan", "record", "place", "crop", "cover"},

	"jobs": {"frost", "outlook", "season", "growth", "soilcare", "labour", "larder", "holding", "plan", "place", "record", "crop", "cover",
		"climate", "sun"},
	"calendar": {},

	"station": {"climate", "sun"},
	"archive": {"station"},
	"exchange": {"holding", "station", "risk", "crop", "plan", "place", "record", "larder", "cover", "climate",
		"observed", "sun", "rotation", "water"},
	"sample": {},

	// what tests of several packages set up alike
	"demotest": {"sample", "exchange", "crop", "holding", "outlook"},

	"journal":   {},
	"gazetteer": {"climate", "sun"},
	"notebook":  {"crop", "plan", "place", "cover"},
	"appetite":  {"crop", "larder"},
	"store":     {"desk", "journal", "exchange", "holding", "record", "plan", "place", "crop", "larder", "climate", "cover", "sun"},
	"draw":      {"desk", "place"},

	"fetch":  {"desk"},
	"broker": {"desk"},

	"browser": {},

	"desk": {"*"},
	"cli":  append([]string{"desk", "station", "store", "web", "exchange", "fetch", "broker", "risk"}, values...),
	"web":  append([]string{"desk", "draw", "station", "journal", "gazetteer", "notebook", "appetite", "exchange"}, values...),
}

// outside are the packages that may meet the world: files, clocks and the
// network. All others are the engine, which is pure.
var outside = []string{"cli", "web", "store", "desk", "exchange", "archive", "fetch", "broker"}

// forbidden are the imports the engine may not have.
var forbidden = []string{
	"os", "os/exec", "os/signal", "net", "net/http", "database/sql", "log", "log/slog",
	"math/rand", "math/rand/v2", "crypto/rand", "syscall", "unsafe", "runtime/debug",
}

// source is one Go file with what matters here.
type source struct {
	name    string
	pkg     string // folder under internal
	test    bool
	imports []string
	clock   bool // calls time.Now, time.Since, time.Until or waits
}

func TestImportsFollowThePackageMap(t *testing.T) {
	for _, s := range readAll(t) {
		allowed, known := arrows[s.pkg]
		if !known {
			t.Errorf("%s: package %s has no place in the package map", s.name, s.pkg)
			continue
		}
		for _, path := range s.imports {
			to, own := strings.CutPrefix(path, module)
			if !own || s.test {
				continue
			}
			to, _, _ = strings.Cut(to, "/")
			if !mayImport(s.pkg, allowed, to) {
				t.Errorf("%s: %s may not import %s", s.name, s.pkg, to)
			}
		}
	}
}

// mayImport tells whether an arrow is allowed. The leaves have only the arrows
// written out for them.
func mayImport(from string, allowed []string, to string) bool {
	if slices.Contains(allowed, to) || from == to {
		return true
	}
	if slices.Contains(allowed, "*") {
		return to != "cli" && to != "web" && to != "store" && to != "draw" && to != "fetch" && to != "broker"
	}
	return !slices.Contains(leaves, from) && slices.Contains(leaves, to)
}

func TestEngineIsPure(t *testing.T) {
	for _, s := range readAll(t) {
		if s.test || slices.Contains(outside, s.pkg) {
			continue
		}
		for _, path := range s.imports {
			if slices.Contains(forbidden, path) {
				t.Errorf("%s: the engine may not import %s", s.name, path)
			}
		}
		if s.clock {
			t.Errorf("%s: the engine may not look at the clock", s.name)
		}
	}
}

// The map itself has no ring, so that reading can start at any leaf.
func TestPackageMapHasNoRing(t *testing.T) {
	state := map[string]int{} // 1: on the way, 2: done
	var visit func(string, []string)
	visit = func(name string, way []string) {
		switch state[name] {
		case 1:
			t.Errorf("the package map has a ring: %s", strings.Join(append(way, name), " → "))
			return
		case 2:
			return
		}
		state[name] = 1
		for _, to := range arrows[name] {
			if to != "*" {
				visit(to, append(way, name))
			}
		}
		state[name] = 2
	}
	names := make([]string, 0, len(arrows))
	for name := range arrows {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		visit(name, nil)
	}
}

// No file grows past what a person reads in one sitting, generated and test
// files apart.
func TestFilesStayShort(t *testing.T) {
	for _, s := range readAll(t) {
		if lines := countLines(t, s.name); !s.test && lines > 300 {
			t.Errorf("%s has %d lines, over 300: split it by what it is about", s.name, lines)
		}
	}
}

func readAll(t *testing.T) []source {
	t.Helper()
	var out []source
	err := filepath.WalkDir(".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && entry.Name() == "testdata" {
			return filepath.SkipDir
		}
		pkg, _, inPackage := strings.Cut(filepath.ToSlash(name), "/")
		if !inPackage || !strings.HasSuffix(name, ".go") {
			return nil
		}
		s, err := readSource(name, pkg)
		out = append(out, s)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) == 0 {
		t.Fatal("no sources were found")
	}
	return out
}

func readSource(name, pkg string) (source, error) {
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
	if err != nil {
		return source{}, err
	}
	s := source{name: name, pkg: pkg, test: strings.HasSuffix(name, "_test.go")}
	for _, i := range file.Imports {
		path, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			return source{}, err
		}
		s.imports = append(s.imports, path)
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if sel, ok := n.(*ast.SelectorExpr); ok {
			s.clock = s.clock || isClock(sel)
		}
		return true
	})
	return s, nil
}

func isClock(sel *ast.SelectorExpr) bool {
	x, ok := sel.X.(*ast.Ident)
	return ok && x.Name == "time" &&
		slices.Contains([]string{"Now", "Since", "Until", "After", "Sleep", "Tick", "NewTimer"}, sel.Sel.Name)
}
