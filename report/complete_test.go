package report_test

import (
	"fmt"
	"reflect"
	"regexp"
	"testing"

	"example.org/packcheck/report"
)

// notPrinted are the parts of an assessment that only JSON carries, each with
// the reason.
var notPrinted = []struct{ path, why string }{
	{`^Launch\.Case\.`, "what the launch was computed from is for programs"},
	{`^Findings\[\d+\]\.Code$`, "codes are for programs"},
	{`^CautionSources\[`, "they pick what the list of sources holds"},
	{`^Assumed\[2\]\.Why$`, "it moves nothing, so its value must do"},
	{`^Sources\[4\]\.`, "nothing weighty rests on it, so only their number tells of it"},
	{`^Assumed\[\d+\]\.(Source|Effect)$`, "they pick what is listed, and where"},
	{`^Findings\[2\]\.Topic$`, "it has no section of its own, under either name"},
	{`^Findings\[3\]\.(Found|Limit)$`, "no number applies where there is no unit"},
}

// Every figure and every word of an assessment must reach the reader: whatever
// is changed in it changes the text. A field added to the assessment fails
// here until the report prints it.
func TestEveryPartOfAnAssessmentIsPrinted(t *testing.T) {
	leaves := 0
	plain := danger() // where there is a range, its likely value is printed
	plain.Ranges = nil
	base := written(t, plain, report.Options{})
	for i := 0; ; i++ {
		a := danger()
		a.Ranges = nil
		n := 0
		var path string
		walk(reflect.ValueOf(a).Elem(), "", func(at string, leaf reflect.Value) {
			if n == i {
				path = at
				change(leaf)
			}
			n++
		})
		if path == "" {
			break
		}
		if skipped(path) {
			continue
		}
		leaves++
		if written(t, a, report.Options{}) == base {
			t.Errorf("%s can change without a word in the report", path)
		}
	}
	base = written(t, danger(), report.Options{})
	for key := range danger().Ranges {
		for _, end := range []string{"Low", "Likely", "High"} {
			a := danger()
			r := a.Ranges[key]
			switch end {
			case "Low":
				r.Low /= 2
			case "Likely":
				r.Likely = (r.Likely + r.High) / 2
			case "High":
				r.High *= 2
			}
			a.Ranges[key] = r
			if written(t, a, report.Options{}) == base {
				t.Errorf("the %s end of %s can change without a word in the report", end, key)
			}
		}
	}
	if leaves < 120 {
		t.Errorf("only %d parts were changed: the test looks in the wrong place", leaves)
	}
}

func skipped(path string) bool {
	if path == "Schema" || path == "System" {
		return true
	}
	for _, n := range notPrinted {
		if regexp.MustCompile(n.path).MatchString(path) {
			return true
		}
	}
	return false
}

// walk calls visit for every number, text, switch and pointer below v.
func walk(v reflect.Value, path string, visit func(string, reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			name := v.Type().Field(i).Name
			if path != "" {
				name = path + "." + name
			}
			walk(v.Field(i), name, visit)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i), visit)
		}
	case reflect.Pointer:
		if v.IsNil() || v.Elem().Kind() != reflect.Struct {
			visit(path, v)
			return
		}
		walk(v.Elem(), path, visit)
	case reflect.Map:
	default:
		visit(path, v)
	}
}

// change gives a leaf another value.
func change(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		old := v
		v.Set(reflect.New(v.Type().Elem()))
		if !old.IsNil() {
			v.Elem().Set(old.Elem())
		}
		change(v.Elem())
	case reflect.Float64:
		v.SetFloat(v.Float()*1.5 + 2)
	case reflect.Int:
		if v.Type().Name() == "Level" {
			v.SetInt(1 - v.Int()%2)
			return
		}
		v.SetInt(v.Int() + 5)
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.String:
		v.SetString(v.String() + " zzz")
	}
}

// A report must not change the assessment that it prints.
func TestWritingLeavesTheAssessmentAlone(t *testing.T) {
	for name, a := range fixtures() {
		if name == "not-a-num" {
			continue // NaN differs from itself
		}
		for _, format := range report.Formats() {
			for _, short := range []bool{false, true} {
				written(t, a, report.Options{Format: format, Short: short})
			}
		}
		if fresh := fixtures()[name]; !reflect.DeepEqual(a, fresh) {
			t.Errorf("%s was changed", name)
		}
	}
}
