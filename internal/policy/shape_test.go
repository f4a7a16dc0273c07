package policy_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// A newcomer sees the trade's words and little else.
const (
	mostAtRoot   = 2  // Go files: the front door and its example
	mostTopLevel = 26 // entries
)

func TestTheTopLevelIsShort(t *testing.T) {
	top := topLevel(t)
	if len(top) > mostTopLevel {
		t.Errorf("%d entries at the top level, want at most %d: %s", len(top), mostTopLevel, strings.Join(top, " "))
	}
	var files []string
	for _, name := range top {
		if strings.HasSuffix(name, ".go") {
			files = append(files, name)
		}
	}
	if len(files) > mostAtRoot || len(files) == 0 {
		t.Errorf("Go files at the root: %q, want packcheck.go and its example", files)
	}
}

// topLevel returns what the project keeps at its top level; where there is no
// repository, everything that lies there.
func topLevel(t *testing.T) []string {
	t.Helper()
	var names []string
	if _, err := os.Stat(filepath.Join(root, ".git")); err == nil {
		cmd := exec.Command("git", "ls-files")
		cmd.Dir = root
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(out)) {
			name, _, _ := strings.Cut(strings.TrimSpace(line), "/")
			names = append(names, name)
		}
	} else {
		entries, err := os.ReadDir(root)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			names = append(names, e.Name())
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}
