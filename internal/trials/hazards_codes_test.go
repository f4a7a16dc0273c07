package trials_test

import (
	"example.org/packcheck/charge"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
)

// Short names for codes that several rows ask for.
const (
	wantToyVolts    = drive.CodeAboveToyVolts
	wantFuseOpened  = judge.CodeFuseOpened
	wantRunningOver = drive.CodeRunningOverController
	wantOvercharged = charge.CodeOvercharged
	wantSags        = charge.CodeFallsFar
	wantOverload    = drive.CodeOverloaded
	wantSteep       = drive.CodeRollsBack
	wantStoredHot   = charge.CodeStoredTooHot
	disagree        = judge.CodeReadingsDisagree
)
