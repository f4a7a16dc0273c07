[b]YES:[/b] as far as these figures go. Not full, it lasts 29 min.
[b]Why:[/b] Nothing above watch.
[b]Next:[/b] Ride, and measure the time.

[b]Bramble Lane tractor with controller, cutoff and fuse[/b]

[b]In figures[/b]
[list]
[*][b]Charged now:[/b] 85 %; what follows is for that
[*][b]Pedal down:[/b] 29 min; original 41 min
[*][b]With the pauses:[/b] 41 min
[*][b]Speed:[/b] 6.8 km/h; original 4.5 km/h
[*][b]Amps at a start:[/b] 88 A; original 46.5 A
[*][b]Distance:[/b] 3.1 km
[*][b]Charged full in:[/b] 2 h 12 min
[*][b]Unplug after:[/b] 3 h
[/list]

[b]How sure[/b]
1024 vehicles like this were computed, not tested.

[b]Safety[/b]
[list]
[*]Go by maker's instructions, local codes, licensed practice. A changed vehicle no longer is the one that was tested.
[*]First run: wheels up, then with no child, then with a grown-up beside it and a hand on a switch that cuts the battery off.
[*]Charge with the charger made for this battery, and be there and awake. Never bridge what switches it off, fit a larger fuse or bring back a lithium battery drained flat.
[/list]

Full report: 2 cautions.
