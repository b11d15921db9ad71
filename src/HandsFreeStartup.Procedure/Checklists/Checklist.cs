using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Serialization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>What passing over a limit means.</summary>
public enum LimitWeight
{
    /// <summary>Nothing is signed while a value lies outside.</summary>
    Must,
    /// <summary>A value outside needs a reason and stays as an exception.</summary>
    Ought,
}

/// <summary>A limit as a file of the user declares it, in the unit written there.</summary>
/// <param name="Name">What it limits, for instance <c>manifold_pressure/high</c> or <c>co_air_free</c>.</param>
/// <param name="Lower">Lowest permitted value, or null.</param>
/// <param name="Upper">Highest permitted value, or null.</param>
/// <param name="UnitSymbol">Unit of both, as in <see cref="Unit.Symbol"/>.</param>
/// <param name="Source">Who sets it: rating plate, maker's instructions, a standard with its section, or <c>common practice, no source</c>. Never empty.</param>
/// <param name="IsSafety">Whether a value that is not proven to be inside must not pass.</param>
public sealed record DeclaredLimit(string Name, decimal? Lower, decimal? Upper, string UnitSymbol, string Source, bool IsSafety) : ITold
{
    /// <summary>Limits of what can burn, poison or break: no file can make less of them.</summary>
    static readonly ImmutableArray<string> AlwaysMust =
    [
        ResultId.CoAirFree, FieldId.FlueCo, FieldId.RoomCo, FieldId.Draft, FieldId.InletPressure, FieldId.ManifoldPressure, ResultId.ReplaceValve, ResultId.InputRate, ResultId.TemperatureRise, FieldId.FlueTemperature, FieldId.SupplyTemperature,
    ];

    /// <summary>Carbon monoxide is never compared as it stands, whoever states its limit.</summary>
    static readonly ImmutableArray<string> AlwaysSafety = [ResultId.CoAirFree, FieldId.FlueCo, FieldId.RoomCo];

    /// <summary>Whether a value that is not proven to be inside must not pass; always so for carbon monoxide.</summary>
    public bool IsSafety { get; init; } = IsSafety || AlwaysSafety.Contains(Name.Split('/')[0]);

    /// <summary>The weight as written; null where the source decides.</summary>
    public LimitWeight? Weight { get; init; }

    /// <summary>Why the limit is strange for this furnace and stands all the same; null where it is not strange.</summary>
    public string? Unusual { get; init; }

    /// <summary>Whether the weight of what it limits is not for a file to lessen.</summary>
    [JsonIgnore]
    public bool IsAlwaysMust => IsSafety || AlwaysMust.Contains(Name.Split('/')[0]);

    /// <summary>What passing over it means: a must where a plate, a maker or a standard states it or where it can hurt, an ought where only practice does.</summary>
    [JsonIgnore]
    public LimitWeight Carries => IsAlwaysMust ? LimitWeight.Must
        : Weight ?? (Source.Contains("common practice", StringComparison.OrdinalIgnoreCase) ? LimitWeight.Ought : LimitWeight.Must);

    /// <summary>The limit as the calculation judges by it, in its own unit.</summary>
    public Limit ToJudge() => new((double?)Lower, (double?)Upper, Source, IsSafety);

    /// <summary>The limit in another unit of the same quantity, not rounded.</summary>
    public DeclaredLimit In(Unit? unit, bool isDifference = false) =>
        unit is null || unit.Symbol == UnitSymbol || Unit.Find(UnitSymbol) is not { } own ? this : this with
        {
            Lower = Lower is { } lower ? own.Convert(lower, unit, isDifference) : null,
            Upper = Upper is { } upper ? own.Convert(upper, unit, isDifference) : null,
            UnitSymbol = unit.Symbol,
        };

    /// <summary>As shown: "3.2 to 3.8 in. w.c.", "at most 400 ppm", "at least 0.5 µA".</summary>
    public string Text => Part.Shown;

    MessagePart ITold.Told => Part;

    MessagePart.Limit Part => new(Lower is { } lower ? Shown(lower) : "", Upper is { } upper ? Shown(upper) : "", UnitSymbol);

