package page

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// Bounds on a setup that comes from a stranger or a slipped thumb. The fullest
// example has 50 keys, the longest text of one 80 bytes. Own choice.
const (
	mostKeys = 200
	mostKey  = 80
	mostText = 500
)

// bounded looks whether a setup may be read at all.
func bounded(given map[string]string) []Fault {
	if len(given) > mostKeys {
		return []Fault{{Says: fmt.Sprintf("This setup has %d keys; at most %d are read.", len(given), mostKeys)}}
	}
	var out []Fault
	for _, key := range slices.Sorted(maps.Keys(given)) {
		text := given[key]
		switch {
		case len(key) > mostKey || !printable(key):
			out = append(out, Fault{Says: "This setup has a key that cannot be one."})
		case len(text) > mostText:
			out = append(out, Fault{key, fmt.Sprintf("%s: read a text of %d bytes; right would be at most %d.", key, len(text), mostText)})
		case !printable(text):
			out = append(out, Fault{key, key + ": read signs that cannot be printed; right would be plain letters, digits and signs."})
		}
	}
	return out
}

// unreadable says what is wrong with the label of a battery; empty where it can be
// read, even if its kind is still to be asked.
func unreadable(label string) string {
	q, _ := asked(answer.KeyPackLabel)
	if _, err := interview.Fill(q, label, nil); err != nil {
		return err.Error() + "."
	}
	return ""
}

// printable reports whether a text shows as what it is: no line ends, nothing that
// obeys a terminal or turns the direction of writing.
func printable(text string) bool {
	return utf8.ValidString(text) && !strings.ContainsFunc(text, func(r rune) bool {
		return !unicode.IsPrint(r) && !unicode.IsSpace(r) || unicode.IsControl(r) || r == '\u2028' || r == '\u2029'
	})
}

// whole reads a setup as a whole: nothing is taken of one that is not in order. That
// there is no battery yet, or one of which the kind is still to be asked, is no
// fault.
func whole(given map[string]string) []Fault {
	if faults := elsewhere(given); faults != nil {
		return faults
	}
	s, err := setup.Of(given)
	if err == nil {
		_, err = s.Parts()
	}
	var list setup.Faults
	if !errors.As(err, &list) {
		if err != nil {
			return faultsOf(err)
		}
		return nil
	}
	list = slices.DeleteFunc(list, func(f setup.Fault) bool {
		return f.Key == "pack" && f.Read == "" || kindOpen(given, f.Key)
	})
	if len(list) == 0 {
		return nil
	}
	return faultsOf(list)
}

// kindOpen reports whether a key is a label that reads well and only wants to be
// told the kind of battery.
func kindOpen(given map[string]string, key string) bool {
	table, is := strings.CutSuffix(key, "label")
	if !is || given[table+"chemistry"] != "" {
		return false
	}
	q, known := asked(key)
	if !known {
		return false
	}
	_, err := interview.Fill(q, given[key], nil)
	return err == nil
}

// elsewhere faults what lies in files of its own, which a page cannot read.
func elsewhere(given map[string]string) []Fault {
	var out []Fault
	for _, k := range setup.Keys() {
		for _, key := range []string{k.Path(), "original." + k.Path()} {
			if text, is := given[key]; is && k.What == "file" {
				out = append(out, Fault{key, fmt.Sprintf("%s: read %q; right would be a setup without other files, which the page cannot read. The command can.", key, text)})
			}
		}
	}
	return out
}

// faultsOf says in plain words what is wrong with a setup.
func faultsOf(err error) []Fault {
	var list setup.Faults
	if !errors.As(err, &list) {
		return []Fault{{Says: capital(strings.TrimPrefix(err.Error(), "packcheck: ")) + "."}}
	}
	var out []Fault
	for _, f := range list {
		place := f.Key
		if f.Line > 0 {
			place = strings.TrimPrefix(fmt.Sprintf("%s, line %d", f.Key, f.Line), ", ")
		}
		read := "nothing"
		if f.Read != "" {
			read = fmt.Sprintf("%q", f.Read)
		}
		says := fmt.Sprintf("read %s; right would be %s.", read, f.Want)
		if place != "" {
			says = place + ": " + says
		}
		out = append(out, Fault{f.Key, says})
	}
	return out
}

// isPack reports whether a key describes the battery.
func isPack(key string) bool { return strings.HasPrefix(key, "pack.") }
