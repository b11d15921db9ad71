using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>A limit, its guard band and a value as a bar of text: · outside, ~ guard band, = proven inside, | limit, X the value.</summary>
public static class GuardBandBar
{
    const int Width = 32;

    /// <summary>The bar; empty where the value is not known.</summary>
    /// <param name="value">With its uncertainty, in the unit of the limit.</param>
    /// <param name="limit">What judges it.</param>
    public static string Of(Estimate value, Limit limit)
    {
        if (!value.IsKnown)
        {
            return "";
        }

        double guard = value.ExpandedUncertainty;
        (double first, double last) = Scale(value.Value, guard, limit);
        char[] bar = new char[Width];
        for (int i = 0; i < Width; i++)
        {
            double x = first + (i + 0.5) * (last - first) / Width;
            bar[i] = Judge.Verdict(new(x, value.StandardUncertainty), limit) switch
            {
                Verdict.Pass => '=',
                Verdict.ConditionalPass or Verdict.ConditionalFail => '~',
                _ => '·',
            };
        }
        Mark(limit.Lower, '|');
        Mark(limit.Upper, '|');
        Mark(value.Value, 'X');
        return $"[{new string(bar)}]";

        void Mark(double? place, char sign)
        {
            if (place is { } x)
            {
                bar[Math.Clamp((int)((x - first) / (last - first) * Width), 0, Width - 1)] = sign;
            }
        }
    }

    static (double First, double Last) Scale(double value, double guard, Limit limit)
    {
        double low = Math.Min(limit.Lower ?? limit.Upper!.Value, limit.Upper ?? limit.Lower!.Value);
        double high = Math.Max(limit.Lower ?? low, limit.Upper ?? low);
        double first = Math.Min(value, low), last = Math.Max(value, high);
        double margin = Math.Max(2 * guard, Math.Max(0.1 * (last - first), 1e-9));
        return (first - margin, last + margin);
    }
}
