package setup

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/internal/quantity"
)

// WriteTo writes the setup as a file that reads back as the same setup: tables
// and keys in the order of [Keys], those of the original last. Comments of a file
// that it came from are not kept.
func (s *Setup) WriteTo(w io.Writer) (int64, error) {
	if s == nil {
		return 0, errNoSetup
	}
	n, err := io.WriteString(w, s.text())
	if err != nil {
		return int64(n), fmt.Errorf("setup: %w", err)
	}
	return int64(n), nil
}

func (s *Setup) text() string {
	values := s.Values()
	var b strings.Builder
	for _, prefix := range []string{"", originalPrefix} {
		table := ""
		for _, k := range Keys() {
			name := prefix + k.Table
			text, ok := values[prefix+k.Path()]
			_, silent := values[name]
			if !ok && !silent {
				continue
			}
			if k.Table != "" && name != table {
				table = name
				if b.Len() > 0 {
					b.WriteByte('\n')
				}
				b.WriteString("[" + name + "]\n")
			}
			if ok {
				b.WriteString(k.Name + " = " + k.quoted(text) + "\n")
			}
		}
	}
	return b.String()
}

// quoted is a value as it must stand in a file.
func (k Key) quoted(text string) string {
	switch {
	case k.What == "yes or no", k.What == "date":
		return text
	case k.What == quantity.Count.String():
		if _, err := strconv.Atoi(text); err == nil {
			return text
		}
	}
	// A basic string of TOML knows fewer escapes than Go.
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\t", `\t`).Replace(text) + `"`
}

// Changed lists the keys that another setup gives otherwise, or not at all, or
// only there, sorted.
func (s *Setup) Changed(other *Setup) []string {
	a, b := s.Values(), other.Values()
	keys := slices.Collect(maps.Keys(a))
	for k := range b {
		if _, both := a[k]; !both {
			keys = append(keys, k)
		}
	}
	keys = slices.DeleteFunc(keys, func(k string) bool { return a[k] == b[k] })
	slices.Sort(keys)
	return keys
}
