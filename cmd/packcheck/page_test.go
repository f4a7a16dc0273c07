package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/report"
)

// oddSetups are setups of kinds that the examples do not have, by name. They
// hold no figure that anybody relies on.
func oddSetups() map[string]string {
	vehicle := func(more string) string {
		return "[rider]\nage = \"5 years\"\n[vehicle]\nground = \"lawn\"\ndesign_voltage = \"12 V\"\n[motors]\ncount = 2\ncan = \"550\"\n" + more
	}
	agm := "[pack]\nchemistry = \"agm\"\nlabel = \"12 V 7 Ah\"\n"
	tool := "[pack]\nchemistry = \"li-ion\"\nlabel = \"20 V max 5 Ah\"\n"
	return map[string]string{
		"bare bench":     agm + "[load]\ncurrent = \"30 A\"\n",
		"bench power":    tool + "[load]\npower = \"200 W\"\nuntil = \"16 V\"\n",
		"as it was":      vehicle(agm),
		"two packs":      vehicle(tool + "joined = \"series\"\n"),
		"two beside":     vehicle(tool + "joined = \"parallel\"\n"),
		"long title":     "title = \"" + strings.Repeat("Will it do, & why *not*? ", 4) + "\"\n" + vehicle(tool),
		"US":             "[rider]\nmass = \"44 lb\"\n[vehicle]\nground = \"lawn\"\ndesign_voltage = \"12 V\"\nmass = \"30 lb\"\n[motors]\ncount = 2\ncan = \"550\"\n" + tool,
		"steep":          strings.Replace(vehicle(agm), "ground = \"lawn\"", "ground = \"sand\"\nslope = \"25 %\"", 1),
		"wrong charger":  vehicle(tool + "[charger]\nmade_for = \"agm\"\nvoltage = \"29.4 V\"\ncurrent = \"8 A\"\nstops = \"never\"\n"),
		"no fuse at all": vehicle(tool + "[fuse]\nform = \"none\"\n[charger]\nmade_for = \"agm\"\nvoltage = \"14.4 V\"\ncurrent = \"1 A\"\n"),
		"conflict":       vehicle(agm + "[measured]\ntop_speed = \"25 km/h\"\nride_time = \"4 min\"\n"),
	}
}

// Every setup that can be found keeps the measures of the page: the project's
// own rule, so that it fits a forum's post and a phone.
func TestEverySetupFitsOnOnePage(t *testing.T) {
	files := examples(t)
	more, err := filepath.Glob("testdata/setups/*.toml")
	if err != nil || len(more) == 0 {
		t.Fatalf("found %d setups (%v)", len(more), err)
	}
	files = append(files, more...)
	for name, text := range oddSetups() {
		file := filepath.Join(t.TempDir(), strings.ReplaceAll(name, " ", "-")+".toml")
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	for _, file := range files {
		a := assessed(t, file, 32)
		text := written(t, a, report.Options{Format: report.FormatText})
		if n := strings.Count(text, "\n"); n > report.PageLines {
			t.Errorf("%s: %d lines", file, n)
		}
		checkWidth(t, file, report.Columns, text)
		for _, step := range strings.Split(text, "[ ] ")[1:] {
			if step, _, _ := strings.Cut(step, "\n\n"); strings.HasSuffix(strings.TrimSpace(step), "...") {
				t.Errorf("%s: what is to be fitted is cut short: %s", file, step)
			}
		}
		for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
			if text := written(t, a, report.Options{Format: format}); len(text) > report.PageCharacters {
				t.Errorf("%s: %d characters of %s", file, len(text), format)
			}
		}
	}
}

// Columns keep the same measures, whatever stands in them.
func TestEveryComparisonFitsOnOnePage(t *testing.T) {
	const tool, seats = "../../examples/tractor-tool-pack.toml", "../../examples/two-seater-tired-blocks.toml"
	for name, args := range map[string][]string{
		"three files":    {tool, "../../examples/tractor-done-properly.toml", seats},
		"four batteries": {tool, "--pack", "own", "--pack", "12 V 7 Ah AGM", "--pack", "12.8 V 10 Ah LiFePO4", "--pack", "18 V 1.5 Ah"},
		"no file":        {"--set", "rider.age=3 years", "--pack", "12 V 7 Ah AGM in the box under the seat, as sold", "--pack", "40 V max 8 Ah", "--pack", "6 V 4 Ah"},
		"two by two":     {seats, "testdata/setups/danger.toml", "--pack", "24 V 12 Ah AGM", "--pack", "25.6 V 10 Ah LiFePO4"},
		"bench loads":    {"testdata/setups/fine.toml", "--pack", "own", "--pack", "12 V 9 Ah"},
	} {
		args = append(args, "--draws", "16")
		for _, format := range report.Formats() {
			var out, errs strings.Builder
			if code := run(append(args, "--format", string(format)), strings.NewReader(""), &out, &errs); code > exitFix {
				t.Fatalf("%s: code %d, %s", name, code, errs.String())
			}
			text := out.String()
			switch lines := strings.Count(text, "\n"); {
			case format == report.FormatText && lines > report.PageLines:
				t.Errorf("%s: %d lines", name, lines)
			case (format == report.FormatMarkdown || format == report.FormatBBCode) && len(text) > report.PageCharacters:
				t.Errorf("%s: %d characters of %s", name, len(text), format)
			case format == report.FormatText:
				checkWidth(t, name, report.Columns, text)
			}
			if name != "four batteries" && format == report.FormatText {
				break // the other formats are made of the same
			}
		}
	}
}

func TestDrawsMayBeChosen(t *testing.T) {
	for _, draws := range []int{32, 64} {
		text, _ := judged(t, "testdata/setups/fine.toml", "--draws", fmt.Sprint(draws))
		if want := fmt.Sprintf("%d setups like this were computed", draws); !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	for _, n := range []string{"3", "0"} {
		var out, errs strings.Builder
		if code := run([]string{"testdata/setups/fine.toml", "--draws", n}, strings.NewReader(""), &out, &errs); code != exitOther || !strings.Contains(errs.String(), "packcheck: --draws "+n+": want 16 to") {
			t.Errorf("%s draws: code %d, %q", n, code, errs.String())
		}
	}
}
