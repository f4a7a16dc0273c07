package report

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// clean makes any string fit to print: one line of printable ASCII. White
// space of every kind becomes single spaces, letters and signs with a common
// ASCII spelling get it, everything else becomes a question mark. Control
// characters go: a terminal would obey them.
//
// An at sign before a letter is spelled out, because forums turn it into a
// call to the person of that name.
func clean(s string) string {
	var b strings.Builder
	b.Grow(len(s))
	space := false // a space is due before the next character
	for _, r := range s {
		if unicode.IsSpace(r) {
			space = b.Len() > 0
			continue
		}
		out := spell(r)
		if out == "" {
			continue
		}
		if space {
			b.WriteByte(' ')
			space = false
		}
		b.WriteString(out)
	}
	return spellOutCalls(b.String())
}

// spell returns the ASCII spelling of one character, "?" where there is none
// and "" for what has no shape of its own.
func spell(r rune) string {
	switch {
	case r >= ' ' && r <= '~':
		return string(r)
	case r == utf8.RuneError:
		return "?"
	case unicode.Is(unicode.Cc, r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Mn, r):
		return ""
	}
	for _, group := range spellings {
		if strings.ContainsRune(group.from, r) {
			return group.to
		}
	}
	return "?"
}

// spellOutCalls writes "(at)" for every at sign that a letter follows.
func spellOutCalls(s string) string {
	if !strings.Contains(s, "@") {
		return s
	}
	var b strings.Builder
	for i := range len(s) {
		if s[i] == '@' && i+1 < len(s) && unicode.IsLetter(rune(s[i+1])) {
			b.WriteString("(at)")
			continue
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

// spellings lists what people type in titles: Latin letters with marks, and
// the signs that phones and word processors put in by themselves.
var spellings = [...]struct{ to, from string }{
	{"A", "ÀÁÂÃÅĀĂĄ"},
	{"a", "àáâãåāăą"},
	{"Ae", "ÄÆ"},
	{"ae", "äæ"},
	{"C", "ÇĆĈĊČ"},
	{"c", "çćĉċč"},
	{"D", "ÐĎĐ"},
	{"d", "ðďđ"},
	{"E", "ÈÉÊËĒĔĖĘĚ"},
	{"e", "èéêëēĕėęě"},
	{"G", "ĜĞĠĢ"},
	{"g", "ĝğġģ"},
	{"I", "ÌÍÎÏĨĪĬĮİ"},
	{"i", "ìíîïĩīĭįı"},
	{"L", "ĹĻĽŁ"},
	{"l", "ĺļľł"},
	{"N", "ÑŃŅŇ"},
	{"n", "ñńņň"},
	{"O", "ÒÓÔÕŌŎŐ"},
	{"o", "òóôõōŏő"},
	{"Oe", "ÖØŒ"},
	{"oe", "öøœ"},
	{"R", "ŔŖŘ"},
	{"r", "ŕŗř"},
	{"S", "ŚŜŞŠȘ"},
	{"s", "śŝşšș"},
	{"ss", "ß"},
	{"T", "ŢŤȚ"},
	{"t", "ţťț"},
	{"Th", "Þ"},
	{"th", "þ"},
	{"U", "ÙÚÛŨŪŬŮŰŲ"},
	{"u", "ùúûũūŭůűų"},
	{"Ue", "Ü"},
	{"ue", "ü"},
	{"Y", "ÝŶŸ"},
	{"y", "ýŷÿ"},
	{"Z", "ŹŻŽ"},
	{"z", "źżž"},
	{"'", "‘’‚‛′´"},
	{"\"", "“”„‟″«»"},
	{"-", "‐‑‒–—―−"},
	{"...", "…"},
	{"x", "×"},
	{"/", "÷⁄"},
	{"deg ", "°"},
	{"u", "µμ"},
	{"Ohm", "Ω\u2126"},
	{"+/-", "±"},
	{"<=", "≤"},
	{">=", "≥"},
	{"~", "≈"},
	{"->", "→"},
	{"*", "·•"},
	{"1/2", "½"},
	{"1/4", "¼"},
	{"3/4", "¾"},
	{"2", "²"},
	{"3", "³"},
	{"EUR", "€"},
	{"GBP", "£"},
}
