[b]YES, WITH CARE:[/b] 0 things to watch. Not full, it lasts 33 min.
[b]Why:[/b] none found; the cautions still hold
[b]Next:[/b] read the cautions
[b]Under load:[/b] 33 min
[b]Assumed:[/b] 4 values; first of all the gearing
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Read the full report.
