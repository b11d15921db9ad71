using System.Collections.Immutable;

namespace HandsFreeStartup.Storage.Log;

/// <summary>How a job's file looks: what the writer lays down and the verifier demands.</summary>
static class LogFormat
{
    /// <summary>Raised whenever an older program could misread a newer file.</summary>
    public const int Version = 1;

    /// <summary>Marks a SQLite file as a job of this program ("HFSJ").</summary>
    public const int ApplicationId = 0x4846534A;

    /// <summary>The statements of Schema.sql, one each, without the closing semicolon.</summary>
    public static ImmutableArray<string> Schema { get; } = ReadSchema();

    static ImmutableArray<string> ReadSchema()
    {
        using Stream stream = typeof(LogFormat).Assembly.GetManifestResourceStream("Schema.sql")!;
        using StreamReader reader = new(stream);
        return [.. reader.ReadToEnd().ReplaceLineEndings("\n").Split(";\ncreate ", StringSplitOptions.RemoveEmptyEntries)
            .Select((statement, index) => (index == 0 ? statement : $"create {statement}").TrimEnd('\n').TrimEnd(';'))];
    }
}
