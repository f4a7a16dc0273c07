package quantity

import (
	"strings"
	"unicode/utf8"

	"example.org/packcheck/internal/later"
)

// longest is the longest text read as a quantity, in bytes; nobody writes one
// that long, and the bound keeps odd input cheap.
const longest = 120

// sort of a token
type sort int

const (
	number sort = iota // digits with marks
	word               // a unit, or "to", "about", "likely"
	dash               // minus sign or "to"
	slash
	colon
	comma // a comma that is not a decimal mark
	plus
	plusMinus // "+-" or its sign
)

type token struct {
	sort sort
	text string
}

// plain maps the signs that people paste onto the ASCII this package reads.
var plain = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
	return strings.NewReplacer(
		"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
		"\u00b5", "u", "\u03bc", "u", // both micro signs
		"\u03a9", "Ohm", "\u2126", "Ohm", // both Ohm signs
		"\u00b2", "2", "\u00b7", "*", "\u22c5", "*",
		"\u2013", "-", "\u2014", "-", "\u2212", "-", "\u2010", "-", "\u2011", "-",
		"\u00b0", "deg", "\u2103", "degC", "\u2109", "degF",
		"\u2033", `"`, "\u201d", `"`, "\u201c", `"`, "\u2032", "'", "\u2019", "'",
		"\u00bd", " 1/2", "\u00bc", " 1/4", "\u00be", " 3/4",
		"\u2248", "~", "\u00b1", "+-", "\u2026", "..",
	)
}}

// scan splits a text into tokens. It returns nil when the text holds something
// that no quantity has in it.
func scan(text string) []token {
	if len(text) > longest || !utf8.ValidString(text) {
		return nil
	}
	s := plain.Get().Replace(text)
	var out []token
	for i := 0; i < len(s); {
		c := s[i]
		n := 1
		switch {
		case c == ' ':
			i++
			continue
		case digit(c) || mark(c) && i+1 < len(s) && digit(s[i+1]) && !afterDigit(s, i):
			n = numberLen(s[i:])
			out = append(out, token{number, s[i : i+n]})
		case c == '.' && strings.HasPrefix(s[i:], ".."):
			n = len(s[i:]) - len(strings.TrimLeft(s[i:], "."))
			out = append(out, token{dash, "-"})
		case c == '-':
			out = append(out, token{dash, "-"})
		case strings.HasPrefix(s[i:], "+-"), strings.HasPrefix(s[i:], "+/-"):
			n = strings.IndexByte(s[i:], '-') + 1
			out = append(out, token{plusMinus, "+-"})
		case c == '+':
			out = append(out, token{plus, "+"})
		case c == '/':
			out = append(out, token{slash, "/"})
		case c == ':':
			out = append(out, token{colon, ":"})
		case c == ',':
			out = append(out, token{comma, ","})
		case c == '~':
			out = append(out, token{word, "about"})
		case letter(c) || strings.IndexByte(`%"'#`, c) >= 0:
			n = wordLen(s[i:])
			out = append(out, token{word, s[i : i+n]})
		default:
			return nil
		}
		i += n
	}
	return out
}

func digit(c byte) bool  { return '0' <= c && c <= '9' }
func letter(c byte) bool { return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' }
func mark(c byte) bool   { return c == '.' || c == ',' }

// afterDigit reports whether the byte before i is a digit, so that ",5" counts
// as a number only at the start of one.
func afterDigit(s string, i int) bool { return i > 0 && digit(s[i-1]) }

// numberLen returns how many bytes at the start of s are one number: digits
// with points and commas between them, thousands parted by single blanks, and
// a power of ten.
func numberLen(s string) int {
	i := 0
	for i < len(s) {
		switch {
		case digit(s[i]):
			i++
			continue
		case mark(s[i]) && i+1 < len(s) && digit(s[i+1]):
			i += 2
			continue
		case s[i] == ' ' && thousands(s, i):
			i += 4
			continue
		}
		break
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '-' || s[j] == '+') {
			j++
		}
		if j < len(s) && digit(s[j]) {
			for j < len(s) && digit(s[j]) {
				j++
			}
			return j
		}
	}
	return i
}

// thousands reports whether a blank at i parts a group of exactly three digits
// from the one to three digits, or the groups, before it ("15 000").
func thousands(s string, i int) bool {
	start := i
	for start > 0 && digit(s[start-1]) {
		start--
	}
	first := start == 0
	if i-start < 1 || i-start > 3 || first && s[start] == '0' || !first && i-start != 3 {
		return false
	}
	if !first && s[start-1] != ' ' {
		return false
	}
	for j := i + 1; j < i+4; j++ {
		if j >= len(s) || !digit(s[j]) {
			return false
		}
	}
	return i+4 == len(s) || !digit(s[i+4]) && s[i+4] != '/'
}

// wordLen returns how many bytes at the start of s are one word. A 2 belongs to
// it where it means a square ("mm2", "kgm^2"), a slash where a letter follows.
func wordLen(s string) int {
	if s[0] == '"' || s[0] == '%' || s[0] == '#' {
		return 1
	}
	i := 1
	for ; i < len(s); i++ {
		c := s[i]
		switch {
		case letter(c), c == '*', c == '^', c == '\'' && s[i-1] == '\'':
			continue
		case c == '.' && (i+1 == len(s) || !digit(s[i+1]) && s[i+1] != '.'):
			continue
		case c == '/' && i+1 < len(s) && letter(s[i+1]):
			continue
		case c == '2' && strings.IndexByte("mMnN^", s[i-1]) >= 0 && (i+1 == len(s) || !digit(s[i+1]) && !mark(s[i+1])):
			continue
		}
		break
	}
	return i
}
