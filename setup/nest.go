package setup

import "strings"

// tooDeep returns the first line on which brackets nest deeper, or a dotted
// name is longer, than any setup needs, 0 when none is. The TOML decoder
// recurses into brackets and copies dotted names again and again; a file made
// to harm would exhaust it, and running out of stack cannot be caught. What
// stands in strings and comments does not count.
func tooDeep(text string) int {
	depth, dots, line := 0, 0, 1
	for i := 0; i < len(text); {
		switch c := text[i]; c {
		case '"', '\'':
			n := stringLen(text[i:])
			line += strings.Count(text[i:i+n], "\n")
			i += n
			continue
		case '#':
			if n := strings.IndexByte(text[i:], '\n'); n >= 0 {
				i += n
			} else {
				i = len(text)
			}
			continue
		case '\n':
			line++
			dots = 0
		case '.':
			dots++
		case ',':
			dots = 0
		case '[', '{':
			depth++
			dots = 0
		case ']', '}':
			depth = max(depth-1, 0)
		}
		if depth > maxNest || dots > maxNest {
			return line
		}
		i++
	}
	return 0
}

// stringLen returns the length of the TOML string at the start of s, quotes
// included. A string of one line that is left open ends with its line.
func stringLen(s string) int {
	quote := s[:1]
	if strings.HasPrefix(s, quote+quote+quote) {
		end := quote + quote + quote
		for i := 3; i < len(s); i++ {
			switch {
			case s[i] == '\\' && quote == `"`:
				i++
			case strings.HasPrefix(s[i:], end):
				i += 3
				for i < len(s) && s[i] == quote[0] {
					i++ // up to two more quotes belong to the string
				}
				return i
			}
		}
		return len(s)
	}
	for i := 1; i < len(s); i++ {
		switch {
		case s[i] == '\n':
			return i
		case s[i] == '\\' && quote == `"`:
			i++
		case s[i] == quote[0]:
			return i + 1
		}
	}
	return len(s)
}
