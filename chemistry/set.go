package chemistry

import (
	"embed"
	"maps"
	"path"
	"slices"
	"sync"

	"example.org/packcheck/answer"
)

//go:embed data/*.toml
var dataFS embed.FS

// Set is a collection of profiles with their sources. It never changes once
// made, so it may be shared.
type Set struct {
	profiles map[string]Profile
	sources  map[string]answer.Source
}

// Builtin returns the profiles that come with this module: agm, gel, li-ion,
// lifepo4 and nimh.
func Builtin() *Set { return builtin() }

// builtin parses the embedded files once. They are part of the program, so a
// fault in them is a fault of the program and a test finds it.
var builtin = sync.OnceValue(func() *Set {
	s := &Set{profiles: map[string]Profile{}, sources: map[string]answer.Source{}}
	entries, err := dataFS.ReadDir("data")
	if err != nil {
		panic("chemistry: " + err.Error())
	}
	for _, e := range entries {
		f, err := dataFS.Open(path.Join("data", e.Name()))
		if err != nil {
			panic("chemistry: " + err.Error())
		}
		s, err = s.Extend(f, e.Name())
		if err != nil {
			panic("chemistry: embedded data: " + err.Error())
		}
	}
	return s
})

// Profile returns the named profile.
func (s *Set) Profile(name string) (Profile, bool) {
	p, ok := s.profiles[name]
	return p, ok
}

// Names returns the names of all profiles, sorted.
func (s *Set) Names() []string { return slices.Sorted(maps.Keys(s.profiles)) }

// Sources returns all sources, sorted by ID.
func (s *Set) Sources() []answer.Source {
	out := make([]answer.Source, 0, len(s.sources))
	for _, id := range slices.Sorted(maps.Keys(s.sources)) {
		out = append(out, s.sources[id])
	}
	return out
}

// Source returns the source of the given ID.
func (s *Set) Source(id string) (answer.Source, bool) {
	src, ok := s.sources[id]
	return src, ok
}
