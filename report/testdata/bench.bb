[b]YES, WITH CARE:[/b] 0 things to watch. Not full, it lasts 33 min.
[b]Why:[/b] none found; the cautions still hold
[b]Next:[/b] read the cautions

[b]Bench discharge at 5 A[/b]

[b]In figures[/b]
Likely, and in brackets where 8 of 10 setups like this lie:

[list]
[*][b]Charged now:[/b] 85 %; what follows is for that
[*][b]Under load:[/b] 33 min
[*][b]As you asked:[/b] 45 min with the pauses: yes
[/list]

[b]Look or measure next[/b]
[list=1]
[*]Current with the wheels blocked for one second. Clamp meter (it reads the amps in a wire from outside) on the red wire.
[/list]

[b]How sure[/b]
1024 setups like this were computed, not tested. 4 values assumed, first of all the gearing.

[b]Safety[/b]
[list]
[*]Go by maker's instructions, local codes, licensed practice. A changed vehicle no longer is the one that was tested.
[*]Stay beside it while it runs, on something that does not burn, with a hand on what cuts the battery off.
[*]Charge with the charger made for this battery, and be there and awake. Never bridge what switches it off, fit a larger fuse or bring back a lithium battery drained flat.
[/list]

Full report: 3 cautions.
