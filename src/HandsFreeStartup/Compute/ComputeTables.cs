using System.Collections.Immutable;
using HandsFreeStartup.Compute.Tables;

namespace HandsFreeStartup.Compute;

/// <summary>Every table that <c>compute</c> knows. A new one is one file in Tables/ and one entry here.</summary>
static class ComputeTables
{
    public static ImmutableArray<ComputeTable> All { get; } =
    [
        CombustionTable.Build(), HeatingValuesTable.Build(), SaturationTable.Build(), DewPointTable.Build(), MoistAirTable.Build(), GasAtMeterTable.Build(),
        AirFreeUncertaintyTable.Build(), SiegertUncertaintyTable.Build(), GuardedAcceptanceTable.Build(), StandardAtmosphereTable.Build(), AdjustmentTable.Build(),
    ];
}
