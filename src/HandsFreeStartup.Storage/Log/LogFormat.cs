using System.Collections.Immutable;

namespace HandsFreeStartup.Storage.Log;

/// <summary>How a job's file looks: what the writer lays down and the verifier demands. An older file keeps the rules of its own format.</summary>
/// <param name="Version">Raised whenever an older program could misread a newer file.</param>
/// <param name="Schema">Statements of its Schema-N.sql, one each, without the closing semicolon.</param>
/// <param name="IsSealed">Whether what is personal stands apart from the hashed bytes, which hold only its commitment.</param>
sealed record LogFormat(int Version, ImmutableArray<string> Schema, bool IsSealed)
{
    /// <summary>Marks a SQLite file as a job of this program ("HFSJ").</summary>
    public const int ApplicationId = 0x4846534A;

    static readonly ImmutableArray<LogFormat> All = [new(1, ReadSchema(1), IsSealed: false), new(2, ReadSchema(2), IsSealed: true)];

    /// <summary>The one that is written; the others are only read.</summary>
    public static LogFormat Current => All[^1];

    /// <summary>The format of that version, or null if this program does not know it.</summary>
    public static LogFormat? Find(long version) => All.FirstOrDefault(format => format.Version == version);

    static ImmutableArray<string> ReadSchema(int version)
    {
        using Stream stream = typeof(LogFormat).Assembly.GetManifestResourceStream(FormattableString.Invariant($"Schema-{version}.sql"))!;
        using StreamReader reader = new(stream);
        return [.. reader.ReadToEnd().ReplaceLineEndings("\n").Split(";\ncreate ", StringSplitOptions.RemoveEmptyEntries)
            .Select((statement, index) => (index == 0 ? statement : $"create {statement}").TrimEnd('\n').TrimEnd(';'))];
    }
}
