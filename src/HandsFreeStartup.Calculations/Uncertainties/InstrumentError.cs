using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>One part of the uncertainty of a reading.</summary>
/// <param name="Name">Data sheet, resolution, drift, or scatter.</param>
/// <param name="StandardUncertainty">u, in the unit of the reading.</param>
public readonly record struct ErrorPart(string Name, double StandardUncertainty);

/// <summary>What the data sheet of an instrument says about the error of a reading, in the unit of the reading.</summary>
/// <remarks>
/// Limits and drift are half widths of rectangular distributions, u = a/√3; a display that shows steps of d adds d/√12; the scatter of repeated readings adds as it is
/// (JCGM 100:2008, 4.3.7 and F.2.2.1; values from memory). The parts are independent.
/// </remarks>
/// <param name="Limit">Largest error stated, whatever the reading.</param>
/// <param name="RelativeLimit">Largest error stated as a fraction of the reading; the greater of the two counts.</param>
/// <param name="Resolution">Step of the display.</param>
/// <param name="DriftPerYear">Largest change in a year since the calibration.</param>
/// <param name="Source">Data sheet, certificate, or standard.</param>
public sealed record InstrumentError(double Limit, double RelativeLimit, double Resolution, double DriftPerYear, string Source)
{
    const string Class = "EN 50379-2, value from memory, low confidence";

    /// <summary>Error that a stop watch started and stopped by a thumb adds to a time, s: two reactions of 0.2 s at most; common practice, no source.</summary>
    public static InstrumentError HandTiming { get; } = new(0.4, 0, 0.1, 0, "common practice, no source");

    /// <summary>u of one turn of a meter's test dial, in turns: its hand is seen to a hundredth of a turn where the turn begins and where it ends; common practice, no source.</summary>
    public static double DialReading { get; } = Math.Sqrt(2) * new InstrumentError(0, 0, 0.01, 0, "").StandardUncertainty(1);

    /// <summary>u of one reading out of two sets that agree, from their difference alone: |a − b|/√2 (JCGM 100:2008, 4.2; value from memory).</summary>
    public static double ScatterOfTwo(double first, double second) => Math.Abs(first - second) / Math.Sqrt(2);

    /// <summary>Error of the class of analyzers for a field of the record; null for a field that the class does not name.</summary>
    public static InstrumentError? OfClass(string field) => field switch
    {
        FieldId.Oxygen or FieldId.CarbonDioxide => new(0.3, 0, 0.1, 0, Class),
        FieldId.FlueCo or FieldId.Nox => new(20, 0.05, 1, 0, Class),
        FieldId.FlueTemperature => new(3.6, 0.015, 1, 0, Class),
        FieldId.AirTemperature or FieldId.SupplyTemperature or FieldId.ReturnTemperature => new(1.8, 0, 1, 0, Class),
        FieldId.MeterTime => HandTiming,
        _ => null,
    };

    /// <summary>The parts, none of them zero.</summary>
    /// <param name="value">The reading.</param>
    /// <param name="yearsSinceCalibration">0 or above.</param>
    /// <param name="scatter">Standard deviation of the mean of repeated readings.</param>
    public ImmutableArray<ErrorPart> Parts(double value, double yearsSinceCalibration = 0, double scatter = 0)
    {
        ImmutableArray<ErrorPart> all =
        [
            new("data sheet", Math.Max(Limit, RelativeLimit * Math.Abs(value)) / Math.Sqrt(3)),
            new("resolution", Resolution / Math.Sqrt(12)),
            new("drift", DriftPerYear * yearsSinceCalibration / Math.Sqrt(3)),
            new("scatter", scatter),
        ];
        return [.. all.Where(part => part.StandardUncertainty > 0)];
    }

    /// <summary>u of a reading, all parts together.</summary>
    /// <param name="value">The reading.</param>
    /// <param name="yearsSinceCalibration">0 or above.</param>
    /// <param name="scatter">Standard deviation of the mean of repeated readings.</param>
    public double StandardUncertainty(double value, double yearsSinceCalibration = 0, double scatter = 0) =>
        Math.Sqrt(Parts(value, yearsSinceCalibration, scatter).Sum(part => part.StandardUncertainty * part.StandardUncertainty));
}
