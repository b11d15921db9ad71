using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Emissions;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>What the flue gas says: CO air-free, excess air, CO2, dew point, efficiency, fuel factor, NOx.</summary>
static class FlueExplanations
{
    static readonly NeededInput Oxygen = new(FieldId.Oxygen, "%"), Monoxide = new(FieldId.FlueCo, "ppm"), Dioxide = new(FieldId.CarbonDioxide, "%"), Nitrogen = new(FieldId.Nox, "ppm");

    const string OxygenBefore = "oxygen_before", PressureBefore = "manifold_before", PressureAfter = "manifold_after";

    /// <summary>Fuels for which 40 CFR 60, Method 19 names Fd; for others it is worked out from the composition.</summary>
    static ImmutableArray<string> Regulated { get; } = ["natural-gas", "propane", "n-butane"];

    public static ImmutableArray<Explanation> All { get; } =
    [
        new(ResultId.CoAirFree, [Oxygen, Monoxide], AirFreeMonoxide),
        new(ResultId.FuelFactor, [Oxygen, Dioxide, Monoxide], Factor),
        new(ResultId.ExcessAir, [Oxygen, Monoxide], (given, limit) =>
        {
            FlueWork work = new(given);
            return work.IsPossible ? work.Sheet.Close(
                new(ResultId.ExcessAir, "EA", "excess air", "%", 1, FlueWork.Balance), work.ExcessAir(), limit) : null;
        }),
        new(ResultId.CarbonDioxideCalculated, [Oxygen, Monoxide], (given, limit) =>
        {
            FlueWork work = new(given);
            return work.IsPossible ? work.Sheet.Close(
                new(ResultId.CarbonDioxideCalculated, "CO2", "CO2 of the dry flue that goes with the O2", "%", 2, FlueWork.Balance), work.CarbonDioxidePercent(), limit) : null;
        }),
        new(ResultId.DewPoint, [Oxygen, Monoxide, .. FlueWork.OfAir], (given, limit) =>
        {
            FlueWork work = new(given);
            return work.IsPossible ? work.Sheet.Close(
                new(ResultId.DewPoint, "dew", "water dew point of the flue gas", "°F", 1, FlueWork.Balance + "; saturation by IAPWS-IF97", CannotBeNegative: false),
                work.DewPoint(), limit) : null;
        }),
        Efficiency(ResultId.Efficiency, "efficiency above combustion air, of the higher heating value: the trade's combustion efficiency", heat => heat.AboveAir(), higher: true),
        Efficiency(ResultId.EfficiencyNet, "efficiency above combustion air, of the lower heating value: for comparison with makers who state net values", heat => heat.AboveAir(), higher: false),
        Efficiency(ResultId.EfficiencyFirstLaw, "efficiency by the first law, of the higher heating value: for heat balances, fuel at 25 °C", heat => heat.FirstLaw(), higher: true),
        new(ResultId.OxygenExpected, [new(OxygenBefore, "%"), new(PressureBefore, "in. w.c."), new(PressureAfter, "in. w.c.")], OxygenAfter),
        new(ResultId.NoxReference, [Oxygen, Nitrogen], NitrogenAtThree),
        new(ResultId.NoxPerHeat, [Oxygen, Nitrogen], NitrogenPerHeat),
    ];

    static Explanation Efficiency(string id, string what, Func<FlueHeat, Term> heat, bool higher) => new(
        id, [Oxygen, Monoxide, new(FieldId.FlueTemperature, "°F"), .. FlueWork.OfAir],
        (given, limit) =>
        {
            FlueWork work = new(given);
            if (!work.IsPossible)
            {
                return null;
            }

            FlueHeat flue = new(work);
            Term useful = work.Sheet.Step("useful", "kJ/mol", heat(flue));
            return work.Sheet.Close(new(id, "eff", what, "%", 1, FlueWork.Balance + "; heats from NASA TM-4513"), 100 * useful / flue.HeatingValue(higher), limit);
        });

    static Derivation? AirFreeMonoxide(GivenInputs given, Limit? limit)
    {
        if (given[FieldId.Oxygen].Value is not (>= 0 and <= AirFree.LargestOxygenPercent) || given[FieldId.FlueCo].Value < 0)
        {
            return null;
        }

        Worksheet sheet = new();
        Term monoxide = sheet.Input("CO", "the CO", "ppm", given[FieldId.FlueCo]);
        Term oxygen = sheet.Input("O2", "the O2", "%", given[FieldId.Oxygen]);
        sheet.Correlate("CO", "O2", given.AnalyzerCorrelation);
        return sheet.Close(new(ResultId.CoAirFree, "COaf", "CO air-free, as it would read without excess air", "ppm", 0, "the definition that ANSI Z21.47 states its limit with"),
            AirFree.Formula(monoxide, oxygen), limit);
    }

