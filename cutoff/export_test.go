package cutoff

// Week is what is said of a pack that is left alone so long.
func (i Idled) Week() string { return i.words() }
