using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Hear;

/// <summary>What was found about each microphone with its user's voice, kept in the data folder; one line a check, tab-separated.</summary>
/// <param name="data">The data folder.</param>
/// <param name="microphone">As the user names it.</param>
sealed class MicrophoneNotes(DataFolder data, string microphone)
{
    const string Heading = "when\tright\tconfirmed\tagain\twrong";

    /// <summary>The file of this microphone.</summary>
    public string Path { get; } = System.IO.Path.Combine(data.Path, "microphones", $"{FileName(microphone)}.tsv");

    /// <summary>Adds a line.</summary>
    /// <exception cref="WrongUseException">It cannot be written.</exception>
    public void Keep(LiveResult result, DateTimeOffset now)
    {
        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
            ImmutableArray<string> heading = File.Exists(Path) ? [] : [Heading];
            File.AppendAllLines(Path, [.. heading, string.Create(CultureInfo.InvariantCulture, $"{now:yyyy-MM-dd HH:mm}\t{result.Right}\t{result.Confirmed}\t{result.Again}\t{result.Wrong}")]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"The verdict cannot be kept in {Path}: {e.Message}");
        }
    }

    static string FileName(string name) => string.Concat(name.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or '.' ? letter : '_'));
}