    /// <summary>A bound as written; a converted one, which has no end, with two decimals more than its whole part needs.</summary>
    public static string Shown(decimal bound) => bound.Scale <= 4
        ? bound.ToString(CultureInfo.InvariantCulture)
        : bound.ToString(Math.Abs(bound) >= 100 ? "0" : Math.Abs(bound) >= 1 ? "0.##" : "0.###", CultureInfo.InvariantCulture);
}

/// <summary>A procedure as its author wrote it, before it meets an appliance and a site.</summary>
/// <param name="Id">Stable name.</param>
/// <param name="Version">Version of the procedure.</param>
/// <param name="Title">As shown.</param>
/// <param name="Steps">In their order.</param>
/// <param name="Limits">Limits that do not depend on the appliance, such as the CO tiers of rooms.</param>
public sealed record Checklist(string Id, string Version, string Title, ImmutableArray<Step> Steps, ImmutableArray<DeclaredLimit> Limits)
{
    /// <summary>What may bring a technician to the furnace, the usual one first; empty where the procedure knows only one.</summary>
    public ImmutableArray<Occasion> Occasions { get; init; } = [];
}

/// <summary>What brings a technician to the furnace: new, repaired, before the season.</summary>
/// <param name="Id">Stable name.</param>
/// <param name="Title">As shown.</param>
public sealed record Occasion(string Id, string Title);

/// <summary>What the rating plate and the maker's instructions state for one furnace.</summary>
/// <param name="Id">Stable name.</param>
/// <param name="Title">As shown; no maker's name is needed.</param>
/// <param name="FuelId">A fuel known to the calculation core, for instance <c>natural-gas</c>.</param>
/// <param name="Stages">Number of firing stages that are measured: 1, or 2 (lowest and highest fire of a modulating furnace too).</param>
/// <param name="TurnToRaise">Which way the regulator screw raises the manifold pressure: "clockwise" or "counter-clockwise", as the maker says.</param>
/// <param name="SealFor">Material that seals the test hole, as the maker says.</param>
/// <param name="Limits">Every limit with its source.</param>
public sealed record ApplianceSheet(
    string Id, string Title, string FuelId, int Stages, string TurnToRaise, string SealFor, ImmutableArray<DeclaredLimit> Limits)
{
    /// <summary>Whether it modulates between lowest and highest fire.</summary>
    public bool IsModulating { get; init; }

    /// <summary>Category of venting, or null where the sheet does not state it.</summary>
    public VentCategory? Venting { get; init; }

    /// <summary>Whether it condenses, or null where the sheet does not state it.</summary>
    public bool? IsCondensing { get; init; }

    /// <summary>What moves the exhaust, or null where the sheet does not state it; a vent under pressure has a fan.</summary>
    public DraftBy? DraftBy { get; init; }

    /// <summary>Input at high fire that the plate states for sea level, Btu/h; null where the sheet does not state it.</summary>
    public decimal? SeaLevelInput { get; init; }

    /// <summary>Whether it burns liquefied gas, propane or butane, which comes at a higher pressure.</summary>
    [JsonIgnore]
    public bool IsLiquefied => FuelId.Contains("propan", StringComparison.Ordinal) || FuelId.Contains("butan", StringComparison.Ordinal) || FuelId.StartsWith("lpg", StringComparison.Ordinal);

    /// <summary>What decides over the branches of a checklist.</summary>
    [JsonIgnore]
    public Branch Branch => new(IsModulating ? Firing.Modulating : Stages == 1 ? Firing.SingleStage : Firing.TwoStage, FuelId, Venting, IsCondensing)
    {
        DraftBy = DraftBy ?? (Venting is VentCategory.III or VentCategory.IV ? Checklists.DraftBy.Fan : null),
    };
}

/// <summary>How well an instrument reads one field.</summary>
/// <param name="FieldId">Which field.</param>
/// <param name="Expanded">Expanded uncertainty (k = 2), in the field's unit.</param>
/// <param name="ExpandedPercent">Expanded uncertainty in percent of the reading; the larger of both counts.</param>
/// <param name="Source">Who says so.</param>
public sealed record InstrumentUncertainty(string FieldId, decimal Expanded, decimal ExpandedPercent, string Source)
{
    /// <summary>Step of the display, in the field's unit; 0 where the expanded uncertainty holds it already.</summary>
    public decimal Resolution { get; init; }

