package setup

import (
	"errors"
	"maps"
	"reflect"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// Changes are what is to be otherwise than a setup says. The zero value changes
// nothing.
type Changes struct {
	// Pack is the label of a battery in place of the setup's own; empty keeps
	// that. All that belongs to the own battery goes with it: the tables [pack],
	// [cutoff.pack] and [charger], and what was measured with it, but for a speed that
	// was too fast and that no fewer volts could slow. Where the own
	// battery is the one that the vehicle was made with (the setup has an original
	// that names no other; or it is lead-acid of the vehicle's volts) it becomes
	// [original.pack], and what was measured stays a reading of it. Keys that
	// went are in [Setup.LeftOut].
	Pack string
	// Set holds keys and texts as [Of] takes them, set after Pack. An empty text
	// takes a key out, or a whole table.
	Set map[string]string
	// AnyFolder is that of [Setup.AnyFolder], where it was not allowed yet.
	AnyFolder bool
	// Dir is the folder of files that the setup names, for [ReadWith] and [OfWith];
	// empty is none: such a setup may name no file. "." is the working directory.
	Dir string
	// PackName and SetName stand in faults of these in place of file and line.
	PackName, SetName string
}

// afterFile is a line behind that of every key of a file: what is changed comes
// later.
const afterFile = maxLines + 1

// Change returns the setup with some things otherwise, checked like a file, with
// all faults at once. Files that it names are looked for where the setup itself
// stood.
func (s *Setup) Change(c Changes) (*Setup, error) {
	if s == nil {
		return nil, errNoSetup
	}
	d := decoder{name: s.Name, dir: s.Dir}
	out, err := d.finish(s, c, true)
	if err != nil {
		return nil, err
	}
	return out, nil
}

// finish makes the changes and checks what is right in itself but not together,
// where the file could be read as a whole.
func (d *decoder) finish(s *Setup, c Changes, whole bool) (*Setup, error) {
	if c.AnyFolder && !s.AnyFolder {
		allowed := *s
		allowed.AnyFolder = true
		s = &allowed
	}
	s = d.change(s, c)
	if whole {
		check(d, s)
		if s.Original != nil {
			check(d, s.Original)
		}
	}
	if len(d.faults) > 0 {
		d.faults = append(d.faults, s.lookedUp(d.faults, whole)...)
	}
	return s, s.named(d.faults.OrNil())
}

// change makes the changes key by key.
func (d *decoder) change(s *Setup, c Changes) *Setup {
	if c.Pack == "" && len(c.Set) == 0 {
		return s
	}
	all := s.entries()
	out := &Setup{Name: s.Name, Dir: s.Dir, AnyFolder: s.AnyFolder, LeftOut: s.LeftOut, from: map[string]string{}}
	maps.Copy(out.from, s.from)
	gone := map[string]bool{} // tables that something was taken out of
	take := func(path string) {
		if _, is := all[path]; is {
			delete(all, path)
			gone[path[:max(0, strings.LastIndexByte(path, '.'))]] = true
		}
	}
	if c.Pack != "" {
		out.LeftOut = s.swapPack(all, take)
		all["pack.label"], out.from["pack.label"] = entry{c.Pack, afterFile}, c.PackName
		d.packTold(c)
		if e, is := all["title"]; is && s.Pack.Given {
			if e.text += " (with " + c.Pack + ")"; len(e.text) <= longestText {
				all["title"] = e // the setup's own title may speak of its own battery
			}
		}
	}
	for _, path := range slices.Sorted(maps.Keys(c.Set)) {
		text := c.Set[path]
		out.from[path] = c.SetName
		switch {
		case text != "" || !isKeyOrTable(path):
			all[path] = entry{text, afterFile}
		default:
			for other := range maps.Clone(all) {
				if other == path || strings.HasPrefix(other, path+".") {
					take(other)
				}
			}
		}
	}
	for _, path := range slices.Sorted(maps.Keys(all)) {
		d.entry(out, path, all[path])
	}
	d.keepSpeed(s, out, all)
	out.keepPlaces(s, gone)
	return out
}

// keepSpeed puts a speed that was read back among what another battery left out, where it
// stays one of the vehicle.
func (d *decoder) keepSpeed(s, out *Setup, all map[string]entry) {
	i := slices.Index(out.LeftOut, answer.KeyMeasuredTopSpeed)
	if _, is := all[answer.KeyMeasuredTopSpeed]; i < 0 || is || len(d.faults) > 0 {
		return
	}
	was, err := s.Parts()
	if err != nil {
		return
	}
	now, err := out.Parts()
	if err == nil && was.StaysTooFast(now) {
		d.entry(out, answer.KeyMeasuredTopSpeed, s.entries()[answer.KeyMeasuredTopSpeed])
		out.LeftOut = slices.Delete(slices.Clone(out.LeftOut), i, i+1)
	}
}

// isKeyOrTable reports whether a path is one that a setup may have.
func isKeyOrTable(path string) bool {
	path = strings.TrimPrefix(path+".", originalPrefix)
	path = strings.TrimSuffix(path, ".")
	if path == "" || registry.Get().table(path) != nil {
		return true
	}
	i := strings.LastIndexByte(path, '.')
	return registry.Get().field(path[:max(i, 0)], path[i+1:]) != nil
}

// keepPlaces tells the tables that were kept where they stand in the file; one
// that says nothing stays where nothing was taken out of it.
func (s *Setup) keepPlaces(before *Setup, gone map[string]bool) {
	if o := before.Original; o != nil {
		if s.Original == nil && !slices.ContainsFunc(slices.Collect(maps.Keys(gone)), func(t string) bool {
			return strings.HasPrefix(t+".", originalPrefix)
		}) {
			s.Original = &Setup{Name: s.Name, Dir: s.Dir, Place: o.Place}
		}
		if s.Original != nil {
			s.Original.Place = o.Place
			s.Original.keepTables(o, originalPrefix, gone)
		}
	}
	s.keepTables(before, "", gone)
}

func (s *Setup) keepTables(before *Setup, prefix string, gone map[string]bool) {
	for _, t := range registry.Get().tables {
		if t.place == nil || !before.has(t.name) {
			continue
		}
		if p := s.placeOf(&t); p.Given || !gone[prefix+t.name] {
			*p = *before.placeOf(&t)
		}
	}
}

// placeOf is where a table of the setup says that it stands.
func (s *Setup) placeOf(t *table) *Place {
	return reflect.ValueOf(s).Elem().FieldByIndex(t.place).Addr().Interface().(*Place)
}

// named gives the faults of changed keys the name that they go by.
func (s *Setup) named(err error) error {
	var faults Faults
	if len(s.from) == 0 || !errors.As(err, &faults) {
		return err
	}
	faults = slices.Clone(faults)
	for i := range faults {
		f := &faults[i]
		if name, is := s.from[f.Key]; is {
			f.File, f.Line = name, 0
		}
	}
	return faults.Sorted()
}

// lookedUp are the faults that show only when words and labels are looked up and the
// parts are held against each other. Told beside the others they spare a second
// round. Of a file that could not be read as a whole only what is there can be wrong.
func (s *Setup) lookedUp(told Faults, whole bool) Faults {
	_, _, more := newResolver(s, slices.Clone(told)).filled(nil)
	if whole {
		return more
	}
	given := s.entries()
	return slices.DeleteFunc(more, func(f Fault) bool { _, is := given[f.Key]; return f.Read == "" || !is })
}
