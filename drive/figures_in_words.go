package drive

import said "example.org/packcheck/internal/quantity"

// The figures of a sentence, rounded where reports round those of a finding.

func amps(a float64) string    { return said.Said(said.Current, a) }
func volts(v float64) string   { return said.Said(said.Voltage, v) }
func seconds(s float64) string { return said.Said(said.Duration, s) }
