namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>Repeatable random numbers: SplitMix64 (Steele, Lea and Flood 2014), the same on every machine and version.</summary>
struct RandomNumbers(ulong seed)
{
    ulong _state = seed;
    double _spare = double.NaN;

    public double Next(RandomInput input) => input.Distribution == Distribution.Normal
        ? input.Value + input.StandardUncertainty * NextNormal()
        : input.Value + input.StandardUncertainty * Math.Sqrt(3) * (2 * NextUniform() - 1);

    double NextUniform()
    {
        ulong z = _state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    // Marsaglia's polar method makes two at a time.
    double NextNormal()
    {
        if (!double.IsNaN(_spare))
        {
            double spare = _spare;
            _spare = double.NaN;
            return spare;
        }
        double x, y, square;
        do
        {
            x = 2 * NextUniform() - 1;
            y = 2 * NextUniform() - 1;
            square = x * x + y * y;
        }
        while (square is >= 1 or 0);
        double factor = Math.Sqrt(-2 * Math.Log(square) / square);
        _spare = y * factor;
        return x * factor;
    }
}
