package chemistry_test

import (
	"os"
	"reflect"
	"testing"

	"example.org/packcheck/chemistry"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Shares divided while loading may differ in the last digit between processors.
const lastDigit = 1e-15

func TestTheBuiltInChemistriesAreThoseOfTheTOMLFiles(t *testing.T) {
	fromFiles, err := chemistry.Load(os.DirFS("data"))
	if err != nil {
		t.Fatal(err)
	}
	everything := cmp.Exporter(func(reflect.Type) bool { return true })
	if diff := cmp.Diff(fromFiles, chemistry.Builtin(), everything, cmpopts.EquateApprox(lastDigit, 0)); diff != "" {
		t.Errorf("go generate ./chemistry was not run (-files +built in):\n%s", diff)
	}
}

func TestTheBuiltInChemistriesCostNothingToGet(t *testing.T) {
	if n := testing.AllocsPerRun(10, func() { chemistry.Builtin() }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// spoil overwrites every number in every list below v and counts them.
func spoil(v reflect.Value) int {
	n := 0
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			n += spoil(v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			v.Index(i).SetFloat(-1)
			n++
		}
	}
	return n
}

func TestWhoChangesAProfileChangesNobodyElses(t *testing.T) {
	set := chemistry.Builtin()
	for _, name := range set.Names() {
		for what, get := range map[string]func() chemistry.Profile{
			"profile": func() chemistry.Profile { p, _ := set.Profile(name); return p },
			"member":  func() chemistry.Profile { return set.Members(name)[0].Profile },
		} {
			mine, before := get(), get()
			if n := spoil(reflect.ValueOf(&mine).Elem()); n < 20 {
				t.Fatalf("%s %s: only %d numbers: the test looks in the wrong place", what, name, n)
			}
			if diff := cmp.Diff(before, get()); diff != "" {
				t.Errorf("%s %s: what a caller wrote reached the set:\n%s", what, name, diff)
			}
		}
	}
	for _, name := range set.MemberNames() {
		mine, _ := set.Member(name)
		spoil(reflect.ValueOf(&mine.Profile).Elem())
		if again, _ := set.Member(name); again.Profile.End.Volts[0] < 0 {
			t.Errorf("member %s: what a caller wrote reached the set", name)
		}
	}
}

func TestAProfileIsHandedOutInOnePiece(t *testing.T) {
	if n := testing.AllocsPerRun(10, func() { chemistry.Builtin().Profile("agm") }); n > 1 {
		t.Errorf("%g allocations for one profile, want 1", n)
	}
}
