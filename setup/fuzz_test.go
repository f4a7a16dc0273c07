package setup_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// FuzzRead holds the reader to its promises for any bytes: no panic; either
// faults, each on one line, or a setup; and a setup resolves to faults or to
// parts whose corners the engine accepts.
func FuzzRead(f *testing.F) {
	f.Add([]byte(labelsOnly))
	f.Add([]byte(full))
	f.Add([]byte("pack = { label = \"12 V\" }\n[original.pack]\nlabel = '24 V (two 12 V)'\n[[wire]]\n"))
	f.Add([]byte("[load]\npower = \"5 W\"\n[pack]\nlabel = \"5S2P\"\n[storage]\nfrom = 2026-11-01\n"))
	f.Add([]byte("a.b.c = \"\"\"\nx\"\"\"\n[x.\"y z\"]\n= 3\n\xff"))
	f.Add([]byte("[pack]\nlabel = \"12 V\nhealth = 1e400\ncharge = -inf\n"))
	files, _ := filepath.Glob("../examples/*.toml")
	for _, name := range files {
		if data, err := os.ReadFile(name); err == nil {
			f.Add(data)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := setup.Read(strings.NewReader(string(data)), "f.toml")
		if err != nil {
			oneLineEach(t, err)
			return
		}
		named := s.Bench.Pattern.Given || s.Pack.ChemistryFile.Given || s.TablesFile.Given
		if s.Original != nil {
			named = named || s.Original.Bench.Pattern.Given || s.Original.Pack.ChemistryFile.Given || s.Original.TablesFile.Given
		}
		if named {
			return // would read files of this machine
		}
		p, err := s.Parts()
		if err != nil {
			oneLineEach(t, err)
			return
		}
		for _, figure := range p.Figures() {
			if !figure.Valid() {
				t.Fatalf("%s: %v", figure.Key, figure.Range)
			}
		}
		buildable(t, p)
		if p.Original != nil {
			buildable(t, p.Original)
		}
	})
}

// oneLineEach checks that an error is Faults and prints a line for each.
func oneLineEach(t *testing.T, err error) {
	t.Helper()
	var faults setup.Faults
	if !errors.As(err, &faults) || len(faults) == 0 {
		t.Fatalf("%v is no Faults", err)
	}
	for _, f := range faults {
		if line := f.Error(); f.Want == "" || strings.Contains(line, "\n") || len(line) > 2000 {
			t.Fatalf("fault %q", line)
		}
	}
}

func BenchmarkReadAndResolve(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		s, err := setup.Read(strings.NewReader(labelsOnly), "f.toml")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := s.Parts(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCorner(b *testing.B) {
	s, err := setup.Read(strings.NewReader(labelsOnly), "f.toml")
	if err != nil {
		b.Fatal(err)
	}
	p, err := s.Parts()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		p.DriveVehicle(setup.Likely)
		p.PackSpec(setup.Likely)
	}
}
