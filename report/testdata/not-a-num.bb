[b]NO:[/b] no child may ride it like this: 2 dangers, 1 to put right.
[b]Why:[/b] No fuse.
[b]Next:[/b] Fit a fuse of 20 to 30 A within 178 mm of the pack.

[b]Figures that did not come out[/b]

[b]Why not[/b]
[list=1]
[*]Danger (fire): There is no fuse in the path.
[*]Danger (fire): Never put this charger on this pack.
[*]Likely, in 9 of 10 vehicles like this: The board (a flat plate of small soldered parts) was made for 12 V and sees 21 V. (A guess: what the child weighs.)
[*]Possibly, in 3 of 10: It is faster than a walking adult.
[*]Seldom, in 1 of 30: The pedal switch can melt shut.
[/list]

[b]In figures[/b]
Likely, and in brackets where 8 of 10 vehicles like this lie:

[list]
[*][b]Charged now:[/b] 85 %; what follows is for that
[*][b]Pedal down:[/b] 33 min; original 41 min
[*][b]With the pauses:[/b] 46 min
[*][b]As you asked:[/b] 45 min with the pauses: likely (7 of 10)
[*][b]Speed:[/b] 6.8 km/h (6.1 to 7.5); original 4.5 km/h; without the 18 km/h that was read
[*][b]Amps at a start:[/b] 88 A (71 to 118); original 46.5 A
[*][b]Distance:[/b] 3.1 km (2.3 to 4) in the 45 min asked
[/list]

[b]What to do first[/b]
[list=1]
[*]Fit a fuse of 20 to 30 A within 178 mm of the pack.
[*]Replace the board.
[/list]

[b]Look or measure next[/b]
[list=1]
[*]Current with the wheels blocked for one second. Clamp meter (it reads the amps in a wire from outside) on the red wire.
[/list]

[b]How sure[/b]
What was measured does not go together; the answer does without: top speed. 1024 vehicles like this were computed, not tested. It does not get going (1 of 12); the motors burn out on the way (1 of 50). 4 values assumed, first of all the gearing.

[b]Safety[/b]
[list]
[*]Go by maker's instructions, local codes, licensed practice. A changed vehicle no longer is the one that was tested.
[*]First run: wheels up, then with no child, then with a grown-up beside it and a hand on a switch that cuts the battery off.
[*]Charge with the charger made for this battery, and be there and awake. Never bridge what switches it off, fit a larger fuse or bring back a lithium battery drained flat.
[/list]

Full report: 1 more to watch, 2 cautions.
