// Package nesting looks over a TOML text before it is decoded, for what would
// keep the decoder busy for minutes or run it out of stack.
//
// The decoder that this module uses recurses into brackets and takes time that
// grows faster than the square of the depth of nested values and of the parts
// of dotted keys; running out of stack cannot be caught. For most uses call
// [Check] with the bounds that no honest file of its kind comes near. [Unreadable] says
// where the decoder stopped after all.
package nesting

import (
	"errors"
	"fmt"
	"strings"

	"github.com/BurntSushi/toml"
)

// Unreadable says in which line (1-based; 0 where that is not known) the decoder met what
// it could not read, and what it has to say.
func Unreadable(err error) (line int, message string) {
	var pe toml.ParseError
	if !errors.As(err, &pe) {
		return 0, err.Error()
	}
	line, message = pe.Position.Line, pe.Message
	if message == "" {
		message = err.Error()
	}
	// A line end where none may be is noticed on the line after.
	if line > 1 && strings.Contains(message, "end table name, but got '\\n'") {
		line--
	}
	return line, message
}

// Bounds are the most that a text may have.
type Bounds struct {
	Depth    int // of brackets within one another
	KeyParts int // of one dotted key
	Values   int // separators of values; 0 = not counted
}

// Check returns what is too much and in which line (1-based), "" when nothing
// is. What stands in strings and comments does not count.
func Check(text string, most Bounds) (problem string, line int) {
	line = 1
	depth, dots, values := 0, 0, 0
	for i := 0; i < len(text); {
		switch c := text[i]; c {
		case '\n':
			line, dots = line+1, 0
		case '#':
			for i+1 < len(text) && text[i+1] != '\n' {
				i++
			}
		case '"', '\'':
			n := stringLen(text[i:])
			line += strings.Count(text[i:i+n], "\n")
			i += n
			continue
		case '[', '{':
			depth, dots = depth+1, 0
		case ']', '}':
			depth, dots = max(0, depth-1), 0
		case '.':
			dots++
		case ',', '=':
			dots = 0
			values++
		}
		switch {
		case depth > most.Depth:
			return fmt.Sprintf("values are nested more than %d deep", most.Depth), line
		case dots >= most.KeyParts:
			return fmt.Sprintf("a key has more than %d parts", most.KeyParts), line
		case most.Values > 0 && values > most.Values:
			return fmt.Sprintf("there are more than %d values", most.Values), line
		}
		i++
	}
	return "", 0
}

// stringLen returns the length of the TOML string at the start of s, quotes
// included. A string of one line that is left open ends with its line.
func stringLen(s string) int {
	quote := s[:1]
	end := strings.Repeat(quote, 3)
	long := strings.HasPrefix(s, end)
	i := 1
	if long {
		i = 3
	}
	for ; i < len(s); i++ {
		switch {
		case s[i] == '\\' && quote == `"`:
			i++
		case s[i] == '\n' && !long:
			return i
		case s[i] == quote[0] && !long:
			return i + 1
		case long && strings.HasPrefix(s[i:], end):
			i += 3
			for i < len(s) && s[i] == quote[0] {
				i++ // up to two more quotes belong to the string
			}
			return i
		}
	}
	return len(s)
}
