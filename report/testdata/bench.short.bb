[b]Verdict:[/b] WATCH: works as a bench load
[b]Risk:[/b] none found; the cautions still hold
[b]Next:[/b] read the cautions
[b]Lasts:[/b] 33 min under this load
[b]Assumed:[/b] 4 values; first of all gears.ratio
[b]Safety:[/b] The maker's instructions, local codes and licensed practice come first. A changed vehicle no longer is the one that was tested. Try it without a child. Read the full report.
