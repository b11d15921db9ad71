using System.Text.Json;
using System.Text.Json.Serialization;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Hear;

/// <summary>All evidence of a measurement, one line of JSON a recording, for whoever looks for better thresholds with tools of his own.</summary>
static class EvidenceFile
{
    static readonly JsonSerializerOptions Format = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new MeaningAsLabel(), new JsonStringEnumConverter() },
    };

    /// <summary>Appends what was measured on one recording.</summary>
    public static void Write(TextWriter file, HearCase measured, Utterance utterance, HearRow row) => file.WriteLine(JsonSerializer.Serialize(
        new { measured.File, measured.Expected, measured.Context, measured.Speaker, measured.Words, row.Heard, row.Class, row.LatencyMs, utterance.SignalToNoise, utterance.NoiseSpread, utterance.FreeText, utterance.Ears, utterance.Again },
        Format));

    /// <summary>A meaning in the words of a label.</summary>
    sealed class MeaningAsLabel : JsonConverter<Meaning>
    {
        public override Meaning Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) => throw new NotSupportedException("Evidence is only written.");

        public override void Write(Utf8JsonWriter writer, Meaning value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
    }
}
