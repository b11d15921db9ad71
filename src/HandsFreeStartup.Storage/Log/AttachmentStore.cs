using System.Security.Cryptography;
using System.Text.Json;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Storage.Log;

/// <summary>An attachment that an event names.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its file name.</param>
/// <param name="Sha256">Hash of its bytes, lower-case hexadecimal.</param>
sealed record NamedAttachment(AttachmentKind Kind, string Name, string Sha256);

/// <summary>
/// Keeps recordings and photos beside the log, each named by the SHA-256 of its bytes, so that the event that names it holds its hash; <c>sha256sum</c> checks it too. Keep an attachment before the
/// event that names it is appended.
/// </summary>
/// <param name="jobPath">The job's file; the folders lie beside it.</param>
public sealed class AttachmentStore(string jobPath)
{
    const int LargestPhoto = 50 << 20;

    /// <summary>Keeps what was heard.</summary>
    /// <param name="samples">16 kHz, one channel, -1 to 1; what is beyond is clipped.</param>
    /// <returns>The name under which it is kept.</returns>
    /// <exception cref="LogException">It cannot be written.</exception>
    public string Keep(ReadOnlySpan<float> samples)
    {
        byte[] wav = RecordedSound.Wav(samples);
        return Kept(() => Keep(AttachmentKind.Recording, wav, ".wav").Name, $"The recording cannot be kept in {AttachmentKind.Recording.FolderOf(jobPath)}", "put it right and continue with start --resume");
    }

    /// <summary>Keeps a copy of a photo.</summary>
    /// <param name="path">The photo.</param>
    /// <returns>Name of the copy, and hash of its bytes.</returns>
    /// <exception cref="LogException">It cannot be read or kept; one sentence says why.</exception>
    public (string Name, string Sha256) KeepPhoto(string path) => Kept(
        () => Keep(AttachmentKind.Photo, RegularFile.ReadAll(path, LargestPhoto), PictureEnding(path)), $"The photo {path} cannot be kept", "look at the name and the folder");

    /// <summary>Full path of a kept attachment, or null if it is missing or is no file that one can be.</summary>
    public string? Find(AttachmentKind kind, string name) => Attachment.IsUsable(Attachment.StatusOf(kind.FolderOf(jobPath), name)) ? Path.Combine(kind.FolderOf(jobPath), name) : null;

    /// <summary>How many files of a kind lie there.</summary>
    internal int Count(AttachmentKind kind) => Directory.Exists(kind.FolderOf(jobPath)) ? Directory.GetFiles(kind.FolderOf(jobPath)).Length : 0;

    /// <summary>What an event names.</summary>
    /// <param name="body">Its JSON.</param>
    /// <param name="happened">The same as it is read.</param>
    internal static IEnumerable<NamedAttachment> NamedBy(ReadOnlyMemory<byte> body, StartupEvent? happened)
    {
        using JsonDocument json = JsonDocument.Parse(body);
        return
        [
            .. Clips(json.RootElement).Select(clip => new NamedAttachment(AttachmentKind.Recording, clip, Path.GetFileNameWithoutExtension(clip))),
            .. happened is PhotoAttached photo ? [new NamedAttachment(AttachmentKind.Photo, photo.Name, photo.Sha256)] : Array.Empty<NamedAttachment>(),
        ];
    }

    /// <summary>What is wrong with an attachment, as part of a sentence; null where it is what it should be.</summary>
    /// <param name="named">As the event names it.</param>
    /// <param name="isForgotten">Whether it was removed on purpose.</param>
    internal string? WhatIsWrong(NamedAttachment named, bool isForgotten)
    {
        string folder = named.Kind.FolderOf(jobPath), one = $"the {named.Kind.Noun} {named.Name}";
        FileStatus status = Attachment.StatusOf(folder, named.Name);
        return (status.Kind, isForgotten) switch
        {
            (FileKind.None, true) => null,
            (FileKind.None, false) => $"{one} is missing.",
            _ when !Attachment.IsUsable(status) => $"{one} was exchanged: what lies in its place is a link, a device, or larger than any {named.Kind.Noun}.",
            _ when Attachment.HashOf(Path.Combine(folder, named.Name)) != named.Sha256 => $"{one} was changed or damaged.",
            (_, true) => $"{one} is still there although it was to be removed: run forget again.",
            _ => null,
        };
    }

    static IEnumerable<string> Clips(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property =>
            property.NameEquals("clip") && property.Value.ValueKind == JsonValueKind.String ? [property.Value.GetString()!] : Clips(property.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Clips),
        _ => [],
    };

    (string Name, string Sha256) Keep(AttachmentKind kind, byte[] bytes, string ending)
    {
        string hash = Convert.ToHexStringLower(SHA256.HashData(bytes)), name = $"{hash}{ending}", path = Path.Combine(kind.FolderOf(jobPath), name);
        Directory.CreateDirectory(kind.FolderOf(jobPath));
        if (!File.Exists(path))
        {
            WholeFile.Write(path, file => file.Write(bytes), $"The {kind.Noun}'s copy");
        }

        return (name, hash);
    }

    static T Kept<T>(Func<T> keep, string what, string remedy)
    {
        try
        {
            return keep();
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new LogException(FileTrouble.Sentence(error, what, remedy), error);
        }
    }

    /// <summary>The end of the name where it is one that pictures have; it becomes part of the record.</summary>
    static string PictureEnding(string path) => Path.GetExtension(path).ToLowerInvariant() is { Length: > 1 and <= 6 } extension && extension.Skip(1).All(char.IsAsciiLetterOrDigit) ? extension : "";
}
