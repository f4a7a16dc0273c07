package main

import (
	"fmt"
	"runtime/debug"
)

// version says what was built, from what the build wrote into the program.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "packcheck, version not recorded"
	}
	release := info.Main.Version
	if release == "" || release == "(devel)" {
		release = "built from a checkout"
	}
	commit := ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision" && len(s.Value) >= 12:
			commit = ", commit " + s.Value[:12] + commit
		case s.Key == "vcs.modified" && s.Value == "true":
			commit += ", changed since"
		}
	}
	return fmt.Sprintf("packcheck %s%s, %s", release, commit, info.GoVersion)
}
