namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A difference of temperatures: a rise, a spread, an uncertainty.</summary>
/// <param name="Kelvin">K; a difference of 1 K is 1.8 °F.</param>
public readonly record struct TemperatureDifference(double Kelvin)
{
    /// <summary>From kelvin, which for a difference are degrees Celsius too.</summary>
    public static TemperatureDifference FromKelvin(double kelvin) => new(kelvin);

    /// <summary>From degrees Fahrenheit of difference.</summary>
    public static TemperatureDifference FromFahrenheit(double degrees) => new(degrees / 1.8);

    /// <summary>Degrees Fahrenheit of difference.</summary>
    public double Fahrenheit => Kelvin * 1.8;
}
