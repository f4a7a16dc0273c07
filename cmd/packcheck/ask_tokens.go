package main

import (
	"slices"
	"strings"

	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// tokens joins what the shell parted: a number and its unit, a gauge, a word of
// several words, and the volts and ampere-hours of a label.
func (v *verb) tokens(args []string) []string {
	plain := make([]string, len(args))
	for i, arg := range args { // quotes that came along from a word processor; 10" is ten inches
		plain[i] = strings.TrimSpace(strings.TrimRight(strings.Trim(arg, "\u201c\u201d\u201e\u2018\u2019"), ",;?!"))
	}
	args = v.named(perHour(spans(plain)))
	if v.name == labelVerb {
		return v.wholeLabel(args)
	}
	var out []string
	for i := 0; i < len(args); i++ {
		text := args[i]
		if n, phrase := v.phrase(args[i:]); n > 1 {
			out = append(out, phrase)
			i += n - 1
			continue
		}
		switch next := at(args, i+1); {
		case text == "", v.idle(text):
			continue
		case years(text) && strings.EqualFold(next, "old"):
			text += " " + next
			i++
		case endsInNumber(text) && hasDigit(text) && yearWord(next) && strings.EqualFold(at(args, i+2), "old"):
			text += " " + next + " old"
			i += 2
		case endsInNumber(text) && ampWord(next) && hourWord(at(args, i+2)):
			text += " Ah"
			i += 2
		case ampsOnly(text) && hourWord(next):
			text = strings.TrimRight(text, "ampsAMPSer ") + " Ah"
			i++
		case endsInNumber(text) && next != "" && !hasDigit(next) && !strings.Contains(next, "=") && !v.knows(next) && (next == "a" || next == "A" || next == "in" || !v.idle(next)):
			text += " " + next
			i++
		case isGaugeWord(text) && bare(next):
			text += " " + next
			i++
		}
		if beside, speed := quantity.BesideVolts(text); beside != "" && v.asks(quantity.RotationalSpeed) {
			if _, _, err := quantity.Parse(quantity.RotationalSpeed, speed); err == nil { // else it is no motor's label
				out = append(out, beside)
				text = speed
			}
		}
		out = append(out, text)
	}
	if v.has(labelSlot) {
		out = labels(out, quantity.Charge, quantity.Energy)
	}
	if v.has(chargerSlot) {
		out = chargers(labels(out, quantity.Current))
	}
	return out
}

// spans joins the parts of a range: "20", "to", "25" and "20 A", "to", "25 A".
func spans(args []string) []string {
	var out []string
	for i := 0; i < len(args); i++ {
		text := args[i]
		for strings.EqualFold(at(args, i+1), "to") && hasDigit(text) && hasDigit(at(args, i+2)) {
			text += " to " + args[i+2]
			i += 2
		}
		out = append(out, text)
	}
	return out
}

// phrase finds words of several words that were typed without quotes.
func (v *verb) phrase(args []string) (int, string) {
	for n := min(len(args), 4); n > 1; n-- {
		if text := strings.Join(args[:n], " "); v.knows(text) {
			return n, text
		}
	}
	return 0, ""
}

// knows reports whether a text is one of the words of the question.
func (v *verb) knows(text string) bool {
	for i := range v.slots {
		if v.slots[i].sort == word {
			if _, err := v.slots[i].parseWord(text); err == nil {
				return true
			}
		}
	}
	return false
}

// has reports whether a question has a slot of a sort.
func (v *verb) has(sort slotSort) bool {
	return slices.ContainsFunc(v.slots, func(s slot) bool { return s.sort == sort })
}

// labels joins volts and what stands behind them on a label: "12 V", "7 Ah" and
// "20 V", "max", "5 Ah"; of a charger "14.7 V", "1.5 A".
func labels(tokens []string, behind ...quantity.Kind) []string {
	var out []string
	for i := 0; i < len(tokens); i++ {
		text, next, j := tokens[i], at(tokens, i+1), i+1
		if strings.EqualFold(next, "max") {
			text, next, j = text+" max", at(tokens, i+2), i+2
		}
		kind, hasKind := "", slices.Contains(setup.Chemistries(), fold(next))
		if hasKind { // "12.8 V LiFePO4 10 Ah"
			kind, next, j = next, at(tokens, j+1), j+1
		}
		is := func(kind quantity.Kind, s string) bool {
			_, _, err := quantity.Parse(kind, s)
			return err == nil
		}
		volts := is(quantity.Voltage, tokens[i]) || strings.HasSuffix(strings.ToLower(tokens[i]), "v max") && hasDigit(tokens[i])
		if volts && slices.ContainsFunc(behind, func(kind quantity.Kind) bool { return is(kind, next) }) {
			if text += " " + next; hasKind {
				text += " " + kind
			}
			out = append(out, text)
			i = j
			continue
		}
		if slices.ContainsFunc(behind, func(kind quantity.Kind) bool { return kind == quantity.Charge && is(kind, tokens[i]) }) && is(quantity.Voltage, at(tokens, i+1)) {
			out = append(out, tokens[i+1]+" "+tokens[i]) // "5000 mAh 20 V"
			i++
			continue
		}
		if text != tokens[i] && volts { // "20 V", "max" and no charge behind
			out = append(out, text)
			i++
			continue
		}
		out = append(out, tokens[i])
	}
	return out
}

func at(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return ""
}

// bare reports whether a text is a number without a unit.
func bare(text string) bool {
	return text != "" && strings.Trim(text, "0123456789.,/-+ ") == "" && hasDigit(text)
}

// endsInNumber reports whether a unit may follow: "9", "air=30", "20 to 25".
func endsInNumber(text string) bool {
	_, rest, named := strings.Cut(text, "=")
	if named {
		text = rest
	}
	return bare(strings.ReplaceAll(text, " to ", " "))
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

func isGaugeWord(s string) bool {
	switch strings.ToLower(s) {
	case "awg", "gauge", "ga", "#":
		return true
	}
	return false
}
