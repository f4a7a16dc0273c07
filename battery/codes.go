package battery

// Codes returns the codes of all findings that this package makes.
func Codes() []string {
	return []string{
		CodeCurrentLasting, CodeCurrentPeak, CodeTooHot, CodeTooCold,
		CodeLabelMaxVolts, CodeLabelUnclear,
		CodeParallelMixedChemistry, CodeParallelEqualising, CodeSeriesUnequalCharge, CodeSeriesElectronics, CodeUnlikePacks,
	}
}
