[b]YES:[/b] as far as these figures go. Not full, it lasts 29 min.
[b]Why:[/b] Nothing above watch.
[b]Next:[/b] Ride, and measure the time.
[b]Pedal down:[/b] 29 min
[b]Speed:[/b] 6.8 km/h
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Read the full report.
