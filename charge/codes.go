package charge

// Codes returns the codes of all findings that this package makes.
func Codes() []string {
	return []string{
		CodePurposeUnknown, CodeWrongChemistry, CodeForeignCharger, CodePowerSupply,
		CodeVehicleJack, CodeInVehicle, CodeChargedInSeries, CodeChargedInParallel,
		CodeGivesAC, CodeOutputUnknown, CodePolarityReversed, CodePolarityUnchecked,
		CodeEndVoltsUnknown, CodeVoltsTooHigh, CodeVoltsTooLow, CodeVoltsNotHeld,
		CodeCurrentUnknown, CodeCurrentTooHigh, CodeSlow,
		CodeTimer, CodeStopUnknown, CodeNeverStops,
		CodeNeverRecharge, CodeTooLow, CodeDeeplyFlat, CodeDeadBlock, CodeOvercharged, CodeFallsFar,
		CodeTooCold, CodeTooHot, CodeSlowInCold, CodePlaceNoGood,
		CodeNeverFull, CodeHeatsPack,
		CodeStoredNotFull, CodeStoredTooFull, CodeStoredRunsEmpty, CodeStoredNeedsTopUp, CodeStoredConnected, CodeStoredMayFreeze,
		CodeOldFlat, CodeOldWorn, CodeOldDeadCell, CodeOldContact,
	}
}
