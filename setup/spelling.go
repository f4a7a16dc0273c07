package setup

import (
	"slices"
	"strings"

	"example.org/packcheck/chemistry"
)

// otherSpellings are words that people write for the chemistries and purposes of
// the lists, by what they stand for: the first of them that a list has. A loose
// one names a family only, and a label beside it may tell more.
var otherSpellings = [...]struct {
	words []string // folded, with blanks for hyphens
	means []string
	loose bool
}{
	{[]string{"sla", "lead acid", "sealed lead acid", "vrla", "lead", "pb"}, []string{"lead-acid", "agm"}, true},
	{[]string{"gel cell", "gel cells", "gel battery"}, []string{"gel"}, false},
	{[]string{"absorbed glass mat", "agm battery"}, []string{"agm"}, false},
	{liquidAcid, []string{"agm"}, false},
	{[]string{"lithium", "lithium battery"}, []string{"lithium-ion", "li-ion"}, true},
	{[]string{"lithium ion", "li ion", "liion", "lipo", "li po", "lithium polymer", "nmc", "tool pack"}, []string{"lithium-ion", "li-ion"}, false},
	{[]string{"lfp", "lifepo", "life po4", "iron phosphate", "lithium iron phosphate", "lithium iron", "lifepo4 battery"}, []string{"lifepo4"}, false},
	{[]string{"esc", "pwm", "speed control", "speed controller", "electronic speed control", "electronic speed controller"}, []string{"chopper"}, false},
	{[]string{"switch", "pedal switch", "foot switch", "plain contacts", "contact"}, []string{"contacts"}, false},
	{[]string{"in series", "one behind the other"}, []string{"series"}, false},
	{[]string{"in parallel", "side by side"}, []string{"parallel"}, false},
	{[]string{"ni mh", "nickel", "nickel metal hydride", "nickel metal"}, []string{"nimh"}, false},
}

// liquidAcid are words for lead-acid that is not sealed, which is computed like a sealed one
// and judged by its acid.
var liquidAcid = []string{"flooded", "wet", "wet cell", "wet cells", "flooded lead acid", "wet lead acid", "open lead acid", "vented lead acid"}

// isLiquidAcid reports whether a chemistry is written in one of these words.
func isLiquidAcid(text string) bool {
	return slices.Contains(liquidAcid, strings.Join(strings.Fields(strings.ReplaceAll(fold(text), "-", " ")), " "))
}

// spelled returns the word of a list that a text stands for, and whether it names
// a family only; the text itself, folded, when there is none.
func spelled(list []string, text string) (word string, loose bool) {
	t := fold(text)
	if slices.Contains(list, t) {
		return t, false
	}
	if w := strings.Join(strings.Fields(strings.ReplaceAll(t, "-", " ")), " "); w != "" {
		for _, o := range otherSpellings {
			if !slices.Contains(o.words, w) {
				continue
			}
			for _, m := range o.means {
				if slices.Contains(list, m) {
					return m, o.loose
				}
			}
		}
	}
	return t, false
}

// sizeAlone leaves the size of a motor of what people write around it: "550 size", "a 550
// motor". A text of other words stays as it is.
func sizeAlone(text string) string {
	left := slices.DeleteFunc(strings.Fields(strings.ReplaceAll(fold(text), "-", " ")), func(w string) bool {
		return slices.Contains([]string{"size", "sized", "motor", "motors", "can", "type", "class", "series", "a", "the"}, w)
	})
	if len(left) != 1 {
		return text
	}
	return left[0]
}

// Chemistries lists the words that pack.chemistry understands: the names of the
// built-in ones and what people write for them.
func Chemistries() []string {
	words := chemistry.Builtin().Names()
	for _, o := range otherSpellings {
		if word, _ := spelled(words, o.words[0]); slices.Contains(words, word) {
			for _, w := range o.words {
				words = append(words, w)
				if h := strings.ReplaceAll(w, " ", "-"); h != w {
					words = append(words, h)
				}
			}
		}
	}
	return words
}

// byLabel returns the chemistry of the label where that is of the family which a
// loose word names: "lithium" beside "12.8 V 10 Ah" is iron phosphate.
func (r *resolver) byLabel(label string, named chemistry.Profile) (chemistry.Profile, bool) {
	l, err := r.label(label, chemistry.Profile{})
	if err != nil || l.Chemistry == "" {
		return named, false
	}
	p, ok := r.chem.Profile(l.Chemistry)
	return p, ok && p.Family == named.Family
}
