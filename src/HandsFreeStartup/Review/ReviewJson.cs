using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Reports.Review;

namespace HandsFreeStartup.Review;

/// <summary>A review as JSON; every member is explained in review.schema.json.</summary>
static class ReviewJson
{
    static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    /// <summary>Writes the document of these jobs, one after the other.</summary>
    public static void Write(IReadOnlyList<FolderEntry> entries, TextWriter output)
    {
        Pieces text = new(output);
        text.Add($"{{\n  \"format\": \"review/1\",\n  \"must_be_looked_at\": {entries.Count(entry => entry.Review.MustBeLookedAt).ToString(CultureInfo.InvariantCulture)},\n  \"jobs\": [");
        for (int i = 0; i < entries.Count; i++)
        {
            // No text within it holds a line break of its own, so every one of them is of the layout.
            text.Add($"{(i == 0 ? "" : ",")}\n    {Escaped(JsonSerializer.Serialize(Part(entries[i]), Options)).Replace("\n", "\n    ", StringComparison.Ordinal)}");
        }

        text.Add(entries.Count == 0 ? "]\n}\n" : "\n  ]\n}\n");
        text.HandOn();
    }

    /// <summary>What a terminal would obey is written as its number, so that the document stays what it was and is harmless where it is shown.</summary>
    static string Escaped(string json)
    {
        if (json.All(letter => letter is '\n' or >= ' ' and <= '~'))
        {
            return json;
        }

        StringBuilder escaped = new(json.Length);
        foreach (Rune rune in json.EnumerateRunes())
        {
            string letter = rune.ToString();
            if (rune.Value == '\n' || VisibleText.IsVisible(letter))
            {
                escaped.Append(letter);
                continue;
            }

            foreach (char half in letter)
            {
                escaped.Append(CultureInfo.InvariantCulture, $"\\u{(int)half:X4}");
            }
        }

        return escaped.ToString();
    }

    static JobPart Part(FolderEntry entry) => new(entry.Path)
    {
        JobId = entry.Review.JobId,
        Status = entry.Review.Status,
        MustBeLookedAt = entry.Review.MustBeLookedAt,
        IsDemonstration = entry.Review.IsDemonstration,
        Began = entry.Review.Began,
        Ended = entry.Review.Ended,
        Technician = entry.Review.Technician,
        Appliance = entry.Review.Appliance,
        Checkpoint = entry.Checkpoint,
        Findings = entry.Review.Findings,
    };

    sealed record JobPart(string File)
    {
        public required string JobId { get; init; }

        public required JobStatus Status { get; init; }

        public required bool MustBeLookedAt { get; init; }

        public required bool IsDemonstration { get; init; }

        public required DateTimeOffset? Began { get; init; }

        public required DateTimeOffset? Ended { get; init; }

        public required string Technician { get; init; }

        public required string Appliance { get; init; }

        public required string? Checkpoint { get; init; }

        public required ImmutableArray<ReviewFinding> Findings { get; init; }
    }
}
