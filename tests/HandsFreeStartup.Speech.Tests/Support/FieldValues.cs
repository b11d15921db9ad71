using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Legal values of a field.</summary>
static class FieldValues
{
    /// <summary>All of them, with each legal number of decimals.</summary>
    public static IEnumerable<decimal> All(Field field)
    {
        for (int decimals = field.FewestDecimals; decimals <= field.MostDecimals; decimals++)
        {
            decimal step = new(1, 0, 0, false, (byte)decimals);
            for (decimal value = field.Lowest + 0m * step; value <= field.Highest; value += step)
            {
                yield return Math.Round(value, decimals) + 0m * step;
            }
        }
    }
}
