namespace HandsFreeStartup.Calculations.Vocabulary;

/// <summary>Ids of what is worked out and of limits that have a name of their own. They stand in files and in the log and never change; nowhere else is one written as text.</summary>
public static class ResultId
{
    /// <summary>Input rate by the meter.</summary>
    public const string InputRate = "input_rate";

    /// <summary>Carbon monoxide without the air that dilutes it.</summary>
    public const string CoAirFree = "co_air_free";

    /// <summary>Excess air.</summary>
    public const string ExcessAir = "excess_air";

    /// <summary>Efficiency on the higher heating value.</summary>
    public const string Efficiency = "efficiency";

    /// <summary>The same heat on the lower heating value.</summary>
    public const string EfficiencyNet = "efficiency_net";

    /// <summary>Efficiency by the first law, on the higher heating value.</summary>
    public const string EfficiencyFirstLaw = "efficiency_first_law";

    /// <summary>The carbon dioxide that goes with the oxygen.</summary>
    public const string CarbonDioxideCalculated = "carbon_dioxide_calculated";

    /// <summary>Dew point of the flue gas.</summary>
    public const string DewPoint = "dew_point";

    /// <summary>Fuel factor.</summary>
    public const string FuelFactor = "fuel_factor";

    /// <summary>Oxygen that an adjustment lets expect.</summary>
    public const string OxygenExpected = "oxygen_expected";

    /// <summary>Temperature rise of the air.</summary>
    public const string TemperatureRise = "temperature_rise";

    /// <summary>Air flow over the heat exchanger.</summary>
    public const string AirFlow = "air_flow";

    /// <summary>Gas in an hour of burning.</summary>
    public const string GasPerHour = "gas_per_hour";

    /// <summary>Gas in a year at the owner's hours.</summary>
    public const string GasPerYear = "gas_per_year";

    /// <summary>High over low input.</summary>
    public const string Turndown = "turndown";

    /// <summary>Largest input that the altitude leaves.</summary>
    public const string AltitudeInput = "altitude_input";

    /// <summary>NOx at the reference of 3 % oxygen.</summary>
    public const string NoxReference = "nox_reference";

    /// <summary>NOx for each kWh of gas burned.</summary>
    public const string NoxPerHeat = "nox_per_heat";

    /// <summary>How far the worst case pulls the combustion zone below its baseline.</summary>
    public const string Depressurization = "depressurization";

    /// <summary>External static pressure.</summary>
    public const string ExternalStatic = "external_static";

    /// <summary>The manifold pressure above which the valve is to be replaced; no result, but a limit by this name.</summary>
    public const string ReplaceValve = "replace_valve";
}
