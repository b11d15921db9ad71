using FsCheck;
using FsCheck.Fluent;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Tests.Support;

/// <summary>A number from 0 to 1.</summary>
public sealed record Share(double Value);

/// <summary>A number of any usual size and sign.</summary>
public sealed record AnyNumber(double Value);

/// <summary>A fuel with carbon and a reading that it could give.</summary>
public sealed record AnyCase(Fuel Fuel, FlueReading Reading);

/// <summary>Generators of fuels and readings, within the ranges of the job.</summary>
public static class Readings
{
    static readonly Gen<double> Shares = Gen.Choose(0, 1_000_000).Select(n => n / 1e6);

    static readonly Gen<Fuel> Fuels =
        from methane in Shares
        from ethane in Shares
        from propane in Shares
        from butane in Shares
        from hydrogen in Shares
        from inert in Shares
        let sum = methane + 0.01 + ethane + propane + butane + hydrogen / 2 + inert / 4
        select Fuel.FromComposition("any", "any",
            new(Species.Methane, (methane + 0.01) / sum), new(Species.Ethane, ethane / sum), new(Species.Propane, propane / sum),
            new(Species.NormalButane, butane / sum), new(Species.Hydrogen, hydrogen / 2 / sum), new(Species.Nitrogen, inert / 8 / sum),
            new(Species.CarbonDioxide, inert / 8 / sum));

    static readonly Gen<FlueReading> Reading =
        from oxygen in Shares
        from monoxide in Shares
        from flue in Shares
        from air in Shares
        from humidity in Shares
        from pressure in Shares
        select new FlueReading(new(0.15 * oxygen), new(0.004 * monoxide), Temperature.FromCelsius(35 + 400 * flue), Temperature.FromCelsius(-20 + 50 * air))
        {
            AirRelativeHumidity = new(humidity),
            Pressure = new(70000 + 35000 * pressure),
        };

    public static Arbitrary<Share> ArbitraryShare() => Shares.Select(value => new Share(value)).ToArbitrary();

    public static Arbitrary<AnyNumber> ArbitraryNumber() =>
        (from mantissa in Gen.Choose(-1_000_000, 1_000_000) from exponent in Gen.Choose(-3, 3) select new AnyNumber(mantissa * 1e-3 * Math.Pow(10, exponent))).ToArbitrary();

    public static Arbitrary<AnyCase> ArbitraryCase() =>
        (from fuel in Fuels from reading in Reading select new AnyCase(fuel, reading)).ToArbitrary();
}
