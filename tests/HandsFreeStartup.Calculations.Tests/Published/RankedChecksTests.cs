using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Emissions;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Published;

/// <summary>Independent checks, each with its source, which are not rows of the published-values table.</summary>
public sealed class RankedChecksTests
{
    /// <summary>1. Source: worked gas analysis in the style of AGA Report 5 (scribd.com document 499128911, seen), 14.73 psia and 60 °F; printed digits.</summary>
    [Fact]
    public void A_full_gas_analysis_leads_to_the_printed_heating_value_and_Wobbe_index()
    {
        (Temperature temperature, AbsolutePressure pressure) = MeterCorrection.Base60F1473;

        Assert.Equal(17.5950, AnalysedGases.Worked.MolarMass * 1000, 0.001);
        Assert.Equal(0.997776, RealGas.CompressibilityFactor(AnalysedGases.Worked, temperature, pressure), 0.0003);
        Assert.Equal(1034.8, RealGas.HeatingValue(AnalysedGases.Worked, temperature, pressure, gross: true).BtuPerCubicFoot, 0.5);
        Assert.Equal(933.6, RealGas.HeatingValue(AnalysedGases.Worked, temperature, pressure, gross: false).BtuPerCubicFoot, 0.5);
        Assert.Equal(1326.5, WobbeIndex.Real(AnalysedGases.Worked, temperature, pressure).BtuPerCubicFoot, 0.8);
    }

    /// <summary>2. Source: German ordinance 1. BImSchV, annex 2, no. 3.4.1 (seen); results by its formula.</summary>
    [Theory]
    [InlineData(4, 180, 7.652, 7.209, 7.520)]
    [InlineData(6, 180, 8.480, 8.000, 8.373)]
    [InlineData(8, 180, 9.563, 9.034, 9.489)]
    [InlineData(5, 150, 6.533, 6.159, 6.435)]
    public void The_flue_loss_of_the_ordinance(double oxygen, double flue, double naturalGas, double liquefiedGas, double oil)
    {
        Assert.Equal(naturalGas, Siegert.NaturalGas.LossPercent(oxygen, flue, 20).Value, 0.0006);
        Assert.Equal(liquefiedGas, Siegert.LiquefiedGas.LossPercent(oxygen, flue, 20).Value, 0.0006);
        Assert.Equal(oil, Siegert.HeatingOil.LossPercent(oxygen, flue, 20).Value, 0.0006);
    }

    /// <summary>4. Source: 40 CFR 60 Method 19 and 40 CFR 75 Appendix F: K 1.194e-7 (seen), Fd 8710 (reprint); result calculated.</summary>
    [Fact]
    public void Twenty_ppm_of_nitrogen_oxides_at_three_percent_oxygen()
    {
        Assert.Equal(1.194e-7, Pollutant.NitrogenOxides.PoundsPerCubicFootPerPpm, 0.0005e-7);
        double pounds = EmissionRate.FromDryOxygen(Pollutant.NitrogenOxides, FuelFFactors.NaturalGas.Dry, 20, 3).Value;

        Assert.Equal(0.024285, pounds, 0.000005);
        Assert.Equal(10.441, pounds * EmissionRate.NanogramsPerJoule, 0.002);
        Assert.Equal(429.9226, EmissionRate.NanogramsPerJoule, 0.00005);
    }

    /// <summary>4. Source: the same chain, calculated.</summary>
    [Theory]
    [InlineData(14, 0.80, 21.45)]
    [InlineData(14, 0.95, 25.48)]
    [InlineData(40, 0.80, 61.30)]
    public void Ppm_that_a_limit_per_useful_heat_allows(double nanogramsPerJouleOutput, double efficiency, double ppm)
    {
        double rate = EmissionRate.FromDryOxygen(Pollutant.NitrogenOxides, FuelFFactors.NaturalGas.Dry, ppm, 3).Value * EmissionRate.NanogramsPerJoule;

        Assert.Equal(nanogramsPerJouleOutput, EmissionRate.PerOutput(rate, efficiency).Value, 0.005);
    }

