using BenchmarkDotNet.Attributes;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Benchmarks;

/// <summary>One full combustion evaluation with uncertainty (target: 2 µs, nothing allocated), and the polynomial evaluations in it alone.</summary>
[MemoryDiagnoser]
public class CombustionBenchmarks
{
    static readonly FlueReading Usual = new(
        Fraction.FromPercent(7.6), Fraction.FromPartsPerMillion(12), Temperature.FromFahrenheit(328), Temperature.FromFahrenheit(70))
    {
        AirRelativeHumidity = Fraction.FromPercent(40),
        Uncertainty = FlueUncertainty.OfErrorLimits(Fraction.FromPartsPerMillion(12), Temperature.FromFahrenheit(328)),
    };

    static readonly FlueReading Condensing = Usual with { FlueTemperature = Temperature.FromFahrenheit(100) };

    static readonly Species[] Flue =
        [Species.CarbonDioxide, Species.CarbonMonoxide, Species.Oxygen, Species.Nitrogen, Species.Argon, Species.Water];

    /// <summary>The whole, not condensing.</summary>
    [Benchmark(Baseline = true)]
    public CombustionEvaluation Evaluation() => CombustionEvaluation.Of(Usual, Fuel.NaturalGas);

    /// <summary>The whole, condensing.</summary>
    [Benchmark]
    public CombustionEvaluation CondensingEvaluation() => CombustionEvaluation.Of(Condensing, Fuel.NaturalGas);

    /// <summary>Enthalpy and heat capacity as often as one evaluation needs them: six species at flue, air and 25 °C, five of the air at two temperatures.</summary>
    [Benchmark]
    public double Polynomials()
    {
        Uncertain flue = Uncertain.Input(Usual.FlueTemperature.Kelvin, 1.2, 2);
        Uncertain air = Uncertain.Input(Usual.AirTemperature.Kelvin, 0.6, 3);
        Uncertain reference = 298.15;
        double sum = 0;
        foreach (Species species in Flue)
        {
            sum += species.Heat.Enthalpy(flue).Value + species.Heat.Enthalpy(air).Value + species.Heat.Enthalpy(reference).Value;
            sum += species == Species.CarbonMonoxide ? 0 : species.Heat.Enthalpy(air).Value + species.Heat.Enthalpy(reference).Value;
        }
        return sum;
    }
}
