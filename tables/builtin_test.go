package tables_test

import (
	"os"
	"reflect"
	"testing"

	"example.org/packcheck/tables"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Sizes computed while loading may differ in the last digit between processors.
const lastDigit = 1e-15

func TestTheBuiltInTablesAreThoseOfTheTOMLFiles(t *testing.T) {
	fromFiles, err := tables.Load(os.DirFS("data"))
	if err != nil {
		t.Fatal(err)
	}
	everything := cmp.Exporter(func(reflect.Type) bool { return true })
	if diff := cmp.Diff(fromFiles, tables.Builtin(), everything, cmpopts.EquateApprox(lastDigit, 0)); diff != "" {
		t.Errorf("go generate ./tables was not run (-files +built in):\n%s", diff)
	}
}

func TestTheBuiltInTablesCostNothingToGet(t *testing.T) {
	if n := testing.AllocsPerRun(10, func() { tables.Builtin() }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
