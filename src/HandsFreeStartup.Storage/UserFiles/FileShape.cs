using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>What the readers take, written down while they read: which keys each map may have, and what stands there. A schema for editors is made of it.</summary>
sealed class FileShape
{
    /// <summary>Their words are named in the file itself, by its own occasions and steps.</summary>
    static readonly ImmutableArray<string> NamedInTheFile = ["occasion", "prompts"];

    readonly Dictionary<string, SortedDictionary<string, JsonObject>> _maps = new(StringComparer.Ordinal);
    readonly Dictionary<YamlValue, (string What, string Key, bool IsItem)> _below = new(ReferenceEqualityComparer.Instance);
    string? _root;

    /// <summary>A map is read.</summary>
    public void Map(YamlValue value, string what, IEnumerable<string> keys)
    {
        _root ??= what;
        SortedDictionary<string, JsonObject> known = Of(what);
        foreach (string key in NamedInTheFile.Contains(what) ? [] : keys)
        {
            known.TryAdd(key, []);
        }

        if (_below.TryGetValue(value, out (string What, string Key, bool IsItem) place))
        {
            JsonObject reference = new() { ["$ref"] = $"#/$defs/{NameOf(what)}" };
            Of(place.What)[place.Key] = place.IsItem ? new JsonObject { ["type"] = "array", ["items"] = reference } : reference;
        }
    }

    /// <summary>A value stands below a key; what it is is told when it is read.</summary>
    public void Below(YamlValue value, string what, string key, bool isItem) => _below[value] = (what, key, isItem);

    /// <summary>A plain text, which YAML may take for a number or a switch.</summary>
    public void Text(string what, string key)
    {
        if (!NamedInTheFile.Contains(what))
        {
            Plain(what, key, new JsonObject { ["type"] = new JsonArray("string", "number", "boolean") });
        }
    }

    /// <summary>One of these words.</summary>
    public void Choice(string what, string key, IEnumerable<string> choices)
    {
        JsonNode?[] words = [.. choices.Select(word => word switch { "true" => JsonValue.Create(true), "false" => JsonValue.Create(false), _ => int.TryParse(word, out int number) ? JsonValue.Create(number) : (JsonNode?)JsonValue.Create(word) })];
        Of(what)[key] = new JsonObject { ["enum"] = new JsonArray(words) };
    }

    /// <summary>One of these words, or a list of some.</summary>
    public void Choices(string what, string key, IEnumerable<string> choices)
    {
        Choice(what, key, choices);
        JsonObject one = NamedInTheFile.Contains(key) ? new JsonObject { ["type"] = "string" } : Of(what)[key];
        Of(what)[key] = new JsonObject { ["anyOf"] = new JsonArray(one, new JsonObject { ["type"] = "array", ["items"] = one.DeepClone() }) };
    }

    /// <summary>A number, in its bounds where it has some.</summary>
    public void Number(string what, string key, decimal? lowest = null, decimal? highest = null)
    {
        JsonObject number = new() { ["type"] = "number" };
        if (lowest is { } low && highest is { } high)
        {
            (number["minimum"], number["maximum"]) = (low, high);
        }
        else if (Of(what).GetValueOrDefault(key) is { } known && known.ContainsKey("minimum"))
        {
            return;
        }

        Of(what)[key] = number;
    }

    /// <summary>A list of plain texts.</summary>
    public void Texts(string what, string key) => Of(what)[key] = new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = new JsonArray("string", "number") } };

    /// <summary>The schema (JSON Schema, draft 2020-12).</summary>
    /// <param name="title">As an editor shows it.</param>
    /// <param name="required">Keys without which the file is none.</param>
    public string Schema(string title, ImmutableArray<string> required)
    {
        JsonObject root = Map(_root!);
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
            ["$comment"] = "Made by the readers of the program; a test keeps it fresh. Limits, fields and steps are checked further by the command checklist.",
            ["required"] = new JsonArray([.. required.Select(key => (JsonNode)key)]),
        };
        foreach ((string key, JsonNode? value) in root)
        {
            schema[key] = value?.DeepClone();
        }

        schema["$defs"] = new JsonObject(_maps.Keys.Where(what => what != _root).Order(StringComparer.Ordinal).Select(what => KeyValuePair.Create(NameOf(what), (JsonNode?)Map(what))));
        return $"{schema.ToJsonString(new JsonSerializerOptions { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping })}\n";
    }

    JsonObject Map(string what) => new()
    {
        ["type"] = "object",
        ["additionalProperties"] = NamedInTheFile.Contains(what) ? new JsonObject { ["type"] = "string" } : false,
        ["properties"] = new JsonObject(Of(what).Select(key => KeyValuePair.Create(key.Key, (JsonNode?)key.Value.DeepClone()))),
    };

    void Plain(string what, string key, JsonObject type)
    {
        if (Of(what).GetValueOrDefault(key) is not { Count: > 0 })
        {
            Of(what)[key] = type;
        }
    }

    SortedDictionary<string, JsonObject> Of(string what)
    {
        if (!_maps.TryGetValue(what, out SortedDictionary<string, JsonObject>? keys))
        {
            _maps[what] = keys = new(StringComparer.Ordinal);
        }

        return keys;
    }

    static string NameOf(string what) => what.Split(' ')[^1];
}
