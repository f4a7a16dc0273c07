// Package setup reads a setup file: what a person knows about a battery, a
// vehicle and a charger, each quantity with its unit, as people write it.
//
// For most uses call [Load] with a file name, then [Setup.Parts] for the setup
// with every gap filled. [Keys] lists every table and key that a file may have.
//
// # Model
//
// A file is read in two steps. [Load] and [Read] check form: known tables and
// keys, units, sizes, words, and pairs that contradict each other. All faults of
// a file come back together as [Faults], one line each; nothing is handed out
// from a file with such a fault. [Setup.Parts] then looks up what words and labels
// mean and fills every gap with a range, marked as assumed, with the reason; what is
// wrong with that comes back from there, or beside faults of form. A setup without
// those may be one that somebody goes on with.
//
// # Assumptions
//
// What is left out is unknown, not absent: only `form = "none"` says that there
// is no fuse. [original] describes the vehicle as it left the factory; a table
// that it does not have is the same as today's.
//
// # Limits
//
// A file may be 1 MiB long, have 500 keys and nest 8 deep; more is refused
// before it is decoded. Bounds on single values are common sense, not from any
// published source. Files that a setup names are looked for in its own folder and
// below; a setup that is no file, from [Read] or [Of], has none opened unless
// [Changes.Dir] names a folder. What is wrong in such a file is told
// with the values that were read.
//
// # Sources
//
// TOML 1.0, decoded by github.com/BurntSushi/toml.
package setup
