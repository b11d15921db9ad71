namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>A field in another unit: ranges are converted, decimals follow what instruments show in that unit (common practice, no source).</summary>
public static class FieldUnits
{
    /// <summary>The field as it is said in <paramref name="unit"/>.</summary>
    /// <param name="field">As the table has it.</param>
    /// <param name="unit">A unit of the same quantity.</param>
    public static Field In(Field field, Unit unit)
    {
        if (unit == field.Unit)
        {
            return field;
        }

        (int fewest, int most) = Decimals(field, unit);
        return field with
        {
            Unit = unit,
            Lowest = Down(field.Unit.Convert(field.Lowest, unit), most),
            Highest = -Down(-field.Unit.Convert(field.Highest, unit), most),
            UsualLowest = Down(field.Unit.Convert(field.UsualLowest, unit), most),
            UsualHighest = -Down(-field.Unit.Convert(field.UsualHighest, unit), most),
            FewestDecimals = fewest,
            MostDecimals = most,
        };
    }

    /// <summary>Draft and static pressure are small numbers: their tail must be said.</summary>
    static (int Fewest, int Most) Decimals(Field field, Unit unit) => (unit.Symbol, field.FewestDecimals) switch
    {
        ("Pa", >= 2) => (1, 1),
        ("Pa", _) => (0, 0),
        ("mbar", >= 2) => (2, 3),
        ("mbar", _) => (1, 2),
        _ => (field.FewestDecimals, field.MostDecimals),
    };

    static decimal Down(decimal value, int decimals) => Math.Round(value, decimals, MidpointRounding.ToNegativeInfinity);
}
