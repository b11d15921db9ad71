using System.Collections.Immutable;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Simulation;

/// <summary>Makes a furnace out of a sheet and a site: each value from the middle of its limit, what hangs on it by the formulas of the core.</summary>
sealed class FurnaceBuilding(StartupPlan plan, ImmutableSortedSet<Fault> faults, ulong seed)
{
    const double WattsPerBurner = 6000;
    const double ExchangerShare = 0.6;

    readonly Fuel _fuel = plan.Fuel;

    bool IsPropane => _fuel.RelativeDensity > 1;

    bool IsSealed => plan.Appliance.Venting is VentCategory.III or VentCategory.IV;

    double AirKelvin => IsSealed ? Furnace.OutdoorKelvin : Furnace.RoomKelvin - 1;

    public Furnace Build()
    {
        // Rounded, so that a last bit of a power does not reach the furnace.
        double barometer = Math.Round(StandardAtmosphere.Pressure(Altitude.FromFeet((double)plan.Site.AltitudeFeet)).Pascals);
        double heat = Math.Round(plan.Site.HeatingValue is { } stated
            ? HeatingValue.FromBtuPerCubicFoot((double)stated).JoulesPerCubicMetre
            : _fuel.HigherHeatingValue * MolarGas.MolesPerCubicMetre(new AbsolutePressure(barometer), new Temperature(288.7)));
        FireStage high = Stage("high", heat, barometer, InputOf("high"));
        FireStage low = plan.Appliance.Stages == 1 ? high : Stage("low", heat, barometer, InputOf("high") * Math.Sqrt(Manifold("low") / Manifold("high")));
        int burners = Math.Max(2, (int)Math.Round(InputOf("high") / WattsPerBurner));
        double total = Middle(ResultId.ExternalStatic, null, 0.5m, 0.5m) * 0.7;
        double inlet = Inlet();
        double upper = Pascals(plan.Limit(FieldId.ManifoldPressure, "high")?.Upper ?? (decimal)(Manifold("high") / Unit.InchesOfWater.Scale) * 1.05m);
        double wanted = faults.Contains(Fault.ValveNotHolding) ? upper * 1.02 : upper * 1.08;
        return new Furnace(Math.Round((wanted / high.Manifold - 1) / Furnace.RisePerTurn, 3))
        {
            Plan = plan,
            Fuel = _fuel,
            Seed = seed,
            Faults = faults,
            Barometer = barometer,
            HeatPerCubicMetre = heat,
            High = high,
            Low = low,
            Burners = burners,
            OrificeMetres = OrificeOf(high, burners, barometer),
            Supply = inlet * 1.03,
            SupplyDrop = faults.Contains(Fault.LowSupply) ? inlet * 1.03 - Lower(FieldId.InletPressure) * 0.86 : inlet * 0.03,
            SensibleFactor = Factor(barometer),
            Static = (total * 0.55, total * 0.45),
            VentMetres = IsSealed ? 0 : -Draft() / Theoretical(high, barometer),
            VentPressure = IsSealed ? Draft() : 0,
            FlameCurrent = Middle(FieldId.FlameCurrent, null, 2m, 5m) * 0.8,
            LimitKelvin = Kelvin(plan.Limit(FieldId.SupplyTemperature, "high")?.Upper ?? 160m) + 15,
        };
    }

    FireStage Stage(string scope, double heat, double barometer, double input)
    {
        double oxygen = Middle(FieldId.Oxygen, scope, scope == "low" ? 7m : 6m, scope == "low" ? 10m : 9m);
        double fuelMoles = input / _fuel.HigherHeatingValue;
        FlueGas flue = FlueGas.FromOxygen(_fuel, DryAir.Conventional, oxygen, 1e-5, 0);
        double flueKelvin = Middle(FieldId.FlueTemperature, scope, 300m, 400m);
        double rise = Middle(ResultId.TemperatureRise, scope, 40m, 70m);
        double metal = ExchangerShare * (flueKelvin - Furnace.RoomKelvin);
        double flame = Furnace.FlameKelvin(_fuel, fuelMoles, flue.DryAir.Value * fuelMoles, AirKelvin);
        double toAir = input * Efficiency(oxygen, flueKelvin, barometer) - Furnace.Jacket * input;
        return new FireStage
        {
            Manifold = Manifold(scope),
            GasFlow = input / heat,
            AirMoles = flue.DryAir.Value * fuelMoles,
            FlueKelvin = flueKelvin,
            FlameKelvin = flame,
            Slip = (flueKelvin - Furnace.RoomKelvin - metal) / (flame - Furnace.RoomKelvin - metal),
            ExchangerRise = metal,
            ToAir = toAir,
            Circulation = toAir / (Factor(barometer) * rise),
        };
    }

