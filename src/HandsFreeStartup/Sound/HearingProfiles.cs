using System.Collections.Immutable;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;

namespace HandsFreeStartup.Sound;

/// <summary>The profile that the command <c>sound</c> chose, kept in the data folder as one word.</summary>
public static class HearingProfiles
{
    static readonly ImmutableArray<(HearingProfile Profile, string Word)> Words =
        [(HearingProfile.Headset, "headset"), (HearingProfile.EchoCancelled, "echo-cancelled"), (HearingProfile.HalfDuplex, "half-duplex")];

    /// <summary>The words for the command line.</summary>
    public static string[] All => [.. Words.Select(known => known.Word)];

    /// <summary>The word of a profile.</summary>
    public static string WordOf(HearingProfile profile) => Words.First(known => known.Profile == profile).Word;

    /// <summary>The profile of a word; null for another word.</summary>
    public static HearingProfile? Find(string? word) => Words.Where(known => known.Word == word).Select(known => (HearingProfile?)known.Profile).FirstOrDefault();

    /// <summary>The one that was kept; where none was, the one that always works.</summary>
    public static HearingProfile Kept(DataFolder data)
    {
        try
        {
            return Find(File.ReadLines(PathIn(data)).FirstOrDefault()?.Trim()) ?? HearingProfile.HalfDuplex;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return HearingProfile.HalfDuplex;
        }
    }

    /// <summary>Keeps one.</summary>
    /// <returns>Whether it could be kept.</returns>
    public static bool Keep(DataFolder data, HearingProfile profile)
    {
        try
        {
            Directory.CreateDirectory(data.Path);
            File.WriteAllText(PathIn(data), WordOf(profile) + "\n");
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    static string PathIn(DataFolder data) => Path.Combine(data.Path, "hearing-profile");
}
