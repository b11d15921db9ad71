using System.Globalization;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Tests.Support;

/// <summary>What a record holds, in the words of expected-record.tsv.</summary>
public static class RecordLines
{
    public static IReadOnlyList<string> Of(string job) => [.. StoredJob.Read(job).Events.Select(Line).OfType<string>()];

    static string? Line(StartupEvent happened) => happened switch
    {
        ReadingEntered { Reading: var reading } => Line("entered", reading.Key, reading.Value.ToString(CultureInfo.InvariantCulture)),
        ReadingScratched scratched => Line("disregarded", scratched.Key, ""),
        ReadingVoided voided => Line("voided", voided.Key, ""),
        AdjustmentMade made => Line("adjusted", made.Key, FormattableString.Invariant($"{made.From} to {made.To}")),
        StartupSigned => "signed\t\t\t",
        _ => null,
    };

    static string Line(string what, ReadingKey key, string value) => string.Join('\t', what, key.Scope, key.FieldId, value);
}
