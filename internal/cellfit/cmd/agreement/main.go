// Command agreement fits the cells of the published datasets and says how
// well the battery model then agrees with every measured curve.
//
//	go run ./internal/cellfit/cmd/agreement -data DIR              table of all curves
//	go run ./internal/cellfit/cmd/agreement -data DIR -refit OUT   write the fitted cells
//	go run ./internal/cellfit/cmd/agreement -data DIR -cross       leave each curve out in turn
//	go run ./internal/cellfit/cmd/agreement -data DIR -coverage    leave each cell out of its family
//
// DIR holds one folder per dataset with one curve per CSV. The table is
// Markdown. Curves that a cell was not fitted to are marked "kept aside"; the
// recharge that the acceptance of package charge was fitted to is marked so.
// Lead-acid recharges run with package charge, part by part in a second table, and
// a third shows how the resistance in pulses depends on the current.
// The last line says how many rows meet the targets: voltage within 1.5 % rms
// of nominal and charge to the cutoff within 3 %, 2.5 % and 5 % for curves kept
// aside.
package main

import (
	"bytes"
	"embed"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// cells are the fitted chemistries, as written by -refit.
//
//go:embed cells/*.toml
var cells embed.FS

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "agreement:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("agreement", flag.ContinueOnError)
	data := flags.String("data", os.Getenv("PACKCHECK_REFDATA"), "`directory` of the datasets; default from PACKCHECK_REFDATA")
	refit := flags.String("refit", "", "fit the cells anew and write them into this `directory`")
	cross := flags.Bool("cross", false, "leave each fitted curve out in turn, fit to the others, and compare with the one left out")
	covered := flags.Bool("coverage", false, "leave each cell out of its family, and say how often what was measured lies in the stated range")
	misses := flags.Bool("misses", false, "with -coverage: list what does not")
	only := flags.String("only", "", "only cells whose name contains this")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *data == "" {
		return fmt.Errorf("no directory of datasets: give -data or set PACKCHECK_REFDATA")
	}
	if *covered {
		missed := io.Discard
		if *misses {
			missed = out
		}
		return coverage(*data, out, missed)
	}
	if !*cross && *refit == "" {
		return table(*data, *only, out)
	}
	if *cross {
		fmt.Fprintln(out, crossHead)
	}
	for _, d := range datasets {
		if !strings.Contains(d.cell, *only) {
			continue
		}
		logs, err := d.read(*data)
		if err != nil {
			return err
		}
		if *refit != "" {
			err = d.refit(logs, *refit, out)
		} else {
			err = d.crossCheck(logs, out)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", d.folder, err)
		}
	}
	return nil
}

// table prints a row per curve, the lead-acid recharges part by part, pulses by
// their current, and how many rows meet the targets.
func table(data, only string, out io.Writer) error {
	var all []row
	var recharges, currents bytes.Buffer
	fmt.Fprintln(out, tableHead)
	for _, d := range datasets {
		if !strings.Contains(d.cell, only) {
			continue
		}
		c, err := d.read(data)
		if err != nil {
			return err
		}
		rows, err := d.rows(c)
		if err == nil {
			err = d.phases(c, &recharges)
		}
		if err == nil {
			err = d.currents(c, &currents)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", d.folder, err)
		}
		for _, r := range rows {
			r.print(out)
		}
		all = append(all, rows...)
	}
	if recharges.Len() > 0 {
		fmt.Fprintf(out, "\n%s\n%s", rechargeHead, &recharges)
	}
	if currents.Len() > 0 {
		fmt.Fprintf(out, "\n%s\n%s", currentsHead, &currents)
	}
	fmt.Fprintf(out, "\n%s\n", summary(all))
	return nil
}

// curves is what a folder holds.
type curves struct {
	logs   map[string]*cellfit.Log
	pulses map[string][]*cellfit.Log
	names  []string // of logs, sorted
}

// read reads every curve of the dataset; files that are neither a log nor a
// table of pulses are left out.
func (d dataset) read(dir string) (curves, error) {
	files, err := filepath.Glob(filepath.Join(dir, d.folder, "*.csv"))
	if err != nil || len(files) == 0 {
		return curves{}, fmt.Errorf("no curves in %s", filepath.Join(dir, d.folder))
	}
	c := curves{logs: map[string]*cellfit.Log{}, pulses: map[string][]*cellfit.Log{}}
	for _, file := range files {
		content, err := os.ReadFile(file)
		if err != nil {
			return curves{}, err
		}
		name := strings.TrimSuffix(filepath.Base(file), ".csv")
		if log, err := cellfit.Read(bytes.NewReader(content), cellfit.Options{Name: filepath.Base(file)}); err == nil {
			c.logs[name] = log.WithoutDropouts()
			c.names = append(c.names, name)
		} else if table := pulseTable(content); table != nil {
			c.pulses[name] = table
		}
	}
	slices.Sort(c.names)
	return c, nil
}

// profile loads the dataset's fitted cell.
func (d dataset) profile() (chemistry.Profile, error) {
	if m, ok := chemistry.Builtin().Member(d.cell); ok {
		return m.Profile, nil
	}
	f, err := cells.Open("cells/" + d.cell + ".toml")
	if err != nil {
		return chemistry.Profile{}, err
	}
	defer f.Close()
	set, err := chemistry.Builtin().Extend(f, d.cell+".toml")
	if err != nil {
		return chemistry.Profile{}, err
	}
	p, _ := set.Profile(d.cell)
	return p, nil
}