    /// <summary>Largest change in a year since the calibration, in the field's unit; 0 where the expanded uncertainty holds it already.</summary>
    public decimal DriftPerYear { get; init; }

    /// <summary>Day of the last calibration; null where the drift does not ask for it.</summary>
    public DateOnly? Calibrated { get; init; }

    /// <summary>Expanded uncertainty (k = 2) of a reading, in the unit of the reading: data sheet, display and drift together. Percents are those of the number shown.</summary>
    /// <remarks>A display that shows steps of d adds d/√12; a drift of at most a adds a/√3 (JCGM 100:2008, 4.3.7 and F.2.2.1; values from memory).</remarks>
    /// <param name="value">The reading, in <paramref name="unit"/>.</param>
    /// <param name="unit">In which the instrument shows it.</param>
    /// <param name="day">When it was read.</param>
    public decimal ExpandedOf(decimal value, Unit unit, DateOnly? day)
    {
        Unit own = Fields.Find(FieldId)!.Unit;
        decimal stated = Math.Max(own.Convert(Expanded, unit, isDifference: true), Math.Abs(value) * ExpandedPercent / 100);
        if (Resolution == 0 && DriftPerYear == 0)
        {
            return stated;
        }

        double years = day is { } today && Calibrated is { } calibrated ? Math.Max(0, today.DayNumber - calibrated.DayNumber) / 365.25 : 0;
        double sheet = (double)stated / Estimate.CoverageFactor;
        double rest = own.Convert(new InstrumentError(0, 0, (double)Resolution, (double)DriftPerYear, Source).StandardUncertainty(0, years), unit, isDifference: true);
        return Math.Round((decimal)(Estimate.CoverageFactor * Math.Sqrt(sheet * sheet + rest * rest)), 6);
    }
}

/// <summary>Where, for whom and with which instruments.</summary>
/// <param name="Id">Stable name.</param>
/// <param name="Title">As shown.</param>
/// <param name="Customer">Who receives the customer's copy.</param>
/// <param name="Address">Where the appliance stands.</param>
/// <param name="AltitudeFeet">Above sea level.</param>
/// <param name="Rooms">Rooms of the CO walk, in walking order.</param>
/// <param name="Instruments">How well the instruments read.</param>
public sealed record Site(
    string Id, string Title, string Customer, string Address, decimal AltitudeFeet,
    ImmutableArray<string> Rooms, ImmutableArray<InstrumentUncertainty> Instruments)
{
    /// <summary>Volume of one turn of the gas meter's test dial, ft³; null where it is not stated.</summary>
    public decimal? MeterDialCubicFeet { get; init; }

    /// <summary>Gross heating value of the gas as it is metered here, Btu/ft³, as the supplier states it; null where it is not stated.</summary>
    public decimal? HeatingValue { get; init; }

    /// <summary>Expanded uncertainty (k = 2) of the heating value in percent; where the site does not state it, 2 (common practice, no source).</summary>
    public decimal HeatingValuePercent { get; init; } = 2;

    /// <summary>How far the cells of the analyzer err together, −1 to 1, as its certificate states it; 0 where it states nothing.</summary>
    public decimal AnalyzerCorrelation { get; init; }

    /// <summary>Hours a year that the burner runs, by the owner's estimate; null where nobody asked.</summary>
    public decimal? BurningHours { get; init; }

    /// <summary>Expanded uncertainty (k = 2) of a value of a field, in the field's unit; null where no instrument is named for it.</summary>
    /// <param name="field">In the unit in which the value was read.</param>
    /// <param name="value">The value.</param>
    /// <param name="day">When it was read.</param>
    public decimal? ExpandedOf(Field field, decimal value, DateOnly? day) =>
        Instruments.FirstOrDefault(instrument => instrument.FieldId == field.Id)?.ExpandedOf(value, field.Unit, day);
}