    /// <summary>5. Source: pairs of two air districts and one state law (vcapcd.org WaterHeater, Utah 15A-6-102, BAAQMD SS28; seen), heat output basis, 3 % O2.</summary>
    /// <remarks>The efficiency that makes each pair equal is that of a water heater or of an old furnace; the pairs are rounded to 5 ppm.</remarks>
    [Theory]
    [InlineData(10, 15, 0.783)]
    [InlineData(14, 20, 0.746)]
    [InlineData(40, 55, 0.718)]
    public void Regulators_own_pairs_imply_a_believable_efficiency(double nanogramsPerJoule, double ppm, double implied)
    {
        double perInput = EmissionRate.FromDryOxygen(Pollutant.NitrogenOxides, FuelFFactors.NaturalGas.Dry, ppm, 3).Value * EmissionRate.NanogramsPerJoule;

        Assert.Equal(implied, perInput / nanogramsPerJoule, 0.001);
    }

    /// <summary>6. Source: orifice table of an open textbook (opentextbc.ca plumbing3e, imperial orifice capacity table, seen), to its three decimals.</summary>
    [Theory]
    [InlineData(0.0360, 0.60, 3.5, 3.670)]
    [InlineData(0.0135, 0.60, 3.5, 0.516)]
    [InlineData(0.0380, 0.60, 7, 5.782)]
    [InlineData(0.0360, 1.50, 10, 3.923)]
    [InlineData(0.0360, 1.50, 11, 4.114)]
    public void Orifice_capacity_as_in_the_textbook(double inches, double density, double pressure, double flow) =>
        Assert.Equal(flow, Orifice.Flow(Length.FromInches(inches), Pressure.FromInchesOfWater(pressure), density).CubicFeetPerHour, 0.0006);

    /// <summary>6. Source: NFPA 54 table E.1.1(a), sea level, relative density 0.60 (scribd.com document 790241325, seen).</summary>
    /// <remarks>Within 3 %; the cells for drills 77 and 78 at 3 and 3.5 in. differ by up to 5 % and are left out.</remarks>
    [Theory]
    [InlineData(0.0135, new double[] { .48, .52, .55, .63, .69, .73, .79, .83, .88 })]
    [InlineData(0.0145, new double[] { .55, .59, .64, .72, .80, .84, .90, .97, 1.01 })]
    [InlineData(0.0160, new double[] { double.NaN, double.NaN, .78, .88, .97, 1.04, 1.10, 1.17, 1.24 })]
    [InlineData(0.0180, new double[] { double.NaN, double.NaN, .99, 1.11, 1.23, 1.31, 1.38, 1.47, 1.55 })]
    [InlineData(0.0200, new double[] { 1.05, 1.13, 1.21, 1.37, 1.52, 1.61, 1.72, 1.83, 1.92 })]
    public void Orifice_capacity_as_in_the_code_table(double inches, double[] printed)
    {
        double[] pressures = [3, 3.5, 4, 5, 6, 7, 8, 9, 10];
        for (int i = 0; i < printed.Length; i++)
        {
            if (double.IsFinite(printed[i]))
            {
                Assert.Equal(printed[i], Orifice.Flow(Length.FromInches(inches), Pressure.FromInchesOfWater(pressures[i]), 0.60).CubicFeetPerHour, 0.03 * printed[i]);
            }
        }
    }

    /// <summary>7. Source: a complete Method 19 emission sheet (scribd.com document 395408750, seen).</summary>
    [Fact]
    public void A_complete_emission_sheet()
    {
        double dryFactor = FuelFFactors.DryFromUltimateAnalysis(carbon: 85.2, hydrogen: 12.8, sulphur: 0.12, nitrogen: 0.01, oxygen: 1.84, btuPerPound: 19595);

        Assert.Equal(8991, dryFactor, 0.6);
        Assert.Equal(15.3, OxygenCorrection.ToReference(43.2, 4.2, 15).Value, 0.05);
        Assert.Equal(19.4, OxygenCorrection.ToReference(55.0, 4.2, 15).Value, 0.05);
        Assert.Equal(0.0580, EmissionRate.FromDryOxygen(Pollutant.NitrogenOxides, dryFactor, 43.2, 4.2).Value, 0.00006);
        Assert.Equal(0.045, EmissionRate.FromDryOxygen(Pollutant.CarbonMonoxide, dryFactor, 55.0, 4.2).Value, 0.0001);
    }

