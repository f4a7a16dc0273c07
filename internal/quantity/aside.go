package quantity

import "strings"

// unquoted takes off the quotes that a word processor or a shell left around a
// text.
func unquoted(text string) string {
	text = strings.TrimSpace(text)
	for _, pair := range [...][2]string{{"\u201c", "\u201d"}, {"\u201e", "\u201c"}, {"\u2018", "\u2019"}, {"\u00ab", "\u00bb"}, {`"`, `"`}} {
		if inner, is := strings.CutPrefix(text, pair[0]); is && strings.HasSuffix(inner, pair[1]) {
			return strings.TrimSpace(strings.TrimSuffix(inner, pair[1]))
		}
	}
	return text
}

// BesideVolts parts the volts that a motor's label has beside its speed, "12V
// 30000RPM" or "15000 rpm at 12 V", from the speed. The volts are empty where
// there are none.
func BesideVolts(text string) (volts, speed string) {
	is := func(s string) bool {
		_, _, err := Parse(Voltage, s)
		return err == nil
	}
	if i := strings.IndexAny(text, "Vv"); i > 0 && is(text[:i+1]) {
		return strings.TrimSpace(text[:i+1]), strings.Trim(text[i+1:], " ,/@")
	}
	for _, mark := range [...]string{" at ", "@", "/", ","} {
		if before, after, found := strings.Cut(text, mark); found && is(after) {
			return strings.TrimSpace(after), strings.TrimSpace(before)
		}
	}
	return "", text
}
