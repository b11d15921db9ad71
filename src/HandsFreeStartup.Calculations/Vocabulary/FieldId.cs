namespace HandsFreeStartup.Calculations.Vocabulary;

/// <summary>Ids of what is read from an instrument and said. They stand in files and in the log and never change; nowhere else is one written as text.</summary>
public static class FieldId
{
    /// <summary>Oxygen, % dry.</summary>
    public const string Oxygen = "oxygen";

    /// <summary>Carbon dioxide, % dry.</summary>
    public const string CarbonDioxide = "carbon_dioxide";

    /// <summary>Carbon monoxide in the flue as read, ppm.</summary>
    public const string FlueCo = "flue_co";

    /// <summary>Carbon monoxide in a room, ppm.</summary>
    public const string RoomCo = "room_co";

    /// <summary>Oxides of nitrogen in the flue as read, ppm dry.</summary>
    public const string Nox = "nox";

    /// <summary>Temperature of the flue gas.</summary>
    public const string FlueTemperature = "flue_temperature";

    /// <summary>Temperature of the combustion air.</summary>
    public const string AirTemperature = "air_temperature";

    /// <summary>Draft.</summary>
    public const string Draft = "draft";

    /// <summary>Pressure of the combustion zone against outdoors with everything off.</summary>
    public const string ZoneBaseline = "zone_baseline";

    /// <summary>Pressure of the combustion zone against outdoors in the worst case.</summary>
    public const string ZoneWorst = "zone_worst";

    /// <summary>Gas pressure at the inlet of the valve.</summary>
    public const string InletPressure = "inlet_pressure";

    /// <summary>Gas pressure at the manifold.</summary>
    public const string ManifoldPressure = "manifold_pressure";

    /// <summary>Seconds for one turn of the test dial.</summary>
    public const string MeterTime = "meter_time";

    /// <summary>Temperature of the supply air.</summary>
    public const string SupplyTemperature = "supply_temperature";

    /// <summary>Temperature of the return air.</summary>
    public const string ReturnTemperature = "return_temperature";

    /// <summary>Static pressure of the supply.</summary>
    public const string SupplyStatic = "supply_static";

    /// <summary>Static pressure of the return.</summary>
    public const string ReturnStatic = "return_static";

    /// <summary>Flame current.</summary>
    public const string FlameCurrent = "flame_current";

    /// <summary>Line voltage.</summary>
    public const string LineVoltage = "line_voltage";

    /// <summary>Control voltage.</summary>
    public const string ControlVoltage = "control_voltage";

    /// <summary>Lower bound of a limit, said from the plate.</summary>
    public const string LimitLower = "limit_lower";

    /// <summary>Upper bound of a limit, said from the plate.</summary>
    public const string LimitUpper = "limit_upper";
}
