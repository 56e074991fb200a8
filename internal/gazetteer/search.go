package gazetteer

import (
	"sort"
	"strings"

	"garner/internal/near"
)

// How well a name answers a query, best first.
const (
	whole      = iota // the name itself
	firstWord         // its first word, or words
	beginning         // it begins so
	wordBegins        // one of its words begins so
	within            // it holds this
	everyWord         // every word of the query begins a word of name or country
	ofCountry         // the country is called so
	no
)

// longestQuery is more than the longest name of a place [bytes].
const longestQuery = 80

// Search returns up to n places for a query such as "Valentia", "perth,
// australia" or "uruguay", best first: by name, whatever the case and the
// accents, then by country, and when nothing answers by the nearest spelling.
func Search(query string, n int) []Match {
	if len(query) > longestQuery {
		return nil
	}
	a := read()
	for _, q := range foldings(query) {
		head, country := divided(q, query)
		if own, known := a.country[country]; known {
			country = own
		}
		if own, known := a.country[head]; known {
			head = own
		}
		if found := a.search(head, country, n); len(found) > 0 {
			return found
		}
	}
	return a.spelled(fold(query), n)
}

// divided parts "name, country" at the last comma, where there is one.
func divided(folded, query string) (name, country string) {
	at := strings.LastIndexByte(query, ',')
	if at < 0 {
		return folded, ""
	}
	country = fold(query[at+1:])
	return strings.TrimSpace(strings.TrimSuffix(folded, country)), country
}

// hit is a place that answers, by how well.
type hit struct {
	place, rank int
	called      string
}

func (a *atlas) search(name, country string, n int) []Match {
	if name == "" || n <= 0 {
		return nil
	}
	best := map[int]hit{}
	for i := range a.names {
		if r := a.names[i].rank(name, country); r < no {
			best[i] = hit{place: i, rank: r}
		}
	}
	for _, l := range a.aliases {
		r := l.folded.rank(name, country)
		if old, known := best[l.place]; r < ofCountry && (!known || r < old.rank) {
			best[l.place] = hit{l.place, r, l.name}
		}
	}
	hits := make([]hit, 0, len(best))
	for _, h := range best {
		hits = append(hits, h)
	}
	return a.inOrder(hits, n)
}

// inOrder sorts hits by rank, then short names first, then by name and id.
func (a *atlas) inOrder(hits []hit, n int) []Match {
	sort.Slice(hits, func(i, k int) bool {
		x, y := hits[i], hits[k]
		p, q := &a.places[x.place], &a.places[y.place]
		switch {
		case x.rank != y.rank:
			return x.rank < y.rank
		case x.rank != ofCountry && len(p.Name) != len(q.Name):
			return len(p.Name) < len(q.Name)
		case p.Name != q.Name:
			return p.Name < q.Name
		}
		return p.ID < q.ID
	})
	out := make([]Match, 0, min(n, len(hits)))
	for _, h := range hits[:min(n, len(hits))] {
		out = append(out, Match{Place: a.places[h.place], Called: h.called})
	}
	return out
}

// rank tells how well names answer a query, no when they do not.
func (m *names) rank(name, country string) int {
	if country != "" && !m.inCountry(country) {
		return no
	}
	switch {
	case m.name == name:
		return whole
	case strings.HasPrefix(m.name, name+" "):
		return firstWord
	case strings.HasPrefix(m.name, name):
		return beginning
	case strings.Contains(" "+m.name, " "+name):
		return wordBegins
	case len(name) > 2 && strings.Contains(m.name, name):
		return within
	case m.everyWord(name):
		return everyWord
	case len(name) > 2 && strings.HasPrefix(m.country, name):
		return ofCountry
	}
	return no
}

// inCountry also knows the state or province that ends many names.
func (m *names) inCountry(country string) bool {
	if strings.HasPrefix(m.country, country) {
		return true
	}
	return len(m.words) > 1 && m.words[len(m.words)-1] == country
}

func (m *names) everyWord(query string) bool {
	wanted := strings.Fields(query)
	if len(wanted) < 2 {
		return false
	}
	all := " " + m.name + " " + m.country
	for _, w := range wanted {
		if !strings.Contains(all, " "+w) {
			return false
		}
	}
	return true
}

// spelled finds the places whose names, or long words of names, are spelt most
// like a query.
func (a *atlas) spelled(query string, n int) []Match {
	byName := map[string][]hit{}
	var all []string
	add := func(name, called string, place int) {
		if byName[name] == nil {
			all = append(all, name)
		}
		byName[name] = append(byName[name], hit{place: place, called: called})
	}
	for i := range a.names {
		add(a.names[i].name, "", i)
		for _, w := range a.names[i].words {
			if len(w) > 4 && w != a.names[i].name {
				add(w, "", i)
			}
		}
	}
	for _, l := range a.aliases {
		add(l.folded.name, l.name, l.place)
	}
	var out []Match
	taken := map[int]bool{}
	for _, name := range near.Names(query, all, n) {
		for _, h := range byName[name] {
			if !taken[h.place] && len(out) < n {
				taken[h.place] = true
				out = append(out, Match{Place: a.places[h.place], Called: h.called, Spelled: true})
			}
		}
	}
	return out
}
