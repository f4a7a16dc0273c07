package main

import (
	"fmt"
	"io"
	"path/filepath"

	"example.org/packcheck/internal/cellfit"
	"example.org/packcheck/setup"
)

// readLogs reads every log; the first that cannot be read ends it.
func readLogs(names []string, stdin io.Reader, sign int, bar *progress) ([]*cellfit.Log, error) {
	logs := make([]*cellfit.Log, len(names))
	for i, name := range names {
		var err error
		if name == stdinName {
			logs[i], err = readLog(stdin, "standard input", sign, 0, bar)
		} else {
			logs[i], err = openLog(name, sign, bar)
		}
		if err != nil {
			return nil, withCode(exitInput, err)
		}
	}
	return logs, nil
}

// openLog reads a log from a file.
func openLog(name string, sign int, bar *progress) (*cellfit.Log, error) {
	f, err := setup.OpenFile(name)
	if err != nil {
		return nil, missing(name, err)
	}
	defer f.Close()
	info, err := f.Stat()
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, fmt.Errorf("%s is a folder; want a log", name)
	}
	return readLog(f, name, sign, info.Size(), bar)
}

// readLog reads a log of so many bytes; 0 = not known.
func readLog(r io.Reader, name string, sign int, size int64, bar *progress) (*cellfit.Log, error) {
	doing := "reading " + filepath.Base(name)
	bar.show(doing, 0)
	return cellfit.Read(r, cellfit.Options{
		Name:        name,
		Discharging: sign,
		Progress: func(read int64) {
			share := 0.0
			if size > 0 {
				share = float64(read) / float64(size)
			}
			bar.show(doing, share)
		},
	})
}
