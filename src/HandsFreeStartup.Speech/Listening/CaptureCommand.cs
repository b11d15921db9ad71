using System.Collections.Immutable;
using System.Text;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>A program that writes the microphone's sound to its standard output: raw 16-bit little-endian samples, 16 kHz, one channel.</summary>
/// <param name="Program">Full path.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record CaptureCommand(string Program, ImmutableArray<string> Arguments)
{
    /// <summary>What to say when there is no such program.</summary>
    public const string NoneInstalled =
        "No program that records sound is installed: install pulseaudio-utils (parec), pipewire-bin (pw-record) or alsa-utils (arecord); until then use the keys.";

    /// <summary>What to say when the recorder that was asked for is not there.</summary>
    /// <param name="microphone">As <see cref="Find"/> takes it.</param>
    public static string Missing(string? microphone) => string.IsNullOrWhiteSpace(microphone) || Words(microphone).Length == 1
        ? NoneInstalled
        : $"The program of --microphone \"{microphone}\" is not installed: name a device or another program; until then use the keys.";

    /// <summary>The name by which the program is called in messages.</summary>
    public string Name => Path.GetFileName(Program);

    /// <summary>The recorder to use, or null when none is installed.</summary>
    /// <param name="microphone">Null for the system's default; the name of a device of the first recorder found; or a whole command line.</param>
    /// <param name="find">Where a program is installed; null for <see cref="InstalledProgram.Find"/>.</param>
    public static CaptureCommand? Find(string? microphone = null, Func<string, string?>? find = null)
    {
        find ??= InstalledProgram.Find;
        if (!string.IsNullOrWhiteSpace(microphone))
        {
            ImmutableArray<string> words = Words(microphone);
            if (find(words[0]) is { } program)
            {
                return new CaptureCommand(program, words[1..]);
            }

            if (words.Length > 1)
            {
                return null;
            }
        }

        return Recorders
            .Select(recorder => find(recorder.Name) is { } path ? new CaptureCommand(path, recorder.Arguments(microphone)) : null)
            .FirstOrDefault(command => command is not null);
    }

    static readonly ImmutableArray<(string Name, Func<string?, ImmutableArray<string>> Arguments)> Recorders =
    [
        ("parec", device => ["--raw", "--format=s16le", "--rate=16000", "--channels=1", "--latency-msec=30", "--verbose", .. Named("--device=", device)]),
        ("pw-record", device => ["--format=s16", "--rate=16000", "--channels=1", "--latency=30ms", .. Named("--target=", device), "-"]),
        ("arecord", device => ["-q", "-t", "raw", "-f", "S16_LE", "-r", "16000", "-c", "1", "--buffer-time=200000", "-D", device ?? "default"]),
    ];

    static ImmutableArray<string> Named(string option, string? device) => device is null ? [] : [option + device];

    static ImmutableArray<string> Words(string line)
    {
        ImmutableArray<string>.Builder words = ImmutableArray.CreateBuilder<string>();
        StringBuilder word = new();
        char quote = '\0';
        bool begun = false;
        foreach (char c in line)
        {
            if (c == quote)
            {
                quote = '\0';
            }
            else if (quote == '\0' && c is '"' or '\'')
            {
                (quote, begun) = (c, true);
            }
            else if (quote == '\0' && char.IsWhiteSpace(c))
            {
                Complete();
            }
            else
            {
                word.Append(c);
                begun = true;
            }
        }

        Complete();
        return words.ToImmutable();

        void Complete()
        {
            if (begun)
            {
                words.Add(word.ToString());
                word.Clear();
                begun = false;
            }
        }
    }
}
