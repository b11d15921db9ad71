using System.Globalization;

namespace HandsFreeStartup.Calculations.Tests.Support;

/// <summary>Collects what differs by more than its tolerance, so that one failure shows every bad row, and counts what was compared.</summary>
sealed class Differences
{
    readonly List<string> _found = [];
    int _compared;

    /// <summary>Compares against a table cell; an empty cell is "not defined" there and skipped.</summary>
    public void Compare(ReferenceTable.Row row, string column, double actual, double absolute, double relative)
    {
        if (!row.Has(column))
        {
            return;
        }
        _compared++;
        double expected = row.Number(column);
        double difference = Math.Abs(actual - expected);
        double allowed = Math.Max(absolute, relative * Math.Abs(expected));
        if (!(difference <= allowed))
        {
            _found.Add(string.Create(CultureInfo.InvariantCulture, $"{column}: {actual:R} instead of {expected:R}, {difference:0.##E+0} over {allowed:0.##E+0}; row {row}"));
        }
    }

    /// <summary>Fails unless at least so many cells were compared and all agreed.</summary>
    public void AssertNone(int atLeast)
    {
        Assert.True(_found.Count == 0, $"{_found.Count} of {_compared} cells differ:\n" + string.Join("\n", _found.Take(20)));
        Assert.True(_compared >= atLeast, $"only {_compared} cells were compared");
    }
}
