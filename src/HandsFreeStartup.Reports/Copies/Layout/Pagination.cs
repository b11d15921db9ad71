namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>A strip at its place on a page.</summary>
sealed record Placed(Strip Strip, double X, double Y);

/// <summary>Places strips on pages, in one column or balanced in two.</summary>
/// <param name="left">Left edge of the text.</param>
/// <param name="top">Upper edge of the text on every page.</param>
/// <param name="firstBottom">Lower edge on the first page, which has a foot of its own.</param>
/// <param name="bottom">Lower edge on every other page.</param>
sealed class Pagination(double left, double top, double firstBottom, double bottom)
{
    /// <summary>A column shorter than this at the foot of a page is not begun.</summary>
    const double ShortestColumn = 90;

    readonly List<List<Placed>> _pages = [[]];
    double _used;

    public IReadOnlyList<IReadOnlyList<Placed>> Pages => _pages;

    double Bottom => _pages.Count == 1 ? firstBottom : bottom;

    double Y => top + _used;

    double Available => Bottom - Y;

    bool IsAtTop => _pages[^1].Count == 0;

    public void BreakPage()
    {
        if (!IsAtTop)
        {
            _pages.Add([]);
            _used = 0;
        }
    }

    /// <summary>Places strips one under the other.</summary>
    public void Add(IEnumerable<Strip> strips)
    {
        foreach (IReadOnlyList<Strip> unit in Units(strips))
        {
            if (unit.Sum(strip => strip.Height) > Available && !IsAtTop)
            {
                BreakPage();
                Place(unit[0].Head is { } head ? [head] : []);
            }
            Place(unit);
        }
    }

    /// <summary>
    /// Places groups of strips in two columns of equal height, the second one <paramref name="secondX"/> to the right. A group is broken between columns where
    /// <paramref name="breaks"/> says so or the page would not hold it; what is too much goes on in the columns of the next page.
    /// </summary>
    public void AddInColumns(IEnumerable<IEnumerable<Strip>> groups, double secondX, bool breaks = true)
    {
        IReadOnlyList<Strip>[] whole = [.. groups.Select(group => group.ToArray())];
        if (Available < ShortestColumn && !Fits([.. Units(whole.SelectMany(group => group))], Available))
        {
            BreakPage();
        }

        Queue<IReadOnlyList<Strip>> units = new(!breaks && Fits(whole, Available) ? whole : Units(whole.SelectMany(group => group)));
        while (units.Count > 0)
        {
            double height = BalancedHeight([.. units], Available);
            double first = PlaceColumn(units, height, left);
            double second = PlaceColumn(units, height, left + secondX);
            _used += Math.Max(first, second);
            if (units.Count > 0)
            {
                BreakPage();
            }
        }
    }

    double PlaceColumn(Queue<IReadOnlyList<Strip>> units, double height, double x)
    {
        double used = Column([.. units], height, out IReadOnlyList<Strip> strips, out int taken);
        double y = Y;
        foreach (Strip strip in strips)
        {
            _pages[^1].Add(new Placed(strip, x, y));
            y += strip.Height;
        }

        for (int i = 0; i < taken; i++)
        {
            units.Dequeue();
        }
        return used;
    }

    static bool Fits(IReadOnlyList<IReadOnlyList<Strip>> units, double height)
    {
        double first = Column(units, height, out _, out int taken);
        double second = Column([.. units.Skip(taken)], height, out _, out int rest);
        return taken + rest >= units.Count && Math.Max(first, second) <= height;
    }

    /// <summary>The smallest height at which two columns hold everything, or all there is.</summary>
    static double BalancedHeight(IReadOnlyList<IReadOnlyList<Strip>> units, double available)
    {
        double low = 0, high = available;
        while (high - low > 0.5)
        {
            double middle = (low + high) / 2;
            (low, high) = Fits(units, middle) ? (low, middle) : (middle, high);
        }
        return high;
    }

    /// <summary>Fills a column; it holds at least one unit, so that a unit higher than a page does not stop the work.</summary>
    static double Column(IReadOnlyList<IReadOnlyList<Strip>> units, double height, out IReadOnlyList<Strip> strips, out int taken)
    {
        List<Strip> column = units is [[{ Head: { } head }, ..], ..] ? [head] : [];
        double used = column.Sum(strip => strip.Height);
        taken = 0;
        int skipped = 0;
        foreach (IReadOnlyList<Strip> unit in units)
        {
            if (taken == 0 && column.Count == 0 && unit.All(strip => strip.IsSpace))
            {
                skipped++;
                continue;
            }

            double more = unit.Sum(strip => strip.Height);
            if (taken > 0 && used + more > height)
            {
                break;
            }
            column.AddRange(unit);
            used += more;
            taken++;
        }
        taken += skipped;
        strips = column;
        return used;
    }

    void Place(IEnumerable<Strip> strips)
    {
        foreach (Strip strip in strips)
        {
            _pages[^1].Add(new Placed(strip, left, Y));
            _used += strip.Height;
        }
    }

    static IEnumerable<IReadOnlyList<Strip>> Units(IEnumerable<Strip> strips)
    {
        List<Strip> unit = [];
        foreach (Strip strip in strips)
        {
            unit.Add(strip);
            if (!strip.KeepsWithNext)
            {
                yield return unit;
                unit = [];
            }
        }

        if (unit.Count > 0)
        {
            yield return unit;
        }
    }
}
