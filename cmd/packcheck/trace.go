package main

import (
	"bufio"
	"io"
	"os"
	"strconv"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck"
	"example.org/packcheck/setup"
)

// traces are the time series that were asked for.
func traces(c *cli.Command, s *setup.Setup) []output {
	var list []output
	for _, t := range []struct {
		flag  string
		write func(*setup.Setup, io.Writer) error
	}{
		{flagTrace, packcheck.Trace},
		{flagTraceLaunch, packcheck.TraceLaunch},
	} {
		if c.IsSet(t.flag) {
			list = append(list, output{flag: t.flag, target: c.String(t.flag), write: func(w io.Writer) error { return t.write(s, w) }, ours: sameTable})
		}
	}
	return list
}

// sameTable reports whether a file is a table as packcheck writes it, of the same
// columns as the new one: numbers in all but the last, which may hold a word.
func sameTable(name string, about io.Reader) bool {
	if about == nil {
		return true // told once the new one is there
	}
	f, err := os.Open(name)
	if err != nil {
		return false
	}
	defer f.Close()
	head, old := bufio.NewScanner(about), bufio.NewScanner(f)
	if !head.Scan() || !old.Scan() || head.Text() != old.Text() {
		return false
	}
	columns := strings.Count(head.Text(), ",")
	for old.Scan() {
		cells := strings.Split(old.Text(), ",")
		if len(cells) != columns+1 {
			return false
		}
		for _, cell := range cells[:columns] {
			if _, err := strconv.ParseFloat(cell, 64); err != nil {
				return false
			}
		}
	}
	return old.Err() == nil
}
