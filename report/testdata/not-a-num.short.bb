[b]Verdict:[/b] DANGER: do not let a child ride this yet
[b]Risk:[/b] No fuse: a short circuit burns the wire before ...
[b]Next:[/b] Fit a fuse of 20 to 30 A within 178 mm of the pack.
[b]Risk in full:[/b] No fuse: a short circuit burns the wire before anything opens, so that the loom burns.
[b]Ride:[/b] 33 min with the pedal down
[b]Speed:[/b] 6.1 to 7.5 km/h (3.8 to 4.7 mph), likely 6.8 km/h
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Read the full report.
