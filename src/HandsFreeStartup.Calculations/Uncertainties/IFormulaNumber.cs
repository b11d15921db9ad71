namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>
/// A number that a formula can be written with once: <see cref="Uncertain"/> works it out with uncertainty, <see cref="Exact"/> draws it for Monte Carlo,
/// <see cref="Derivations.Term"/> prints it. What is explained is thus what is calculated.
/// </summary>
/// <typeparam name="T">The number itself.</typeparam>
public interface IFormulaNumber<T> where T : struct, IFormulaNumber<T>
{
    /// <summary>x + y.</summary>
    static abstract T operator +(in T x, in T y);

    /// <summary>x − y.</summary>
    static abstract T operator -(in T x, in T y);

    /// <summary>x · y.</summary>
    static abstract T operator *(in T x, in T y);

    /// <summary>x / y.</summary>
    static abstract T operator /(in T x, in T y);

    /// <summary>x + c.</summary>
    static abstract T operator +(in T x, double exact);

    /// <summary>x − c.</summary>
    static abstract T operator -(in T x, double exact);

    /// <summary>c − x.</summary>
    static abstract T operator -(double exact, in T x);

    /// <summary>c · x.</summary>
    static abstract T operator *(double exact, in T x);

    /// <summary>x · c.</summary>
    static abstract T operator *(in T x, double exact);

    /// <summary>c / x.</summary>
    static abstract T operator /(double exact, in T x);

    /// <summary>x / c.</summary>
    static abstract T operator /(in T x, double exact);

    /// <summary>√x.</summary>
    static abstract T Sqrt(in T x);
}
