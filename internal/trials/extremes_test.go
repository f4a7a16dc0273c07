package trials_test

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
)

// bounds reads the least and greatest value of a key from the tags that are
// the registry of package setup.
func bounds(t testing.TB, k setup.Key) (low, high float64) {
	t.Helper()
	low, high = quantity.KindNamed(k.What).Bounds()
	var walk func(reflect.Type, string)
	walk = func(s reflect.Type, table string) {
		for i := range s.NumField() {
			f := s.Field(i)
			switch {
			case f.Tag.Get("table") != "":
				walk(f.Type, strings.TrimPrefix(table+"."+f.Tag.Get("table"), "."))
			case f.Tag.Get("key") == k.Name && table == k.Table:
				if v, err := strconv.ParseFloat(f.Tag.Get("min"), 64); err == nil {
					low = v
				}
				if v, err := strconv.ParseFloat(f.Tag.Get("max"), 64); err == nil {
					high = v
				}
			case f.Anonymous && f.Type.Kind() == reflect.Struct:
				walk(f.Type, table)
			}
		}
	}
	walk(reflect.TypeFor[setup.Setup](), "")
	return low, high
}

// written writes a value of a key in the unit that it is held in.
func written(k setup.Key, values ...float64) string {
	var parts []string
	for _, v := range values {
		parts = append(parts, strconv.FormatFloat(v, 'f', -1, 64))
	}
	text := strings.Join(parts, " to ")
	switch quantity.KindNamed(k.What) {
	case quantity.Count:
		if len(values) == 1 {
			return text
		}
	case quantity.Grade:
		for i, v := range values {
			parts[i] = strconv.FormatFloat(100*v, 'f', -1, 64)
		}
		text = strings.Join(parts, " to ") + " %"
	case quantity.Gauge:
		text += " AWG"
	default:
		text = strings.TrimSpace(text + " " + quantity.KindNamed(k.What).Unit())
	}
	return strconv.Quote(text)
}

// extremes lists what a key can be set to: both ends of its bounds, the middle
// by ratio, everything between the ends at once, or every word that it knows.
func extremes(t testing.TB, k setup.Key) []string {
	t.Helper()
	quoted := func(words []string) []string {
		out := []string{}
		for _, w := range words {
			out = append(out, strconv.Quote(w))
		}
		return out
	}
	built := tables.Builtin()
	var names []string
	switch {
	case k.What == "yes or no":
		return []string{"true", "false"}
	case k.What == "file", k.Path() == "title":
		return nil
	case k.Words != nil:
		return quoted(k.Words)
	case k.What == "ground":
		for _, g := range built.Grounds() {
			names = append(names, g.Name)
		}
		return quoted(names)
	case k.What == "can":
		for _, c := range built.MotorCans() {
			names = append(names, c.Name)
		}
		return quoted(names)
	case k.What == "joint":
		for _, j := range built.Joints() {
			names = append(names, j.Name)
		}
		return quoted(names)
	case k.What == "fuse form":
		return quoted(append(built.FuseForms(), "none"))
	case k.What == "chemistry":
		return quoted([]string{"agm", "gel", "traction", "li-ion", "lifepo4", "nimh"})
	case k.Path() == "pack.label":
		return quoted([]string{"6 V 4.5 Ah", "12 V 7 Ah", "24 V (two 12 V)", "20 V max 5 Ah", "18 V 1.5 Ah", "12.8 V 10Ah LiFePO4", "7.2 V NiMH 3 Ah", "5S2P 21700 4 Ah", "36 V 2.5 Ah"})
	case quantity.KindNamed(k.What) == quantity.NoKind:
		return []string{k.Quoted()}
	}
	low, high := bounds(t, k)
	if quantity.KindNamed(k.What) == quantity.Gauge {
		return []string{written(k, 0), written(k, 12), written(k, 24), written(k, 12, 20)}
	}
	middle := math.Sqrt(max(low, high/1e6) * high)
	if quantity.KindNamed(k.What) == quantity.Temperature || quantity.KindNamed(k.What) == quantity.Count {
		middle = math.Round((low + high) / 2)
	}
	return []string{written(k, low), written(k, middle), written(k, high), written(k, low, high), k.Quoted()}
}
