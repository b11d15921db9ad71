namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A temperature on the thermodynamic scale. A rise or a drop is a <see cref="TemperatureDifference"/>.</summary>
/// <param name="Kelvin">K, greater than zero.</param>
public readonly record struct Temperature(double Kelvin)
{
    /// <summary>0 °C in kelvin, by definition.</summary>
    public const double IcePointKelvin = 273.15;

    /// <summary>0 °F in degrees Rankine, by definition.</summary>
    public const double FahrenheitZeroRankine = 459.67;

    /// <summary>From kelvin.</summary>
    public static Temperature FromKelvin(double kelvin) => new(kelvin);

    /// <summary>From degrees Celsius.</summary>
    public static Temperature FromCelsius(double celsius) => new(celsius + IcePointKelvin);

    /// <summary>From degrees Fahrenheit.</summary>
    public static Temperature FromFahrenheit(double fahrenheit) => new((fahrenheit + FahrenheitZeroRankine) / 1.8);

    /// <summary>Degrees Celsius.</summary>
    public double Celsius => Kelvin - IcePointKelvin;

    /// <summary>Degrees Fahrenheit.</summary>
    public double Fahrenheit => Kelvin * 1.8 - FahrenheitZeroRankine;

    /// <summary>How far one temperature lies above another.</summary>
    public static TemperatureDifference operator -(Temperature left, Temperature right) => new(left.Kelvin - right.Kelvin);

    /// <summary>A temperature raised by a difference.</summary>
    public static Temperature operator +(Temperature temperature, TemperatureDifference rise) => new(temperature.Kelvin + rise.Kelvin);
}
