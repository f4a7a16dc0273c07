package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// emptyCommand has the libraries of packcheck and does nothing but what body says.
const emptyCommand = `package main

import (
%s)

func main() {%s}
`

// emptyApp is a command line of the same library, with one option.
const emptyApp = `
	app := &cli.Command{Name: "empty", Flags: []cli.Flag{&cli.BoolFlag{Name: "version"}}, Action: func(context.Context, *cli.Command) error { return nil }}
	if app.Run(context.Background(), []string{"empty", "--version"}) != nil {
		panic("empty")
	}
`

// libraries lists what packcheck imports from elsewhere, directly or not.
func libraries(b *testing.B) []string {
	b.Helper()
	out, err := exec.Command("go", "list", "-deps", "-f", `{{range .Imports}}{{.}} {{end}}`, ".").Output()
	if err != nil {
		b.Fatal(err)
	}
	all := strings.Fields(string(out))
	all = slices.DeleteFunc(all, func(path string) bool {
		host, _, _ := strings.Cut(path, "/")
		elsewhere := strings.Contains(host, ".") && host != "example.org"
		return !elsewhere || strings.Contains(path, "/internal/") || strings.HasSuffix(path, "/internal")
	})
	slices.Sort(all)
	return slices.Compact(all)
}

// built builds a program of one file with the module's libraries.
func built(b *testing.B, name, text string) string {
	b.Helper()
	dir := b.TempDir()
	file := filepath.Join(dir, name+".go")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		b.Fatal(err)
	}
	return compiled(b, filepath.Join(dir, name), file)
}

func compiled(b *testing.B, binary, of string) string {
	b.Helper()
	if out, err := exec.Command("go", "build", "-o", binary, of).CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	return binary
}

// Starting packcheck, as multiples of the processor time of two empty commands run
// in turn with it: one that imports the same libraries, of which the linker then
// leaves most out, and one that runs an empty command line of the same library.
func BenchmarkStart(b *testing.B) {
	var imports strings.Builder
	for _, path := range libraries(b) {
		if path != "github.com/urfave/cli/v3" {
			fmt.Fprintf(&imports, "\t_ %q\n", path)
		}
	}
	const library = "\t%s \"github.com/urfave/cli/v3\"\n"
	commands := []string{
		compiled(b, filepath.Join(b.TempDir(), "packcheck"), "."),
		built(b, "imports", fmt.Sprintf(emptyCommand, imports.String()+fmt.Sprintf(library, "_"), "")),
		built(b, "app", fmt.Sprintf(emptyCommand, imports.String()+fmt.Sprintf(library, "cli")+"\t\"context\"\n", emptyApp)),
	}
	cpu := make([][]float64, len(commands))
	for b.Loop() {
		for i, name := range commands {
			cmd := exec.Command(name, "--version")
			if err := cmd.Run(); err != nil {
				b.Fatalf("%s: %v", name, err)
			}
			used := cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
			cpu[i] = append(cpu[i], used.Seconds())
		}
	}
	middle := func(list []float64) float64 {
		slices.Sort(list)
		return list[len(list)/2]
	}
	start := middle(cpu[0])
	b.ReportMetric(start*1e3, "cpu-ms/start")
	b.ReportMetric(start/middle(cpu[1]), "of-imports")
	b.ReportMetric(start/middle(cpu[2]), "of-empty-app")
}
