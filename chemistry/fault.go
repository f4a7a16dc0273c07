package chemistry

import "example.org/packcheck/fault"

// Fault is one mistake in a chemistry file.
type Fault = fault.Fault

// Faults is every mistake in one chemistry file.
type Faults = fault.Faults