    static Derivation Factor(GivenInputs given, Limit? limit)
    {
        Worksheet sheet = new();
        Term oxygen = sheet.Input("O2", "the O2", "%", given[FieldId.Oxygen]);
        Term dioxide = sheet.Input("CO2", "the CO2", "%", given[FieldId.CarbonDioxide]);
        Term percent = sheet.Step("CO%", "%", sheet.Input("CO", "the CO", "ppm", given[FieldId.FlueCo]) / 10_000);
        sheet.Correlate("O2", "CO2", given.AnalyzerCorrelation);
        return sheet.Close(new(ResultId.FuelFactor, "Fo", "fuel factor: whether O2, CO2 and fuel belong together", "", 3, "EPA Method 3B, section 12"),
            FuelFactor.Formula(oxygen, dioxide, percent), limit);
    }

    static Derivation? OxygenAfter(GivenInputs given, Limit? limit)
    {
        if (given[OxygenBefore].Value is not (>= 0 and < AirFree.AirOxygenPercent) || given[PressureBefore].Value <= 0 || given[PressureAfter].Value <= 0)
        {
            return null;
        }

        Worksheet sheet = new();
        (DryAir air, Atoms atoms) = (FlueWork.Air, given.Fuel.Atoms);
        Term before = sheet.Step("o", "", sheet.Input("O2", "the O2 before the adjustment", "%", given[OxygenBefore]) / 100);
        Term gas = sheet.Step("q", "", ManifoldPressure.Formula(
            sheet.Input("p1", "manifold pressure before", "in. w.c.", given[PressureBefore]), sheet.Input("p2", "manifold pressure after", "in. w.c.", given[PressureAfter])));
        Term dry = sheet.Step("D", "mol/mol", FlueGas.DryFormula(given.Fuel, air, before, sheet.Lookup("c", "CO", "", 0, "left out: too little to move the O2")));
        Term dryAir = sheet.Step("A", "mol/mol", FlueGas.AirFormula(air, atoms.Carbon + atoms.Nitrogen / 2 + atoms.Argon, dry, before * dry) / gas);
        Term oxygen = sheet.Step("nO2", "mol/mol", FlueGas.OxygenFormula(given.Fuel, air, dryAir));
        return oxygen.Value.Value < 0 ? null : sheet.Close(
            new(ResultId.OxygenExpected, "O2after", "O2 that the change of pressure lets expect, the air staying as it is", "%", 1, $"square-root law of an orifice; {FlueWork.Balance}"),
            100 * (oxygen / FlueGas.DryOfAirFormula(given.Fuel, air, dryAir, oxygen)), limit);
    }

    static Derivation? NitrogenAtThree(GivenInputs given, Limit? limit)
    {
        Worksheet sheet = new();
        Term nitrogen = sheet.Input("NOx", "the NOx", "ppm", given[FieldId.Nox]);
        Term oxygen = sheet.Input("O2", "the O2", "%", given[FieldId.Oxygen]);
        sheet.Correlate("NOx", "O2", given.AnalyzerCorrelation);
        return given[FieldId.Oxygen].Value > EmissionRate.LargestOxygenPercent ? null : sheet.Close(
            new(ResultId.NoxReference, "NOx3", "NOx at the reference of 3 % O2", "ppm", 1, "O2 correction of US rules, 20.9 % air"),
            OxygenCorrection.Formula(nitrogen, oxygen, 3, OxygenCorrection.UnitedStates), limit);
    }

    static Derivation? NitrogenPerHeat(GivenInputs given, Limit? limit)
    {
        Worksheet sheet = new();
        Term nitrogen = sheet.Input("NOx", "the NOx", "ppm", given[FieldId.Nox]);
        Term oxygen = sheet.Input("O2", "the O2", "%", given[FieldId.Oxygen]);
        sheet.Correlate("NOx", "O2", given.AnalyzerCorrelation);
        bool isNamed = Regulated.Contains(given.Fuel.Id);
        double dry = isNamed ? FuelFFactors.NaturalGas.Dry : FuelFFactors.Of(given.Fuel).Dry;
        string source = FormattableString.Invariant($"EPA Method 19 with Fd {dry:0} dscf per million Btu{(isNamed ? "" : " from the fuel's composition")}, K 1.194e-7");
        double factor = Pollutant.NitrogenOxides.PoundsPerCubicFootPerPpm * dry * EmissionRate.NanogramsPerJoule * EmissionRate.MilligramsPerKilowattHour;
        return given[FieldId.Oxygen].Value > EmissionRate.LargestOxygenPercent ? null : sheet.Close(
            new(ResultId.NoxPerHeat, "NOx", "NOx as NO2 for each kWh of gas burned, gross", "mg/kWh", 1, source),
            EmissionRate.DryOxygenFormula(factor, nitrogen, oxygen), limit);
    }
}
