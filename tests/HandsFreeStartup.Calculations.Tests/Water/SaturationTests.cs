using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Tests.Water;

public sealed class SaturationTests
{
    /// <summary>Source: Reference/saturation.csv (iapws; CoolProp IAPWS-95).</summary>
    [Fact]
    public void Every_row_of_the_saturation_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("saturation"))
        {
            double kelvin = row.Number("temperature_C") + 273.15;
            double pressure = SaturationLine.Pressure(kelvin);
            differences.Compare(row, "saturation_pressure_if97_Pa", pressure, 0, 1e-9);
            differences.Compare(row, "saturation_pressure_iapws95_Pa", pressure, 0, 7.2e-5);
            differences.Compare(row, "dew_point_if97_C", SaturationLine.Temperature(pressure) - 273.15, 1e-6, 0);
            differences.Compare(row, "latent_heat_if97_J_per_kg", LatentHeat.JoulesPerKilogram(kelvin), 0, 5e-4);
        }
        differences.AssertNone(atLeast: 131 * 3);
    }

    /// <summary>Source: Reference/dew_point.csv (iapws; CoolProp IAPWS-95).</summary>
    [Fact]
    public void Every_row_of_the_dew_point_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("dew_point"))
        {
            double dewPoint = SaturationLine.Temperature(row.Number("water_mole_fraction") * row.Number("pressure_Pa")) - 273.15;
            differences.Compare(row, "dew_point_if97_C", dewPoint, 1e-6, 0);
            differences.Compare(row, "dew_point_iapws95_C", dewPoint, 0.002, 0);
        }
        differences.AssertNone(atLeast: 120);
    }

    /// <summary>Source: IAPWS-IF97 (2007 revision), region 4, table 35, to its nine digits.</summary>
    [Theory]
    [InlineData(300, 0.353658941e-2)]
    [InlineData(500, 2.63889776)]
    [InlineData(600, 12.3443146)]
    public void Saturation_pressure_gives_the_verification_values(double kelvin, double megapascals) =>
        Assert.Equal(megapascals, SaturationLine.Pressure(kelvin) / 1e6, 5e-9 * megapascals);

    /// <summary>Source: IAPWS-IF97 (2007 revision), region 4, table 36; values from memory.</summary>
    [Theory]
    [InlineData(0.1, 372.755919)]
    [InlineData(1, 453.035632)]
    [InlineData(10, 584.149488)]
    public void Saturation_temperature_gives_the_verification_values(double megapascals, double kelvin) =>
        Assert.Equal(kelvin, SaturationLine.Temperature(megapascals * 1e6), 1e-6);

    /// <summary>Source: IAPWS R14-08(2011), table 3: sublimation pressure at 230 K; value from memory.</summary>
    [Fact]
    public void Pressure_over_ice_gives_the_verification_value() => Assert.Equal(8.94735, SaturationLine.Pressure(230), 5e-6);

    /// <summary>Source: ASHRAE formula of Hyland and Wexler (seen); the formulas differ by up to 1.8e-4.</summary>
    [Theory]
    [InlineData(20, 2338.8)]
    [InlineData(25, 3169.2)]
    [InlineData(40, 7383.5)]
    [InlineData(50, 12349.9)]
    [InlineData(55, 15759.7)]
    [InlineData(60, 19943.8)]
    [InlineData(100, 101418.7)]
    public void Saturation_pressure_agrees_with_the_handbook_formula(double celsius, double pascals) =>
        Assert.Equal(pascals, SaturationLine.Pressure(celsius + 273.15), 2.5e-4 * pascals);

    [Theory]
    [InlineData(-15)]
    [InlineData(5)]
    [InlineData(60)]
    [InlineData(120)]
    public void The_slope_is_the_derivative(double celsius)
    {
        double kelvin = celsius + 273.15;
        double difference = (SaturationLine.Pressure(kelvin + 0.001) - SaturationLine.Pressure(kelvin - 0.001)) / 0.002;

        Assert.Equal(difference, SaturationLine.Slope(kelvin), 1e-6 * difference);
        Uncertain dewPoint = SaturationLine.Temperature(SaturationLine.Pressure(Uncertain.Input(Math.Max(kelvin, 274), 0.25, 3)));
        Assert.Equal(0.25, dewPoint.Contribution(3), 1e-9);
    }
}
