[b]NO:[/b] no child may ride it like this: 2 dangers, 1 to put right.
[b]Why:[/b] No fuse.
[b]Next:[/b] Fit a fuse of 20 to 30 A within 178 mm of the pack.
[b]Danger too:[/b] There is no fuse in the path.
[b]Danger too:[/b] Never put this charger on this pack.
[b]Why in full:[/b] No fuse: a short circuit burns the wire before anything opens, so that the loom burns.
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Read the full report.
