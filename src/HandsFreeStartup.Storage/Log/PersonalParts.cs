using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A personal part of an event, kept apart from what is hashed.</summary>
/// <param name="Path">Where in the event's content it belongs, for instance <c>evidence/words</c>.</param>
/// <param name="Salt">32 random bytes; without them a short content could be guessed from its commitment.</param>
/// <param name="Content">Its JSON.</param>
sealed record PersonalPart(string Path, byte[] Salt, string Content);

/// <summary>
/// Which parts of an event are personal, and how they are taken out of the hashed content and put back. In their place stands a commitment: the hash
/// of salt and content. It proves the content as long as that is there, and tells nothing once it is removed.
/// </summary>
/// <remarks>
/// Personal are the site's file (customer, address, title) and everything dictated freely, for people are named in it. Not personal are readings, steps, and
/// the names of technician and lead: who signs a record answers for it. Room names stay too, because readings belong to them.
/// </remarks>
static class PersonalParts
{
    /// <summary>Stands where a removed text was.</summary>
    public const string Removed = "(removed)";

    const string Commitment = "sealed";
    const string WithoutNames = "without_names";
    const int SaltBytes = 32;

    static readonly JsonSerializerOptions Writing = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    static readonly ImmutableDictionary<string, ImmutableArray<string>> Paths = new Dictionary<string, ImmutableArray<string>>
    {
        ["startup-began"] = ["job/site"],
        ["utterance-heard"] = ["evidence/words"],
        ["danger-asked"] = ["evidence/words"],
        ["step-skipped"] = ["reason", "evidence/words"],
        ["note-taken"] = ["text", "evidence/words"],
        ["photo-attached"] = ["name", "evidence/words"],
        ["startup-resumed"] = ["reason"],
        ["ended-out-of-service"] = ["reason"],
        ["end-decided"] = ["reason"],
        ["choice-asked"] = ["reason"],
        ["dictation-heard"] = ["text", "evidence/words"],
        ["exception-made"] = ["reason", "evidence/words"],
        ["record-reviewed"] = ["remark"],
    }.ToImmutableDictionary();

    /// <summary>Takes the personal parts out of the content of an event.</summary>
    public static (string Body, ImmutableArray<PersonalPart> Parts) TakeOut(string kind, string body)
    {
        if (!Paths.TryGetValue(kind, out ImmutableArray<string> paths))
        {
            return (body, []);
        }

        JsonNode root = JsonNode.Parse(body)!;
        List<PersonalPart> parts = [];
        foreach (string path in paths)
        {
            (JsonObject parent, string name) = Place(root, path) ?? throw new LogException($"The event of kind '{kind}' lacks '{path}'.");
            JsonNode? node = parent[name];
            PersonalPart part = new(path, RandomNumberGenerator.GetBytes(SaltBytes), node?.ToJsonString(Writing) ?? "null");
            JsonObject place = new() { [Commitment] = CommitmentOf(part.Salt, Encoding.UTF8.GetBytes(part.Content)) };
            if (path == "job/site")
            {
                place[WithoutNames] = SiteWithoutNames.Of((string?)node?["text"] ?? "");
            }

            parent[name] = place;
            parts.Add(part);
        }

        return (root.ToJsonString(Writing), [.. parts]);
    }

    /// <summary>The content of an event with its personal parts put back; a removed one reads <see cref="Removed"/>.</summary>
    /// <param name="kind">The event's kind.</param>
    /// <param name="body">Its content as stored.</param>
    /// <param name="contentOf">The kept content of a path, or null if it was removed.</param>
    public static string PutBack(string kind, string body, Func<string, string?> contentOf)
    {
        if (!Paths.TryGetValue(kind, out ImmutableArray<string> paths) || Parse(body) is not { } root)
        {
            return body;
        }

        foreach (string path in paths)
        {
            if (Place(root, path) is ({ } parent, { } name) && parent[name] is JsonObject place && place.ContainsKey(Commitment))
            {
                parent[name] = contentOf(path) is { } content ? JsonNode.Parse(content) : Substitute(place);
            }
        }

        return root.ToJsonString(Writing);
    }

    /// <summary>The commitments that a stored content holds, by path.</summary>
    public static IEnumerable<(string Path, string Commitment)> Commitments(string kind, string body)
    {
        if (!Paths.TryGetValue(kind, out ImmutableArray<string> paths) || Parse(body) is not { } root)
        {
            yield break;
        }

        foreach (string path in paths)
        {
            if (Place(root, path) is ({ } parent, { } name) && (parent[name] as JsonObject)?[Commitment] is JsonValue value && value.TryGetValue(out string? commitment))
            {
                yield return (path, commitment);
            }
        }
    }

    /// <summary>The hash that stands for a personal part, upper-case hexadecimal.</summary>
    public static string CommitmentOf(byte[] salt, byte[] content) => Convert.ToHexString(HashChain.OfPersonal(salt, content));

    static JsonNode? Parse(string body)
    {
        try
        {
            return JsonNode.Parse(body, documentOptions: new JsonDocumentOptions { AllowDuplicateProperties = false });
        }
        catch (JsonException)
        {
            return null;
        }
    }

    static (JsonObject Parent, string Name)? Place(JsonNode root, string path)
    {
        string[] names = path.Split('/');
        JsonObject? parent = root as JsonObject;
        foreach (string name in names[..^1])
        {
            parent = parent?[name] as JsonObject;
        }

        return parent?.ContainsKey(names[^1]) == true ? (parent, names[^1]) : null;
    }

    static JsonNode Substitute(JsonObject place)
    {
        if (place[WithoutNames] is not JsonValue kept || !kept.TryGetValue(out string? text))
        {
            return JsonValue.Create(Removed);
        }

        FileCopy file = UserFile.Copy(Removed, text);
        return new JsonObject { ["name"] = file.Name, ["sha256"] = file.Sha256, ["text"] = file.Text };
    }
}