    /// <summary>7. Source: Method 19 equation 19-13 on pure methane, calculated.</summary>
    [Fact]
    public void Dry_factor_of_methane_from_its_elements() =>
        Assert.Equal(8632, FuelFFactors.DryFromUltimateAnalysis(74.87, 25.13, 0, 0, 0, 23866), 0.6);

    /// <summary>7. Source: national default factors (40 CFR 75 Appendix F table 1, reprint; Fw from memory). First principles within 3 %.</summary>
    [Theory]
    [InlineData("typical_natural_gas", 8710, 10610, 1040)]
    [InlineData("propane", 8710, 10200, 1190)]
    [InlineData("n_butane", 8710, 10390, 1250)]
    public void National_factors_are_within_three_percent_of_the_composition(string fuel, double dry, double wet, double carbonDioxide)
    {
        FuelFFactors ours = FuelFFactors.Of(ReferenceFuels.Get(fuel));

        Assert.Equal(dry, ours.Dry, 0.03 * dry);
        Assert.Equal(wet, ours.Wet, 0.03 * wet);
        Assert.Equal(carbonDioxide, ours.CarbonDioxide, 0.03 * carbonDioxide);
    }

    /// <summary>7. Source: the three equations of Method 19 on one flue gas must agree; calculated for methane with its own factors.</summary>
    [Fact]
    public void Dry_oxygen_wet_oxygen_and_carbon_dioxide_tell_the_same_emission()
    {
        Fuel methane = ReferenceFuels.Get("methane");
        FuelFFactors factors = FuelFFactors.Of(methane);
        FlueGas flue = FlueGas.FromOxygen(methane, DryAir.WithTradeOxygen, 0.05, 0, 0);
        double wetShare = flue.Dry.Value / flue.Wet.Value;
        double fromDry = EmissionRate.FromDryOxygen(Pollutant.CarbonMonoxide, factors.Dry, 100, 5).Value;

        Assert.Equal(fromDry, EmissionRate.FromWetOxygen(Pollutant.CarbonMonoxide, factors.Wet, 100 * wetShare, 5 * wetShare, 0).Value, 1e-12);
        Assert.Equal(fromDry, EmissionRate.FromDryCarbonDioxide(Pollutant.CarbonMonoxide, factors.CarbonDioxide, 100, 100 * (flue.CarbonDioxide / flue.Dry).Value).Value, 1e-12);
    }

    /// <summary>8. Source: textbook problem (tutorsglobe.com, seen), over-determined: the oxygen balance gives 118.3 % where the nitrogen balance gives 119.4 % (calculated).</summary>
    [Fact]
    public void An_over_determined_analysis_shows_its_own_contradiction()
    {
        DryAir air = new(1 / 4.76, 3.76 / 4.76);
        double byOxygen = FlueGas.FromOxygen(AnalysedGases.TextbookA, air, 0.0384, 0.0064, 0).DryAir.Value / Stoichiometry.Of(AnalysedGases.TextbookA, air).DryAir;
        double byNitrogen = DryAnalysis.Of(AnalysedGases.TextbookA, 0.0920, 0.0064, 0.0384, 3.76).TheoreticalAirRatio;

        Assert.Equal(1.194, byNitrogen, 0.0005);
        Assert.InRange(byOxygen, 1.17, 1.19);
    }

    /// <summary>9. Source: EPA Method 3B equation 3B-3 (value from memory); the common formula is the wrong one.</summary>
    [Theory]
    [InlineData(8.0, 7.2, 0, 55.60)]
    [InlineData(5.0, 8.9, 0.01, 28.17)]
    [InlineData(4.0, 9.5, 0, 21.24)]
    public void Excess_air_by_Method_3B(double oxygen, double carbonDioxide, double carbonMonoxide, double percent) =>
        Assert.Equal(percent, ExcessAirByMethod3B.Percent(oxygen, carbonDioxide, carbonMonoxide).Value, 0.01);

    /// <summary>9. Source: element balances, calculated; lambda is not 20.9/(20.9 − O2).</summary>
    [Fact]
    public void Lambda_is_not_the_dilution_of_the_dry_flue()
    {
        CombustionEvaluation evaluation = CombustionEvaluation.Of(
            new(Fraction.FromPercent(8), default, Temperature.FromCelsius(180), Temperature.FromCelsius(20)), ReferenceFuels.Get("methane"));

        Assert.Equal(1.553, evaluation.Lambda.Value, 0.0005);
        Assert.Equal(1.620, AirFree.FromOxygen(1, 8).Value, 0.0005);
    }

