using System.Collections.Immutable;
using System.Text;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>A program that writes the microphone's sound to its standard output: raw 16-bit little-endian samples, 16 kHz, one channel.</summary>
/// <param name="Program">Full path.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record CaptureCommand(string Program, ImmutableArray<string> Arguments)
{
    /// <summary>What to say when the recorder that was asked for is not there.</summary>
    /// <param name="microphone">As <see cref="Find"/> takes it.</param>
    /// <param name="machine">Where it was looked for; null for this one.</param>
    public static string Missing(string? microphone, Machine? machine = null) => string.IsNullOrWhiteSpace(microphone) || MayBeDevice(Words(microphone), machine ?? Machine.This)
        ? Recorders.Remedy((machine ?? Machine.This).Platform)
        : $"The program of --microphone \"{microphone}\" is not installed: name a device or another program; until then use the keys.";

    /// <summary>The name by which the recorder is called in messages.</summary>
    public string Name { get; init; } = Path.GetFileName(Program);

    /// <summary>The recorder to use, or null when none is installed.</summary>
    /// <param name="microphone">Null for the system's default; the name of a device of the first recorder found; or a whole command line.</param>
    /// <param name="machine">What is installed; null for this one.</param>
    public static CaptureCommand? Find(string? microphone = null, Machine? machine = null)
    {
        machine ??= Machine.This;
        if (string.IsNullOrWhiteSpace(microphone))
        {
            return Recorders.Of(machine, null);
        }

        ImmutableArray<string> words = Words(microphone);
        return words.Length > 0 && machine.Find(words[0]) is { } program ? new CaptureCommand(program, words[1..])
            : MayBeDevice(words, machine) ? Recorders.Of(machine, microphone)
            : null;
    }

    /// <summary>Only on Linux is a device's name always one word.</summary>
    static bool MayBeDevice(ImmutableArray<string> words, Machine machine) => words.Length <= 1 || machine.Platform != Platform.Linux;

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
