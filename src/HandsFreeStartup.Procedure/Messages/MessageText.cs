using System.Text.Json;
using System.Text.Json.Serialization;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>A message in the log: the text that it shows.</summary>
sealed class MessageText : JsonConverter<Message>
{
    public override Message Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String ? Message.Recorded(reader.GetString()!) : throw new JsonException("Expected a text.");

    public override void Write(Utf8JsonWriter writer, Message value, JsonSerializerOptions options) => writer.WriteStringValue(value.Shown);
}
