using System.Collections.Immutable;

namespace HandsFreeStartup.Storage.Log;

/// <summary>What can lie beside a record and belong to it. All kinds are kept, hashed, verified, carried and removed in the same way.</summary>
/// <param name="Noun">As people call one of them.</param>
/// <param name="Ending">End of the name of their folder, which begins with the name of the job's file.</param>
public sealed record AttachmentKind(string Noun, string Ending)
{
    /// <summary>What was heard: readings, orders, notes and reasons.</summary>
    public static AttachmentKind Recording { get; } = new("recording", ".clips");

    /// <summary>What was photographed.</summary>
    public static AttachmentKind Photo { get; } = new("photo", ".photos");

    /// <summary>Every kind.</summary>
    public static ImmutableArray<AttachmentKind> All { get; } = [Recording, Photo];

    /// <summary>The folder of a job's attachments of this kind.</summary>
    public string FolderOf(string jobPath) => $"{jobPath}{Ending}";
}
