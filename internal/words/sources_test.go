package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// keyLike is the shape of a catalogue key: lower case, dotted.
var keyLike = regexp.MustCompile(`^[a-z][a-z0-9_]*(\.[a-z0-9_]+)+$`)

// use is one place in the sources that makes a phrase.
type use struct {
	key   string
	args  map[string]bool // nil when they are not written out on the spot
	where string
	fault bool // made by fault.New
}

// sources is what the program's own files say of keys.
type sources struct {
	uses     []use
	literals map[string]bool // every string in the sources and data
	prefixes []string        // strings ending in a dot or underscore, to which a name is joined
}

// Every phrase made in the sources has a text, and gives all values the text
// uses; every text is used somewhere.
func TestSourcesAndCatalogueAgree(t *testing.T) {
	c := English()
	found := readSources(t, "../..")
	if len(found.uses) == 0 {
		t.Fatal("no phrase was found in the sources: the test looks in the wrong place")
	}
	for _, u := range found.uses {
		if !c.Has(u.key) {
			t.Errorf("%s: key %q has no text", u.where, u.key)
			continue
		}
		for _, arg := range c.Needs(u.key) {
			if u.args != nil && !u.args[arg] {
				t.Errorf("%s: the text of %q uses {%s}, which is not given", u.where, u.key, arg)
			}
		}
	}
	for _, key := range c.Keys() {
		if !found.mention(key) {
			t.Errorf("the text of %q is never used", key)
		}
	}
}

// What tells a person of a fault is a sentence, or several, wherever it is shown.
func TestFaultsAreSentences(t *testing.T) {
	c := English()
	for _, u := range readSources(t, "../..").uses {
		if !u.fault || !c.Has(u.key) {
			continue
		}
		for _, form := range c.texts[u.key].forms {
			first, last := form[0], form[len(form)-1]
			if r, _ := utf8.DecodeRuneInString(first.plain); first.arg == "" && unicode.IsLower(r) {
				t.Errorf("%q does not begin with a capital", u.key)
			}
			if last.arg != "" || !strings.HasSuffix(last.plain, ".") && !strings.HasSuffix(last.plain, "?") {
				t.Errorf("%q does not end as a sentence does", u.key)
			}
			for _, part := range form {
				if strings.Contains(part.plain, "!") {
					t.Errorf("%q exclaims", u.key)
				}
			}
		}
	}
}

// mention tells whether a key stands in the sources, whole or by its beginning.
func (s *sources) mention(key string) bool {
	if s.literals[key] {
		return true
	}
	for _, p := range s.prefixes {
		if strings.HasPrefix(key, p) {
			return true
		}
	}
	return false
}

func readSources(t *testing.T, root string) *sources {
	t.Helper()
	found := &sources{literals: map[string]bool{}}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (strings.HasPrefix(entry.Name(), ".") && entry.Name() != ".." && name != root ||
			entry.Name() == "testdata" || entry.Name() == "node_modules"):
			return filepath.SkipDir
		case strings.HasSuffix(name, "_test.go"):
			return nil
		case strings.HasSuffix(name, ".go"):
			return found.readGo(name)
		case strings.HasSuffix(name, ".html") && filepath.Base(filepath.Dir(name)) == "templates":
			return found.readPage(name)
		case strings.HasSuffix(name, ".csv") && strings.Contains(name, string(filepath.Separator)+"data"+string(filepath.Separator)):
			return found.readData(name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// readData takes every cell of a data file that looks like a key as a use.
func (s *sources) readData(name string) error {
	raw, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	for _, cell := range strings.FieldsFunc(string(raw), func(r rune) bool { return strings.ContainsRune(",;\n\r\" ", r) }) {
		if keyLike.MatchString(cell) {
			s.literals[cell] = true
		}
	}
	return nil
}

// inPage finds the keys a page's template names, and the function they are given
// to when it is the one that puts a key into words.
var inPage = regexp.MustCompile("(\\bt )?\"([a-z][a-z0-9_]*(?:\\.[a-z0-9_]+)+[._]?)\"")

// readPage takes every key in a page's template as a use.
func (s *sources) readPage(name string) error {
	raw, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	for _, m := range inPage.FindAllStringSubmatch(string(raw), -1) {
		key := m[2]
		s.literals[key] = true
		switch {
		case strings.HasSuffix(key, "_") || strings.HasSuffix(key, "."):
			s.prefixes = append(s.prefixes, key)
		case m[1] != "":
			s.uses = append(s.uses, use{key: key, where: name})
		}
	}
	return nil
}

func (s *sources) readGo(name string) error {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, nil, parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			s.readLiteral(n)
		case *ast.CallExpr:
			s.readCall(n, set.Position(n.Pos()).String(), file.Name.Name)
		}
		return true
	})
	return nil
}

func (s *sources) readLiteral(n *ast.BasicLit) {
	if n.Kind != token.STRING {
		return
	}
	v, err := strconv.Unquote(n.Value)
	if err != nil {
		return
	}
	s.literals[v] = true
	if len(v) > 3 && strings.Contains(v, ".") &&
		(strings.HasSuffix(v, ".") || strings.HasSuffix(v, "_")) && keyLike.MatchString(strings.TrimRight(v, "._")+".x") {
		s.prefixes = append(s.prefixes, v)
	}
}

// readCall notes words.P(key, args) and fault.New(kind, key, args).
func (s *sources) readCall(n *ast.CallExpr, where, pkg string) {
	at := -1
	switch calledName(n, pkg) {
	case "words.P":
		at = 0
	case "fault.New":
		at = 1
	}
	if at < 0 || len(n.Args) < at+2 {
		return
	}
	key, ok := n.Args[at].(*ast.BasicLit)
	if !ok {
		return
	}
	v, err := strconv.Unquote(key.Value)
	if err != nil || strings.HasSuffix(v, ".") || strings.HasSuffix(v, "_") {
		return
	}
	s.uses = append(s.uses, use{key: v, args: argNames(n.Args[at+1]), where: where, fault: at == 1})
}

// calledName returns package.Function of a call, also from inside the package.
func calledName(n *ast.CallExpr, pkg string) string {
	switch f := n.Fun.(type) {
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok {
			return x.Name + "." + f.Sel.Name
		}
	case *ast.Ident:
		return pkg + "." + f.Name
	}
	return ""
}

// argNames returns the names given in a literal of arguments, none for nil, and
// a nil map when the arguments are made elsewhere.
func argNames(e ast.Expr) map[string]bool {
	if id, ok := e.(*ast.Ident); ok && id.Name == "nil" {
		return map[string]bool{}
	}
	literal, ok := e.(*ast.CompositeLit)
	if !ok {
		return nil
	}
	names := map[string]bool{}
	for _, element := range literal.Elts {
		pair, ok := element.(*ast.KeyValueExpr)
		if !ok {
			return nil
		}
		name, ok := pair.Key.(*ast.BasicLit)
		if !ok {
			return nil
		}
		v, err := strconv.Unquote(name.Value)
		if err != nil {
			return nil
		}
		names[v] = true
	}
	return names
}
