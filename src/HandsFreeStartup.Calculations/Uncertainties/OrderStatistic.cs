namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>The k-th smallest value without sorting everything (Hoare's selection).</summary>
static class OrderStatistic
{
    /// <summary>Value that sorting would put at <paramref name="place"/>; afterwards nothing before that place is larger, nothing after it smaller.</summary>
    public static double Select(Span<double> values, int place)
    {
        int first = 0;
        int last = values.Length - 1;
        while (first < last)
        {
            double pivot = values[first + (last - first) / 2];
            int i = first;
            int j = last;
            while (i <= j)
            {
                while (values[i] < pivot)
                {
                    i++;
                }
                while (values[j] > pivot)
                {
                    j--;
                }
                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    i++;
                    j--;
                }
            }
            if (place <= j)
            {
                last = j;
            }
            else if (place >= i)
            {
                first = i;
            }
            else
            {
                break;
            }
        }
        return values[place];
    }
}
