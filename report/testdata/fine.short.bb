[b]Verdict:[/b] FINE: fits
[b]Risk:[/b] Nothing above watch.
[b]Next:[/b] Ride, and measure the time.
[b]Ride:[/b] 29 min with the pedal down
[b]Speed:[/b] 6.8 km/h (4.3 mph)
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Read the full report.
