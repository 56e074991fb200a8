package programme

import (
	"fmt"
	"strconv"
	"strings"
)

// field cuts a line of an MPS file at fixed columns, counted from 1.
func field(line string, from, to int) string {
	if len(line) < from {
		return ""
	}
	return strings.TrimSpace(line[from-1 : min(to, len(line))])
}

// readMPS reads the format with fixed columns, by the columns alone.
func readMPS(text string) (*Linear, error) {
	l, rows, columns := &Linear{}, map[string]int{}, map[string]int{}
	section, whole := "", false
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if line[0] != ' ' {
			section = strings.Fields(line)[0]
			continue
		}
		code, first, second := field(line, 2, 3), field(line, 5, 12), field(line, 15, 22)
		number, err := 0.0, error(nil)
		if section != "ROWS" && second != "'MARKER'" {
			if number, err = strconv.ParseFloat(field(line, 25, 36), 64); err != nil {
				return nil, fmt.Errorf("%q: %w", line, err)
			}
		}
		switch section {
		case "ROWS":
			if code != "N" {
				rows[first] = len(l.Rows)
				l.Rows = append(l.Rows, Row{Name: first, Sense: Sense(code[0])})
			}
		case "COLUMNS":
			if second == "'MARKER'" {
				whole = field(line, 40, 47) == "'INTORG'"
				continue
			}
			if _, known := columns[first]; !known {
				columns[first] = len(l.Columns)
				l.Columns = append(l.Columns, Column{Name: first, Upper: Unbounded, Integer: whole})
			}
			c := &l.Columns[columns[first]]
			if second == "COST" {
				c.Cost = number
				continue
			}
			row, known := rows[second]
			if !known {
				return nil, fmt.Errorf("%q: no such row", line)
			}
			c.Entries = append(c.Entries, Entry{row, number})
		case "RHS":
			l.Rows[rows[second]].Right = number
		case "BOUNDS":
			l.Columns[columns[second]].Upper = number
		}
	}
	if section != "ENDATA" {
		return nil, fmt.Errorf("ends in %s", section)
	}
	return l, nil
}

// readLP reads as much of the LP format as is written.
func readLP(text string) (*Linear, error) {
	l, columns := &Linear{}, map[string]int{}
	section := ""
	words := []string{}
	for _, line := range strings.Split(text, "\n") {
		if !strings.HasPrefix(line, "\\") {
			words = append(words, strings.Fields(line)...)
		}
	}
	sign, factor := 1.0, 0.0
	for i := 0; i < len(words); i++ {
		word := words[i]
		switch {
		case word == "Minimize" || word == "Bounds" || word == "Generals" || word == "End":
			section = word
			continue
		case word == "Subject":
			section, i = word, i+1
			continue
		}
		switch section {
		case "Minimize", "Subject":
			switch number, err := strconv.ParseFloat(word, 64); {
			case strings.HasSuffix(word, ":"):
				if section == "Subject" {
					l.Rows = append(l.Rows, Row{Name: strings.TrimSuffix(word, ":")})
				}
			case word == "+":
				sign = 1
			case word == "-":
				sign = -1
			case word == "<=" || word == "=":
				sense := AtMost
				if word == "=" {
					sense = Equally
				}
				right, err := strconv.ParseFloat(words[i+1], 64)
				if err != nil {
					return nil, err
				}
				l.Rows[len(l.Rows)-1].Sense, l.Rows[len(l.Rows)-1].Right = sense, right
				i++
			case err == nil:
				factor = sign * number
			case section == "Minimize":
				columns[word] = len(l.Columns)
				l.Columns = append(l.Columns, Column{Name: word, Cost: factor, Upper: Unbounded})
			default:
				c := &l.Columns[columns[word]]
				c.Entries = append(c.Entries, Entry{len(l.Rows) - 1, factor})
			}
		case "Bounds":
			if i+4 >= len(words) || word != "0" || words[i+1] != "<=" || words[i+3] != "<=" {
				return nil, fmt.Errorf("bound at %q", word)
			}
			upper, err := strconv.ParseFloat(words[i+4], 64)
			if err != nil {
				return nil, err
			}
			l.Columns[columns[words[i+2]]].Upper = upper
			i += 4
		case "Generals":
			l.Columns[columns[word]].Integer = true
		}
	}
	if section != "End" {
		return nil, fmt.Errorf("ends in %s", section)
	}
	return l, nil
}
