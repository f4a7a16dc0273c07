package report

import "strings"

// term is what somebody at home would have to look up, in all the forms in which
// the page may say it, and what it means in a few plain words.
type term struct {
	means string
	forms []string // in lower case
}

// terms lists them. The explanations are this project's own words.
func terms() []term {
	return []term{
		{"it never lets more amps through", []string{"current limit"}},
		{"it switches an empty battery off in time", []string{"low-voltage cutoff", "cutoff", "cutoffs"}},
		{"electronics that feed the motors", []string{"current-limiting controller", "speed control", "controllers", "controller", "chopper"}},
		{"the bare metal that touches inside a switch", []string{"pedal contacts", "plain contacts", "contacts"}},
		{"the amps rise slowly", []string{"soft start", "ramp"}},
		{"the part of the time that the power is on", []string{"duty"}},
		{"a motor's coil of wire", []string{"motor windings", "windings", "winding"}},
		{"the skin of a wire", []string{"insulation"}},
		{"melt together", []string{"weld"}},
		{"a flat plate of small soldered parts", []string{"circuit board", "boards", "board"}},
		{"it makes fewer volts", []string{"step-down converter", "converter"}},
		{"electronic switches", []string{"transistors"}},
		{"small parts that hold charge", []string{"capacitors", "capacitor"}},
		{"rows of cells side by side", []string{"strings"}},
		{"thousandths of an ohm", []string{"mohm"}},
		{"a wire size; a smaller number is thicker", []string{"awg"}},
		{"sealed lead-acid", []string{"agm"}},
		{"a kind of lithium battery", []string{"lifepo4"}},
		{"an older kind of battery", []string{"nimh"}},
		{"alternating or direct, as printed on it", []string{"ac or dc"}},
		{"which wire is plus", []string{"polarity"}},
		{"the amps with the wheels held", []string{"stall current"}},
		{"it reads the amps in a wire from outside", []string{"clamp meter"}},
		{"a joint pressed on with pliers", []string{"crimp"}},
		{"a fuse that closes again by itself", []string{"auto-reset breaker"}},
		{"what it draws switched off", []string{"standby current"}},
		{"how much it holds the amps back", []string{"resistance"}},
		{"rust of lead that eats the charge", []string{"sulphation"}},
		{"one of the small batteries that it is made of", []string{"weakest cell", "weak cell"}},
		{"the socket for a charger's plug", []string{"jack"}},
	}
}

// explainWords puts what a term means behind its first use below the title.
// What stands in the first lines alone is explained in front of the safety
// lines.
func explainWords(doc *document) {
	var texts []*string
	doc.each(func(text *string) { texts = append(texts, text) })
	only := explained(texts, doc.lead)
	if s := wordList(only); !s.empty() {
		at := max(0, len(doc.sections)-1)
		doc.sections = append(doc.sections[:at:at], append([]section{s}, doc.sections[at:]...)...)
	}
}

// usedWords says what all hard words of a document mean, in front of it: sentences
// that hold keys and figures have no room for that.
func usedWords(doc *document) section {
	var texts, low []string
	add := func(text *string) { texts, low = append(texts, *text), append(low, strings.ToLower(*text)) }
	for i := range doc.lead {
		add(&doc.lead[i].value)
	}
	doc.each(add)
	var used []string
	for _, t := range terms() {
		if i, _ := t.first(low); i >= 0 {
			start, end := t.in(low[i])
			used = append(used, texts[i][start:end]+" = "+t.means)
		}
	}
	return wordList(used)
}

// wordList is the section of terms with their meaning; empty without any.
func wordList(list []string) section {
	s := section{title: "Words"}
	if len(list) > 0 {
		s.text = []string{capital(strings.Join(list, "; ")) + "."}
	}
	return s
}

// explained puts what a term means behind its first use in texts, unless that says it
// itself, and returns the terms with their meaning that stand in the lead alone, which has no room for it.
func explained(texts []*string, lead []fact) (only []string) {
	low := make([]string, len(texts)) // the same in lower case, made once
	for i, text := range texts {
		low[i] = strings.ToLower(*text)
	}
	for _, t := range terms() {
		if i, end := t.first(low); i >= 0 {
			if strings.Contains(low[i][:end], t.means) { // it says so itself
				continue
			}
			for _, own := range [...]string{"'s", "'"} { // of one, or of several
				if strings.HasPrefix(low[i][end:], own) {
					end += len(own)
					break
				}
			}
			*texts[i] = explainedAt(*texts[i], end, t.means)
			low[i] = strings.ToLower(*texts[i])
			continue
		}
		for _, f := range lead {
			if start, end := t.in(strings.ToLower(f.value)); end > 0 {
				only = append(only, f.value[start:end]+" = "+t.means)
				break
			}
		}
	}
	return only
}

// first finds the first text that uses a term, and where that use ends; -1 where
// none does.
func (t *term) first(low []string) (i, end int) {
	for i, text := range low {
		if _, end := t.in(text); end > 0 {
			return i, end
		}
	}
	return -1, 0
}

// in finds the first use of a term in a text in lower case; the end is 0 where
// there is none.
func (t *term) in(low string) (start, end int) {
	for _, form := range t.forms {
		if at := wordAt(low, form); at >= 0 && (end == 0 || at < start || at == start && at+len(form) > end) {
			start, end = at, at+len(form)
		}
	}
	return start, end
}

// explainedAt puts an explanation behind a word: in brackets, or within
// brackets behind a sign of equality.
func explainedAt(text string, at int, means string) string {
	if strings.Count(text[:at], "(") > strings.Count(text[:at], ")") {
		if strings.HasPrefix(text[at:], " ") {
			means += ","
		}
		return text[:at] + " = " + means + text[at:]
	}
	return text[:at] + " (" + means + ")" + text[at:]
}

// wordAt finds a word that stands by itself in a text, both in lower case; -1
// where it does not. A table of the setup file, as in [controller], is a name
// and no word.
func wordAt(low, word string) int {
	for from := 0; ; {
		at := strings.Index(low[from:], word)
		if at < 0 {
			return -1
		}
		at += from
		end := at + len(word)
		if (at == 0 || !isLetter(low[at-1]) && low[at-1] != '[') && (end == len(low) || !isLetter(low[end])) {
			return at
		}
		from = end
	}
}

// isLetter reports whether a character is part of a word.
func isLetter(c byte) bool {
	return 'a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '_'
}
