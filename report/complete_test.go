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
	{`^Headline\[[01]\]$`, "the verdict has its own words here; the whole of the others stands among findings and changes"},
	{`^Launch\.(Case|CaseGives)\.`, "one launch, to be computed again, is for programs"},
	{`^Series$`, "the course of one case is drawn on the page for phones"},
	{`^Pack\.Resistance1m?sOhm$`, "one resistance is printed; those of other times are for programs"},
	{`^Launch\.WheelsUpA$`, "a note tells of it"},
	{`^Draws\.(Runs|Effective)$`, "how the draws came about is for programs; where too few are left, Rough says so"},
	{`^Ride\.(End|LastsEnd)$`, "the words beside it are printed; it stands in for them where there are none"},
	{`^Charge\.Reasons\[`, "findings say them; printed where there is none"},
	{`^Charge\.Advised`, "what to buy and the steps of ways out have it in words; the figures are for programs"},
	{`^Charge\.TimerH$`, "the hours after which it is off are printed; that it was a timer is said where it ends too early"},
	{`^(Charge\.Right|Cutoff\.Advised\.\w+)$`, "what to buy says it; printed where nothing is to be bought"},
	{`^Readings\[\d+\]\.(Value|Fits)$`, "the text as written is printed, and the ranges beside it"},
	{`^Conflict\.LeftOut\[`, "each reading says whether it was left out"},
	{`^Readings\[1\]\.Error$`, "it was stated, so the text as written says it"},
	{`^Readings\[\d+\]\.(Before|After)\.Likely$`, "of what was foretold the ends are printed"},
	{`^Findings\[\d+\]\.(About|Gravity|Today|Decides\[\d+\]|Topic|Item|LimitKey|Ladder|Rung|EndsRides|Added|Finished|Charging|OfAge|Fate)$`, "they are for programs, for the order, for the judging and for the drawing"},
	{`^Findings\[[1456]\]\.NeverRidden$`, "what is mild, or possible only, takes no ride away"},
	{`^Findings\[\d+\]\.(Change|LimitA|LimitMS|Habit)$`, "changes, shopping list and habits were made of them"},
	{`^Findings\[[023]\]\.Advice$`, "the list of changes says it"},
	{`^Findings\[[02356]\]\.Share$`, "a share is said where it is below a half"},
	{`^Findings\[[36]\]\.(Found|Limit|Want)$`, "no number applies where there is no unit"},
	{`^Findings\[6\]\.Unit$`, "it tells something; no number is held against a limit"},
	{`^Findings\[3\]\.Reads$`, "no number applies where there is no unit"},
	{`^Findings\[6\]\.Harm$`, "nothing is at risk where all is fine"},
	{`^CautionSources\[`, "they are for programs"},
	{`^Items\[\d+\]\.Code$`, "it is for programs; the finding itself is printed"},
	{`^Assumed\[\d+\]\.(Why|Source|Effect)$`, "they pick what is listed, and where; the reasons are for the page on a phone and for programs"},
	{`^Assumed\[2\]\.(Key|Value)$`, "it moves nothing, so its number must do"},
	{`^Assumed\[[01]\]\.Decides$`, "they are listed anyway"},
	{`^Measure\[\d+\]\.(Narrows|Key|What)$`, "the shares and the words on how to do it say it"},
	{`^Sources\[[12456]\]\.(Text|Known)$`, "nobody is hurt by what rests on it: it is named, under the first word of how it is known; programs get it whole"},
	{`^Sources\[[03]\]\.Known$`, "its first word is printed, under which it stands"},
}

// Every figure and every word of an assessment must reach the reader: whatever
// is changed in it changes the text. A field added to the assessment fails
// here until the report prints it.
func TestEveryPartOfAnAssessmentIsPrinted(t *testing.T) {
	leaves := 0
	plain := danger() // where there is a range, its likely value is printed
	plain.Ranges = nil
	base := written(t, plain, report.Options{Full: true})
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
		if written(t, a, report.Options{Full: true}) == base {
			t.Errorf("%s can change without a word in the report", path)
		}
	}
	base = written(t, danger(), report.Options{Full: true})
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
			if written(t, a, report.Options{Full: true}) == base {
				t.Errorf("the %s end of %s can change without a word in the report", end, key)
			}
		}
	}
	if leaves < 200 {
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
		switch v.Type().Name() {
		case "Level", "Side":
			v.SetInt(1 - v.Int()%2)
		case "Harm", "Certainty", "Reads":
			v.SetInt((v.Int() + 2) % 4)
		default:
			v.SetInt(v.Int() + 5)
		}
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
				written(t, a, report.Options{Format: format, Short: short, Full: true})
			}
		}
		if fresh := fixtures()[name]; !reflect.DeepEqual(a, fresh) {
			t.Errorf("%s was changed", name)
		}
	}
}
