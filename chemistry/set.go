package chemistry

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/rows"
)

// Set is a collection of profiles with their sources. It never changes once
// made, so it may be shared.
type Set struct {
	profiles rows.Rows[Profile]
	members  rows.Rows[Member]
	families rows.Rows[family]
	sources  rows.Rows[answer.Source]
}

// Builtin returns the profiles that come with this module: agm, agm-traction,
// gel, li-ion, lifepo4 and nimh. They are part of the program as plain data, made
// of the TOML files in data: see [Load].
func Builtin() *Set { return &builtin }

//go:generate go run -tags generating ../internal/literal/cmd/literals chemistry data builtin_data.go

// Load reads a whole set from a folder of TOML files: first those in the folder
// itself, then those in members, which may be based on them, then those in
// families, which are made of both. The built-in set is made so; for chemistries
// of a user's own there is [Set.Extend], whose errors these are.
func Load(folder fs.FS) (*Set, error) {
	if folder == nil {
		return nil, errors.New("chemistry: no folder to read")
	}
	s := &Set{}
	for _, pattern := range []string{"*.toml", "members/*.toml", "families/*.toml"} {
		files, err := fs.Glob(folder, pattern)
		if err != nil {
			return nil, fmt.Errorf("chemistry: %w", err)
		}
		for _, name := range files {
			text, err := fs.ReadFile(folder, name)
			if err != nil {
				return nil, fmt.Errorf("chemistry: %w", err)
			}
			if s, err = s.Extend(bytes.NewReader(text), name); err != nil {
				return nil, err
			}
		}
	}
	return s, nil
}

// Profile returns the named profile.
func (s *Set) Profile(name string) (Profile, bool) {
	p, ok := s.profiles.Get(name)
	return p.copy(), ok
}

// Names returns the names of all profiles, sorted.
func (s *Set) Names() []string { return s.profiles.Names() }

// Sources returns all sources, sorted by ID.
func (s *Set) Sources() []answer.Source {
	out := make([]answer.Source, len(s.sources))
	for i := range s.sources {
		out[i] = s.sources[i].Value
	}
	return out
}

// Source returns the source of the given ID.
func (s *Set) Source(id string) (answer.Source, bool) {
	return s.sources.Get(id)
}
