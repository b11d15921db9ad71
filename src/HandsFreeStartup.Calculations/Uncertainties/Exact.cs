namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>A plain number in a formula: one draw of a Monte Carlo propagation.</summary>
/// <param name="Value">The number.</param>
public readonly record struct Exact(double Value) : IFormulaNumber<Exact>
{
    /// <summary>From a number.</summary>
    public static implicit operator Exact(double value) => new(value);

    /// <inheritdoc/>
    public static Exact operator +(in Exact x, in Exact y) => new(x.Value + y.Value);

    /// <inheritdoc/>
    public static Exact operator -(in Exact x, in Exact y) => new(x.Value - y.Value);

    /// <inheritdoc/>
    public static Exact operator *(in Exact x, in Exact y) => new(x.Value * y.Value);

    /// <inheritdoc/>
    public static Exact operator /(in Exact x, in Exact y) => new(x.Value / y.Value);

    /// <inheritdoc/>
    public static Exact operator +(in Exact x, double exact) => new(x.Value + exact);

    /// <inheritdoc/>
    public static Exact operator -(in Exact x, double exact) => new(x.Value - exact);

    /// <inheritdoc/>
    public static Exact operator -(double exact, in Exact x) => new(exact - x.Value);

    /// <inheritdoc/>
    public static Exact operator *(double exact, in Exact x) => new(exact * x.Value);

    /// <inheritdoc/>
    public static Exact operator *(in Exact x, double exact) => new(x.Value * exact);

    /// <inheritdoc/>
    public static Exact operator /(double exact, in Exact x) => new(exact / x.Value);

    /// <inheritdoc/>
    public static Exact operator /(in Exact x, double exact) => new(x.Value / exact);

    /// <inheritdoc/>
    public static Exact Sqrt(in Exact x) => new(Math.Sqrt(x.Value));
}
