namespace HandsFreeStartup.Simulation;

/// <summary>Chance that is the same on every machine: a number belongs to a seed, a channel and a moment, not to the order in which it was asked for.</summary>
/// <remarks>SplitMix64 (Steele, Lea and Flood 2014), one step a number. Only whole numbers and exact operations, so the last bit is the same everywhere.</remarks>
static class Chance
{
    /// <summary>Even between -1 and 1.</summary>
    public static double Even(ulong seed, int channel, long moment) => 2 * Unit(seed, channel, moment) - 1;

    /// <summary>A bell of standard deviation 1: the sum of twelve even numbers between 0 and 1, less six.</summary>
    public static double Bell(ulong seed, int channel, long moment)
    {
        ulong state = Mix(seed ^ Mix((ulong)channel * 0x9E3779B97F4A7C15 + (ulong)moment));
        double sum = -6;
        for (int one = 0; one < 12; one++)
        {
            state += 0x9E3779B97F4A7C15;
            sum += (Mix(state) >> 11) * (1.0 / (1UL << 53));
        }

        return sum;
    }

    static double Unit(ulong seed, int channel, long moment) =>
        (Mix(seed ^ Mix((ulong)channel * 0x9E3779B97F4A7C15 + (ulong)moment)) >> 11) * (1.0 / (1UL << 53));

    static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
