using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Everything that one combustion reading says, each value with its standard uncertainty.</summary>
/// <remarks>
/// Ideal gases; NASA 7-coefficient data; heating values at 25 °C; 100 % is the heat of the fuel, higher (gross) or lower (net) as named.
/// Losses of jacket, cycling, blower and draft are not in any of it, and none of it is a seasonal efficiency.
/// Where the reading cannot be right, <see cref="Refusal"/> says why and every value is unknown.
/// </remarks>
public readonly record struct CombustionEvaluation
{
    /// <summary>Which contribution of an <see cref="Uncertain"/> result belongs to which part of the reading.</summary>
    enum Input { Oxygen, CarbonMonoxide, FlueTemperature, AirTemperature, Pressure, AirHumidity }

    /// <summary>Why there is no result, one sentence; null when there is one.</summary>
    public string? Refusal { get; private init; }

    /// <summary>Actual dry air over dry air for complete combustion; 1.</summary>
    public Estimate Lambda { get; private init; }

    /// <summary>100 (lambda − 1); %.</summary>
    public Estimate ExcessAirPercent { get; private init; }

    /// <summary>Moles of dry air per mole of fuel.</summary>
    public Estimate DryAirMoles { get; private init; }

    /// <summary>Moles of dry flue gas per mole of fuel.</summary>
    public Estimate DryFlueMoles { get; private init; }

    /// <summary>Moles of wet flue gas per mole of fuel, before any condensation.</summary>
    public Estimate WetFlueMoles { get; private init; }

    /// <summary>Water vapour in the combustion air, mole fraction.</summary>
    public Estimate AirWaterFraction { get; private init; }

    /// <summary>CO2 that goes with the reading; % of the dry flue.</summary>
    public Estimate CarbonDioxidePercent { get; private init; }

    /// <summary>CO air-free; ppm. Null when the O2 is above <see cref="AirFree.LargestOxygenPercent"/>.</summary>
    public Estimate? CarbonMonoxideAirFreePpm { get; private init; }

    /// <summary>Water in the wet flue, mole fraction.</summary>
    public Estimate WaterFraction { get; private init; }

    /// <summary>Water dew point of the flue gas; °C.</summary>
    public Estimate DewPointCelsius { get; private init; }

    /// <summary>Sensible heat of the flue gas above the combustion air temperature, all water as vapour; % of the higher heating value.</summary>
    public Estimate SensibleLossPercent { get; private init; }

    /// <summary>The same above 25 °C; % of the higher heating value.</summary>
    public Estimate SensibleLossAbove25Percent { get; private init; }

    /// <summary>Heat that the combustion air brings above 25 °C; % of the higher heating value, negative for cold air.</summary>
    public Estimate AirSensiblePercent { get; private init; }

    /// <summary>Latent heat of the water formed from the fuel; % of the higher heating value. A property of the fuel alone.</summary>
    public Estimate LatentLossPercent { get; private init; }

    /// <summary>Heat of combustion left in the CO; % of the higher heating value.</summary>
    public Estimate CarbonMonoxideLossPercent { get; private init; }

    /// <summary>Whether the flue temperature is below the dew point.</summary>
    public bool IsCondensing { get; private init; }

    /// <summary>Condensate in equilibrium; moles per mole of fuel.</summary>
    public Estimate CondensateMoles { get; private init; }

    /// <summary>Condensate as a share of the water in the flue; 0 to 1.</summary>
    public Estimate CondensateFraction { get; private init; }

    /// <summary>Condensate per fuel; kg/kg.</summary>
    public Estimate CondensateMassRatio { get; private init; }

    /// <summary>Condensate times the heat of vaporisation at 25 °C; % of the higher heating value.</summary>
    public Estimate LatentRecoveredPercent { get; private init; }

    /// <summary>Efficiency above air: lower heating value − sensible above air − CO + latent recovered at 25 °C; % of the higher heating value.</summary>
    /// <remarks>The trade's convention.</remarks>
    public Estimate EfficiencyPercent { get; private init; }

    /// <summary>The same heat; % of the lower heating value.</summary>
    public Estimate EfficiencyLowerPercent { get; private init; }

    /// <summary>As <see cref="EfficiencyPercent"/>, but the condensed part takes away its liquid sensible heat instead of that of vapour.</summary>
    public Estimate EfficiencyHotCondensatePercent { get; private init; }

    /// <summary>First law: fuel at 25 °C and moist air at its own temperature in, flue gas and liquid at flue temperature out; % of the higher heating value.</summary>
    public Estimate EfficiencyFirstLawPercent { get; private init; }

    /// <summary>The same heat; % of the lower heating value.</summary>
    public Estimate EfficiencyFirstLawLowerPercent { get; private init; }

    /// <summary>Evaluates a reading with conventional dry air (20.95 % O2).</summary>
    public static CombustionEvaluation Of(in FlueReading reading, Fuel fuel) => Of(reading, fuel, DryAir.Conventional);

    /// <summary>Evaluates a reading.</summary>
    /// <param name="reading">What was measured.</param>
    /// <param name="fuel">What burns.</param>
    /// <param name="air">Composition of the dry combustion air.</param>
    public static CombustionEvaluation Of(in FlueReading reading, Fuel fuel, DryAir air)
    {
        if (ReadingCheck.WhyImpossible(reading, air) is string refusal)
        {
            return Refused(refusal);
        }
        FlueUncertainty u = reading.Uncertainty;
        Uncertain oxygen = In(reading.Oxygen.Value, u.Oxygen.Value, Input.Oxygen);
        Uncertain monoxide = In(reading.CarbonMonoxide.Value, u.CarbonMonoxide.Value, Input.CarbonMonoxide);
        Uncertain flueKelvin = In(reading.FlueTemperature.Kelvin, u.FlueTemperature.Kelvin, Input.FlueTemperature);
        Uncertain airKelvin = In(reading.AirTemperature.Kelvin, u.AirTemperature.Kelvin, Input.AirTemperature);
        Uncertain pressure = In(reading.Pressure.Pascals, u.Pressure.Pascals, Input.Pressure);
        Uncertain airWater = In(reading.AirRelativeHumidity.Value, u.AirRelativeHumidity.Value, Input.AirHumidity)
            * SaturationLine.Pressure(airKelvin) / pressure;
        if (airWater.Value >= 1)
        {
            return Refused("The combustion air would be nothing but water vapour; check its temperature and humidity.");
        }

        Uncertain waterPerDryAir = airWater / (1 - airWater);
        FlueGas flue = FlueGas.FromOxygen(fuel, air, oxygen, monoxide, waterPerDryAir);
        return flue.CarbonDioxide.Value < 0
            ? Refused("There is more CO than the carbon of the fuel can make; check the fuel and the CO.")
            : Evaluate(flue, fuel, air, new(oxygen, monoxide, flueKelvin, airKelvin, pressure, airWater, waterPerDryAir));
    }

    readonly ref struct Inputs(
        Uncertain oxygen, Uncertain monoxide, Uncertain flueKelvin, Uncertain airKelvin, Uncertain pressure, Uncertain airWater, Uncertain waterPerDryAir)
    {
        public readonly Uncertain Oxygen = oxygen, Monoxide = monoxide, FlueKelvin = flueKelvin, AirKelvin = airKelvin,
            Pressure = pressure, AirWater = airWater, WaterPerDryAir = waterPerDryAir;
    }

    static CombustionEvaluation Evaluate(in FlueGas flue, Fuel fuel, DryAir air, in Inputs given)
    {
        Uncertain dewPoint = Condensation.DewPoint(flue, given.Pressure);
        Uncertain condensate = Condensation.Amount(flue, given.FlueKelvin, given.Pressure, dewPoint.Value);
        Uncertain lambda = flue.DryAir / Stoichiometry.Of(fuel, air).DryAir;
        Losses losses = Losses.Of(flue, air, given.FlueKelvin, given.AirKelvin, given.WaterPerDryAir, condensate);
        double percent = 100 / fuel.HigherHeatingValue;
        double percentLower = 100 / fuel.LowerHeatingValue;
        Uncertain aboveAir = losses.HeatAboveAir(fuel);
        Uncertain firstLaw = losses.HeatFirstLaw(fuel);
        return new()
        {
            Lambda = lambda.Estimate,
            ExcessAirPercent = (100 * (lambda - 1)).Estimate,
            DryAirMoles = flue.DryAir.Estimate,
            DryFlueMoles = flue.Dry.Estimate,
            WetFlueMoles = flue.Wet.Estimate,
            AirWaterFraction = given.AirWater.Estimate,
            CarbonDioxidePercent = (100 * (flue.CarbonDioxide / flue.Dry)).Estimate,
            CarbonMonoxideAirFreePpm = AirFree.Guarded(1e6 * given.Monoxide, 100 * given.Oxygen),
            WaterFraction = Condensation.WaterFraction(flue).Estimate,
            DewPointCelsius = (dewPoint - 273.15).Estimate,
            SensibleLossPercent = (percent * losses.SensibleAboveAir).Estimate,
            SensibleLossAbove25Percent = (percent * losses.SensibleAbove25).Estimate,
            AirSensiblePercent = (percent * losses.AirSensible).Estimate,
            LatentLossPercent = Estimate.Exactly(percent * (fuel.HigherHeatingValue - fuel.LowerHeatingValue)),
            CarbonMonoxideLossPercent = (percent * losses.CarbonMonoxide).Estimate,
            IsCondensing = given.FlueKelvin.Value < dewPoint.Value,
            CondensateMoles = condensate.Estimate,
            CondensateFraction = (condensate / flue.Water).Estimate,
            CondensateMassRatio = (Species.Water.MolarMass / fuel.MolarMass * condensate).Estimate,
            LatentRecoveredPercent = (percent * losses.LatentRecovered25).Estimate,
            EfficiencyPercent = (percent * aboveAir).Estimate,
            EfficiencyLowerPercent = (percentLower * aboveAir).Estimate,
            EfficiencyHotCondensatePercent = (percent * losses.HeatHotCondensate(fuel)).Estimate,
            EfficiencyFirstLawPercent = (percent * firstLaw).Estimate,
            EfficiencyFirstLawLowerPercent = (percentLower * firstLaw).Estimate,
        };
    }

    static Uncertain In(double value, double u, Input input) => Uncertain.Input(value, u, (int)input);

    // Every estimate that is not set is unknown.
    static CombustionEvaluation Refused(string why) => new() { Refusal = why };
}
