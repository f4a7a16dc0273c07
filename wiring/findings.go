package wiring

import "example.org/packcheck/finding"

func (c Case) judge(r Result) []finding.Finding { return nil }