    /// <summary>10. Source: EPA Method 3B fuel factors (reprint ness2u.xyz; ranges from memory): Fo stays, whatever the dilution.</summary>
    [Theory]
    [InlineData("typical_natural_gas", 1.759)]
    [InlineData("methane", 1.791)]
    [InlineData("propane", 1.527)]
    [InlineData("n_butane", 1.494)]
    public void The_fuel_factor_stays_constant_and_lies_in_the_range_of_the_fuel(string name, double factor)
    {
        Fuel fuel = ReferenceFuels.Get(name);
        foreach (double oxygen in new[] { 0.01, 0.06, 0.11 })
        {
            FlueGas flue = FlueGas.FromOxygen(fuel, DryAir.WithTradeOxygen, oxygen, 0, 0);
            Uncertain read = FuelFactor.Of(100 * oxygen, 100 * (flue.CarbonDioxide / flue.Dry), 0);

            Assert.Equal(FuelFactor.Expected(fuel), read.Value, 1e-12);
            Assert.Equal(Verdict.Pass, Judge.Verdict(read.Estimate, FuelFactor.AcceptRange(fuel)!));
        }
        Assert.Equal(factor, FuelFactor.Expected(fuel), 0.0015);
    }

    /// <summary>10. Source: the same; readings of propane under the setting "natural gas" are found.</summary>
    [Fact]
    public void A_wrong_fuel_setting_is_found_by_the_fuel_factor() =>
        Assert.Equal(Verdict.Fail, Judge.Verdict(FuelFactor.Of(6, 9.79, 0).Estimate, FuelFactor.AcceptRange(ReferenceFuels.Get("typical_natural_gas"))!));

    /// <summary>10. Source: Method 3B with CO, calculated.</summary>
    [Fact]
    public void The_fuel_factor_corrects_for_monoxide() => Assert.Equal(1.7851, FuelFactor.Of(5.0, 8.9, 0.01).Value, 0.00005);

    /// <summary>11. Source: heat capacities at 298.15 K of NASA TM-4513 (seen), calculated.</summary>
    [Theory]
    [InlineData("N2", 29.124)]
    [InlineData("O2", 29.378)]
    [InlineData("CO2", 37.135)]
    [InlineData("CO", 29.141)]
    public void Heat_capacity_at_25_degrees(string symbol, double heatCapacity) =>
        Assert.Equal(heatCapacity, Species.Find(symbol)!.Heat.HeatCapacity(298.15), 0.001);

    /// <summary>18. Source: formula of air-district rules for furnaces (value from memory), 1.2 % from the F-factor way.</summary>
    [Fact]
    public void The_furnace_rule_formula() => Assert.Equal(12.90, EmissionRate.FurnaceRule(20, 11.9, 1033, 10.19, 80), 0.01);

    /// <summary>2. Source: ideal gas at 25 °C, ppm to mg/m³ of CO (value from memory 1.1449).</summary>
    [Fact]
    public void Monoxide_by_mass() =>
        Assert.Equal(1.1449, Pollutant.CarbonMonoxide.MilligramsPerCubicMetre(1, Temperature.FromCelsius(25), AbsolutePressure.StandardAtmosphere), 0.0002);

    /// <summary>13. Source: orifice formula, calculated.</summary>
    [Theory]
    [InlineData(0.0820, 3.5, 0.60, 19.04)]
    [InlineData(0.0890, 3.5, 0.60, 22.43)]
    [InlineData(0.0520, 10, 1.52, 8.13)]
    [InlineData(0.0550, 10, 1.52, 9.10)]
    public void Orifice_capacity_of_usual_drills(double inches, double pressure, double density, double flow) =>
        Assert.Equal(flow, Orifice.Flow(Length.FromInches(inches), Pressure.FromInchesOfWater(pressure), density).CubicFeetPerHour, 0.006);

