using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>A number that carries the contribution of every input to its standard uncertainty.</summary>
/// <remarks>
/// <para>Law of propagation for independent inputs, first order (JCGM 100:2008, 5.1.2; value from memory):
/// u²(y) = Σ (∂y/∂xᵢ · u(xᵢ))². Each arithmetic step applies the exact chain rule to all contributions at once, so results that
/// share inputs stay correlated and no derivative is written out by hand. Nothing is allocated.</para>
/// <para>First order fails where a formula bends within a few u; see <see cref="FirstOrderValidity"/>.</para>
/// </remarks>
public readonly struct Uncertain : IFormulaNumber<Uncertain>
{
    /// <summary>Most inputs that one calculation can tell apart.</summary>
    public const int MostInputs = 8;

    readonly Vector512<double> _contributions;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    Uncertain(double value, Vector512<double> contributions)
    {
        Value = value;
        _contributions = contributions;
    }

    /// <summary>The value.</summary>
    public double Value { get; }

    /// <summary>An input with its standard uncertainty.</summary>
    /// <param name="value">The value.</param>
    /// <param name="standardUncertainty">u, in the unit of the value.</param>
    /// <param name="input">Which input this is, 0 to 7, different for inputs that are independent.</param>
    public static Uncertain Input(double value, double standardUncertainty, int input) =>
        new(value, Vector512<double>.Zero.WithElement(input, standardUncertainty));

    /// <summary>An exact number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Uncertain(double exact) => new(exact, Vector512<double>.Zero);

    /// <summary>u, combined over all inputs.</summary>
    public double StandardUncertainty => Math.Sqrt(Vector512.Sum(_contributions * _contributions));

    /// <summary>Value and combined standard uncertainty.</summary>
    public Estimate Estimate => new(Value, StandardUncertainty);

    /// <summary>∂y/∂xᵢ · u(xᵢ) of one input, with its sign: the line of an uncertainty budget.</summary>
    public double Contribution(int input) => _contributions[input];

    /// <summary>f(x) for a function whose value and derivative at <see cref="Value"/> are known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Uncertain Through(double functionValue, double derivative) => new(functionValue, _contributions * derivative);

    /// <summary>√x.</summary>
    public static Uncertain Sqrt(in Uncertain x)
    {
        double root = Math.Sqrt(x.Value);
        return x.Through(root, 0.5 / root);
    }

    /// <summary>x + y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator +(in Uncertain x, in Uncertain y) => new(x.Value + y.Value, x._contributions + y._contributions);

    /// <summary>x − y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator -(in Uncertain x, in Uncertain y) => new(x.Value - y.Value, x._contributions - y._contributions);

    /// <summary>x · y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator *(in Uncertain x, in Uncertain y) =>
        new(x.Value * y.Value, x._contributions * y.Value + y._contributions * x.Value);

    /// <summary>x / y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator /(in Uncertain x, in Uncertain y)
    {
        double quotient = x.Value / y.Value;
        return new(quotient, (x._contributions - y._contributions * quotient) / y.Value);
    }

    /// <summary>x + c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator +(in Uncertain x, double exact) => new(x.Value + exact, x._contributions);

    /// <summary>x − c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator -(in Uncertain x, double exact) => new(x.Value - exact, x._contributions);

    /// <summary>c − x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator -(double exact, in Uncertain x) => new(exact - x.Value, -x._contributions);

    /// <summary>c · x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator *(double exact, in Uncertain x) => new(exact * x.Value, x._contributions * exact);

    /// <summary>x · c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator *(in Uncertain x, double exact) => new(x.Value * exact, x._contributions * exact);

    /// <summary>c / x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator /(double exact, in Uncertain x)
    {
        double quotient = exact / x.Value;
        return new(quotient, x._contributions * (-quotient / x.Value));
    }

    /// <summary>x / c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Uncertain operator /(in Uncertain x, double exact) => new(x.Value / exact, x._contributions / exact);
}
