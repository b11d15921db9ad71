namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>A piece of a page that is never broken: a line of text, a line of a table row, a drawing.</summary>
/// <param name="Height">In points.</param>
/// <param name="Draw">Draws it with its upper left corner at the given place.</param>
sealed record Strip(double Height, Action<Pen, double, double> Draw)
{
    /// <summary>Whether the next strip must stand on the same page and in the same column.</summary>
    public bool KeepsWithNext { get; init; }

    /// <summary>Drawn again above this strip where it begins a page or column: the head of a table that goes on.</summary>
    public Strip? Head { get; init; }

    /// <summary>Whether it is only room between others; at the top of a page or column it is left out.</summary>
    public bool IsSpace { get; init; }

    public static Strip Space(double height) => new(height, (_, _, _) => { }) { IsSpace = true };

    /// <summary>One strip with others drawn beside it at the given distances.</summary>
    public static Strip Beside(params (double X, IReadOnlyList<Strip> Strips)[] columns) => new(
        columns.Max(column => column.Strips.Sum(strip => strip.Height)),
        (pen, x, y) =>
        {
            foreach ((double offset, IReadOnlyList<Strip> strips) in columns)
            {
                double top = y;
                foreach (Strip strip in strips)
                {
                    strip.Draw(pen, x + offset, top);
                    top += strip.Height;
                }
            }
        });
}