    /// <summary>14. Source: UMC 2009 Appendix B.1.2, NFPA 54-2002 chapter 11 (scribd.com document 27887888, seen).</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(2000, 1)]
    [InlineData(3000, 0.88)]
    [InlineData(5000, 0.80)]
    public void Altitude_derate_is_a_step_counted_from_sea_level(double feet, double factor)
    {
        Assert.Equal(factor, AltitudeDerate.CodeDefault.Factor(Altitude.FromFeet(feet)), 1e-12);
        Assert.Equal(100_000 * factor, AltitudeDerate.CodeDefault.LargestInput(HeatRate.FromBtuPerHour(100_000), Altitude.FromFeet(feet)).BtuPerHour, 1e-6);
    }

    /// <summary>16. Source: draft formula of any handbook, calculated: 6 m, 0 and 150 °C; 20 ft, 492 and 760 °R, 29.92 in. of mercury.</summary>
    /// <remarks>The imperial form has water of 60 °F (0.1 % lighter) and a constant of four digits.</remarks>
    [Fact]
    public void Theoretical_draft_in_both_systems()
    {
        Pressure metric = Draft.Theoretical(Length.FromMetres(6), Temperature.FromCelsius(0), Temperature.FromCelsius(150), AbsolutePressure.StandardAtmosphere);
        Pressure imperial = Draft.Theoretical(Length.FromFeet(20), new(492 / 1.8), new(760 / 1.8), AbsolutePressure.FromInchesOfMercury(29.92));

        Assert.Equal(26.96, metric.Pascals, 0.02);
        Assert.Equal(0.108, metric.InchesOfWater, 0.0005);
        Assert.Equal(0.1095, imperial.InchesOfWater, 0.00025);
    }

    [Fact]
    public void The_worst_case_is_the_most_negative_configuration_less_the_baseline()
    {
        Pressure worst = Depressurization.WorstOf(new Pressure(-1), new Pressure(-4.5), new Pressure(2))!.Value;

        Assert.Equal(-3.5, Depressurization.Net(worst, new(-1)).Pascals);
        Assert.Null(Depressurization.WorstOf());
    }

    /// <summary>17. Source: trade pages on air flow (hvacrfundamentals.com, insightusa.com, seen), 1.08 = 0.075 · 0.24 · 60.</summary>
    [Theory]
    [InlineData(80000, 55, 1346.8)]
    [InlineData(64000, 50, 1185.2)]
    [InlineData(48000, 50, 888.9)]
    public void Air_flow_by_the_trade_factor(double output, double rise, double flow) =>
        Assert.Equal(flow, AirFlow.OfStandardAir(HeatRate.FromBtuPerHour(output), TemperatureDifference.FromFahrenheit(rise)).CubicFeetPerMinute, 0.05);

    /// <summary>17. Source: the same coefficient by altitude at constant temperature, ICAO atmosphere, calculated.</summary>
    [Theory]
    [InlineData(2000, 1.0042)]
    [InlineData(5000, 0.8986)]
    [InlineData(10000, 0.7427)]
    public void The_trade_factor_at_altitude(double feet, double factor) =>
        Assert.Equal(factor, AirFlow.TradeFactor * StandardAtmosphere.PressureRatio(Altitude.FromFeet(feet)), 0.0001);

    /// <summary>17. First principles and the trade's factor agree for the trade's standard air within half a per cent.</summary>
    [Fact]
    public void First_principles_and_the_trade_factor_agree_for_standard_air()
    {
        MoistAir standard = MoistAir.At(Temperature.FromFahrenheit(70), new(0), AbsolutePressure.StandardAtmosphere);
        VolumeFlow flow = AirFlow.Of(HeatRate.FromBtuPerHour(64000), TemperatureDifference.FromFahrenheit(50), standard);

        Assert.Equal(1185.2, flow.CubicFeetPerMinute, 0.005 * 1185.2);
    }

    /// <summary>12. Source: meter correction with ideal gas, value from memory: 29.0 in. of mercury, 7 in. w.c., 70 °F.</summary>
    [Theory]
    [InlineData(30.0 * 3386.389, 0.9653)]
    [InlineData(14.696 * 6894.757293168, 0.9678)]
    public void Meter_correction_of_an_ideal_gas(double basePascals, double factor)
    {
        AbsolutePressure pressure = AbsolutePressure.FromInchesOfMercury(29) + Pressure.FromInchesOfWater(7);

        Assert.Equal(factor, MeterCorrection.IdealFactor(pressure, Temperature.FromFahrenheit(70), (Temperature.FromFahrenheit(60), new(basePascals))), 0.00006);
    }
}
