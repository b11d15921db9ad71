using System.Collections.Immutable;
using System.Security.Cryptography;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Running;

/// <summary>A model file with the hash that it was found to have.</summary>
/// <param name="Path">Full path.</param>
/// <param name="Sha256">Lower-case hexadecimal.</param>
public sealed record ModelFile(string Path, string Sha256)
{
    /// <summary>As it is recorded with a job.</summary>
    public override string ToString() => $"{System.IO.Path.GetFileName(Path)} sha256 {Sha256}";
}

/// <summary>The models in a folder, checked against its file SHA256SUMS before anything is heard with them.</summary>
/// <param name="folder">The folder.</param>
public sealed class ModelFiles(string folder)
{
    /// <summary>More than any recognizer has.</summary>
    const long MostBytes = 8L << 30;

    /// <summary>The small English recognizer.</summary>
    public const string Small = WhisperRecogniser.FirstModel;

    /// <summary>The second ear.</summary>
    public const string Large = WhisperRecogniser.SecondModel;

    /// <summary>Hears free speech.</summary>
    public const string Dictation = WhisperRecogniser.DictationModel;

    /// <summary>The speech detector.</summary>
    public const string Detector = "ggml-silero-v6.2.3.bin";

    /// <summary>The recognizers to listen with, the one that listens first at the front.</summary>
    /// <param name="own">Path of another recognizer to listen with alone, or null for the shipped ones.</param>
    /// <param name="ears">Number of shipped ones, 1 or 2.</param>
    /// <exception cref="ModelFileException">One is missing, or not the right one.</exception>
    public ImmutableArray<ModelFile> Recognisers(string? own, int ears) =>
        own is not null ? [Unlisted(own)] : [.. ((string[])[Small, Large])[..ears].Select(Checked)];

    /// <summary>A model that is what it should be.</summary>
    /// <param name="name">File name.</param>
    /// <exception cref="ModelFileException">It is missing, or not the right one.</exception>
    public ModelFile Checked(string name)
    {
        ModelFile found = Unlisted(Path.Combine(folder, name));
        string? expected = File.ReadLines(Path.Combine(folder, "SHA256SUMS"))
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .FirstOrDefault(parts => parts.Length == 2 && parts[1].TrimStart('*') == name)?[0];
        return expected == found.Sha256
            ? found
            : throw new ModelFileException($"The model file {found.Path} is not the one that belongs to this program (its SHA-256 is not the one in SHA256SUMS): copy it again.");
    }

    /// <summary>A model of the user's own choice; its hash is recorded, not checked.</summary>
    /// <exception cref="ModelFileException">It is missing.</exception>
    public static ModelFile Unlisted(string path)
    {
        try
        {
            using FileStream stream = RegularFile.Open(path, MostBytes);
            return new ModelFile(Path.GetFullPath(path), Convert.ToHexStringLower(SHA256.HashData(stream)));
        }
        catch (UnusableFileException e)
        {
            throw new ModelFileException(e.Message);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new ModelFileException($"The model file {path} is missing or cannot be read: copy it again.");
        }
    }
}

/// <summary>A model file cannot be used; the message is one sentence with the remedy. Keys still work.</summary>
/// <param name="message">The sentence.</param>
public sealed class ModelFileException(string message) : Exception(message);
