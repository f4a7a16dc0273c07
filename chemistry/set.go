package chemistry

import (
	"embed"
	"maps"
	"path"
	"slices"
	"sync"

	"example.org/packcheck/answer"
)

//go:embed data
var dataFS embed.FS

// dataFolders are read one after the other: what a member is based on comes
// before it, and the members before the families made of them.
var dataFolders = [...]string{"data", "data/members", "data/families"}

// Set is a collection of profiles with their sources. It never changes once
// made, so it may be shared.
type Set struct {
	profiles map[string]Profile
	members  map[string]Member
	families map[string]family
	sources  map[string]answer.Source
}

// Builtin returns the profiles that come with this module: agm, gel, li-ion,
// lifepo4 and nimh.
func Builtin() *Set { return builtin() }

// builtin parses the embedded files once. They are part of the program, so a
// fault in them is a fault of the program and a test finds it.
var builtin = sync.OnceValue(func() *Set {
	s := &Set{}
	for _, folder := range dataFolders {
		entries, err := dataFS.ReadDir(folder)
		if err != nil {
			panic("chemistry: " + err.Error())
		}
		for _, e := range entries {
			if e.IsDir() {
				continue
			}
			f, err := dataFS.Open(path.Join(folder, e.Name()))
			if err != nil {
				panic("chemistry: " + err.Error())
			}
			s, err = s.Extend(f, e.Name())
			if err != nil {
				panic("chemistry: embedded data: " + err.Error())
			}
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