    static double Factor(double barometer) =>
        Math.Round(MoistAir.At(new Temperature(Furnace.RoomKelvin), new Fraction(0.3), new AbsolutePressure(barometer)).SensibleFactor, 3);

    double Efficiency(double oxygen, double flueKelvin, double barometer) => CombustionEvaluation.Of(
        new FlueReading(new Fraction(oxygen), new Fraction(1e-5), new Temperature(flueKelvin), new Temperature(AirKelvin)) { Pressure = new AbsolutePressure(barometer) },
        _fuel).EfficiencyFirstLawPercent.Value / 100;

    /// <summary>The drill that lets the wanted gas through; a size too large, or that of sea level, where the fault says so.</summary>
    double OrificeOf(FireStage high, int burners, double barometer)
    {
        double one = Orifice.Flow(Length.FromInches(0.1), new Pressure(high.Manifold), _fuel.RelativeDensity).CubicMetresPerSecond * Furnace.ThinnessOf(barometer);
        double right = 0.1 * 0.0254 * Math.Sqrt(high.GasFlow / burners / one);
        double gas = faults.Contains(Fault.NotDerated) ? Math.Max(1.25, SeaLevelShare()) : faults.Contains(Fault.WrongOrifice) ? 1.22 : 1;
        return right * Math.Sqrt(gas);
    }

    double SeaLevelShare() => plan.Appliance.SeaLevelInput is { } sea ? Math.Min(1.35, (double)sea * Unit.BtuPerHour.Scale / InputOf("high")) : 1;

    double InputOf(string scope) => Middle(ResultId.InputRate, scope, 76_000m, 80_000m);

    double Manifold(string scope) => Middle(FieldId.ManifoldPressure, scope, scope == "low" ? (IsPropane ? 4.8m : 1.6m) : IsPropane ? 9.8m : 3.4m, scope == "low" ? (IsPropane ? 5.2m : 1.8m) : IsPropane ? 10.2m : 3.6m);

    double Inlet() => plan.Limit(FieldId.InletPressure, null) is { Lower: { } lower, Upper: { } upper }
        ? Pascals(lower + (upper - lower) * (IsPropane ? 0.5m : 0.42m))
        : Pascals(IsPropane ? 12m : 7m);

    double Lower(string name) => Pascals(plan.Limit(name, null)?.Lower ?? (IsPropane ? 11m : 4.5m));

    double Draft() => plan.Limit(FieldId.Draft, "high") is { } limit
        ? Pascals(IsSealed ? (limit.Upper ?? 0.12m) * 0.5m : ((limit.Lower ?? -0.08m) + (limit.Upper ?? -0.02m)) / 2)
        : Pascals(IsSealed ? 0.05m : -0.05m);

    /// <summary>Draft of one meter of vent when the furnace is warm; positive.</summary>
    static double Theoretical(FireStage high, double barometer) => Calculations.AirSide.Draft.Theoretical(
        new Length(1), new Temperature(Furnace.OutdoorKelvin), new Temperature(Furnace.VentMean(high.FlueKelvin)), new AbsolutePressure(barometer)).Pascals;

    /// <summary>The middle of a limit in SI; that of the given bounds where no file states it. A difference of temperatures is in kelvin.</summary>
    double Middle(string name, string? scope, decimal lower, decimal upper)
    {
        DeclaredLimit? limit = plan.Limit(name, scope);
        Unit unit = Unit.Find(limit?.UnitSymbol ?? "") ?? Fields.Find(name)?.Unit ?? Unit.Find(ResultKind.Find(name)!.UnitSymbol)!;
        decimal middle = ((limit?.Lower ?? limit?.Upper ?? lower) + (limit?.Upper ?? limit?.Lower ?? upper)) / 2;
        return ResultKind.Find(name)?.IsDifference == true ? (double)middle * unit.Scale : unit.ToSi(middle);
    }

    static double Pascals(decimal inches) => Unit.InchesOfWater.ToSi(inches);

    static double Kelvin(decimal fahrenheit) => Unit.Fahrenheit.ToSi(fahrenheit);
}
