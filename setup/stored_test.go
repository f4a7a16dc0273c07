package setup_test

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// A key that nothing but the reader of files looks at changes no answer: then its
// line says so. Fields are found by name, so one that shares its name with another
// may pass.
func TestAKeyThatNothingUsesSaysThatItIsToldOnly(t *testing.T) {
	t.Parallel()
	var code strings.Builder
	for _, pattern := range []string{"*.go", "../internal/*/*.go"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %d files, %v", pattern, len(files), err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") || name == "setup.go" {
				continue
			}
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			code.Write(text)
		}
	}
	used := map[string]bool{}
	for _, name := range regexp.MustCompile(`\.[A-Z]\w*`).FindAllString(code.String(), -1) {
		used[name[1:]] = true
	}
	keys := 0
	var walk func(reflect.Type)
	walk = func(st reflect.Type) {
		for i := range st.NumField() {
			f := st.Field(i)
			if f.Tag.Get("table") != "" || f.Anonymous && f.Type.Kind() == reflect.Struct {
				walk(f.Type)
				continue
			}
			if f.Tag.Get("key") == "" {
				continue
			}
			keys++
			if told := strings.Contains(f.Tag.Get("doc"), "told only"); used[f.Name] == told {
				t.Errorf("%s.%s: used %v, told only %v", st.Name(), f.Name, used[f.Name], told)
			}
		}
	}
	walk(reflect.TypeFor[setup.Setup]())
	if keys != len(setup.Keys()) {
		t.Errorf("%d keys walked, %d listed", keys, len(setup.Keys()))
	}
}
