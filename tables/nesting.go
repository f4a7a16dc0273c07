package tables

import "fmt"

// The TOML library takes time that grows faster than the square of the depth
// of nested values and dotted keys, so that a small file can keep it busy for
// minutes. No honest table file comes near these bounds.
const (
	deepestNesting = 16
	longestKey     = 16 // parts of a dotted key
	mostKeys       = 20000
)

// tooDeep looks for such nesting before the file is parsed and returns what
// is wrong and in which line, or "" when nothing is.
func tooDeep(text string) (problem string, line int) {
	line = 1
	depth, dots, keys := 0, 0, 0
	for i := 0; i < len(text); i++ {
		switch c := text[i]; c {
		case '\n':
			line, dots = line+1, 0
		case '#':
			for i+1 < len(text) && text[i+1] != '\n' {
				i++
			}
		case '"', '\'':
			end, newlines := stringEnd(text, i)
			i, line = end, line+newlines
		case '[', '{':
			depth, dots = depth+1, 0
			if depth > deepestNesting {
				return fmt.Sprintf("values are nested more than %d deep", deepestNesting), line
			}
		case ']', '}':
			depth, dots = max(0, depth-1), 0
		case '.':
			if dots++; dots >= longestKey {
				return fmt.Sprintf("a key has more than %d parts", longestKey), line
			}
		case ',', '=':
			dots = 0
			if keys++; keys > mostKeys {
				return fmt.Sprintf("there are more than %d values", mostKeys), line
			}
		}
	}
	return "", 0
}

// stringEnd returns the index of the last byte of the string that begins at
// start, and how many line ends it spans. An open one ends with its line, or
// with the text if it may span lines.
func stringEnd(text string, start int) (end, newlines int) {
	quote := text[start]
	long := start+2 < len(text) && text[start+1] == quote && text[start+2] == quote
	i := start + 1
	if long {
		i = start + 3
	}
	for ; i < len(text); i++ {
		switch c := text[i]; {
		case c == '\\' && quote == '"':
			i++
			if i < len(text) && text[i] == '\n' {
				newlines++
			}
		case c == '\n' && !long:
			return i - 1, newlines
		case c == '\n':
			newlines++
		case c == quote && !long:
			return i, newlines
		case c == quote && i+2 < len(text) && text[i+1] == quote && text[i+2] == quote:
			return i + 2, newlines
		}
	}
	return len(text) - 1, newlines
}
