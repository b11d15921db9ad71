using System.Collections.Immutable;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Storage.Log;

/// <summary>How an event is written: its kind as a stable word, its content as JSON. Renamed classes never change the log.</summary>
public static class EventFormat
{
    static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    static readonly ImmutableDictionary<string, Type> TypeOf = typeof(StartupEvent).GetCustomAttributes<JsonDerivedTypeAttribute>()
        .ToImmutableDictionary(attribute => (string)attribute.TypeDiscriminator!, attribute => attribute.DerivedType);

    static readonly ImmutableDictionary<Type, string> Names = TypeOf.ToImmutableDictionary(entry => entry.Value, entry => entry.Key);

    /// <summary>Every kind of event that can be written and read.</summary>
    public static IEnumerable<string> Kinds => TypeOf.Keys.Order(StringComparer.Ordinal);

    /// <summary>The kind of <paramref name="happened"/>, for instance <c>reading-entered</c>.</summary>
    public static string KindOf(StartupEvent happened) => Names[happened.GetType()];

    /// <summary>The content of <paramref name="happened"/>; decimals keep their trailing zeros.</summary>
    public static string BodyOf(StartupEvent happened) => JsonSerializer.Serialize(happened, happened.GetType(), Options);

    /// <summary>The event that was written.</summary>
    /// <exception cref="LogException">The kind is not known, or the content is no such event.</exception>
    public static StartupEvent Read(string kind, string body)
    {
        if (!TypeOf.TryGetValue(kind, out Type? type))
        {
            throw new LogException($"The kind of event '{kind}' is not known to this program; the record is newer, or damaged.");
        }

        try
        {
            return JsonSerializer.Deserialize(body, type, Options) as StartupEvent
                ?? throw new LogException($"The event of kind '{kind}' is empty.");
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            throw new LogException($"The content of the event of kind '{kind}' cannot be read: {error.Message}", error);
        }
    }
}
