[b]Verdict:[/b] DANGER: do not let a child ride this yet
[b]Risk:[/b] No fuse: a short circuit burns the wire.
[b]Next:[/b] Fit a fuse of 20 to 30 A within 178 mm of the pack.
[b]Ride:[/b] 22 to 38 min, likely 29 min with the pedal down
[b]Speed:[/b] 6.1 to 7.5 km/h (3.8 to 4.7 mph), likely 6.8 km/h
[b]Assumed:[/b] 2 values; first of all gears.ratio
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Heed every caution of the full report.
