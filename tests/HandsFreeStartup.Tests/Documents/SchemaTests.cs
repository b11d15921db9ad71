using System.Text.Json.Nodes;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.UserFiles;
using Json.Schema;
using YamlDotNet.Serialization;

namespace HandsFreeStartup.Tests.Documents;

/// <summary>The schemas for editors are what the readers take. HANDSFREE_APPROVE=FOLDER writes them as they are now.</summary>
[Trait("Speed", "Fast")]
public sealed class SchemaTests
{
    static readonly string Checklists = Path.Combine(AppContext.BaseDirectory, "checklists");
    static readonly string Schemas = Path.Combine(AppContext.BaseDirectory, "Documents");

    public static TheoryData<UserFileKind, string> Kinds => new()
    {
        { UserFileKind.Checklist, "checklist.schema.json" },
        { UserFileKind.ApplianceSheet, "appliance.schema.json" },
        { UserFileKind.Site, "site.schema.json" },
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_schema_is_as_the_readers_are(UserFileKind kind, string file)
    {
        string schema = UserFileSchema.Of(kind, Shipped(kind));
        if (Environment.GetEnvironmentVariable("HANDSFREE_APPROVE") is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, file), schema);
            return;
        }

        Assert.Equal(File.ReadAllText(Path.Combine(Schemas, file)), schema);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_shipped_file_fits_its_schema_and_a_mistyped_key_does_not(UserFileKind kind, string file)
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(Schemas, file)));

        Assert.All(Shipped(kind), sample => Assert.True(Fits(schema, sample.Text), sample.Name));
        Assert.All(Shipped(kind), sample => Assert.False(Fits(schema, $"{sample.Text}\ntytle: x\n"), sample.Name));
    }

    static bool Fits(JsonSchema schema, string yaml)
    {
        object? read = new DeserializerBuilder().WithAttemptingUnquotedStringTypeDeserialization().Build().Deserialize(yaml);
        JsonNode? node = JsonNode.Parse(new SerializerBuilder().JsonCompatible().Build().Serialize(read));
        return schema.Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(node)).IsValid;
    }

    static FileCopy[] Shipped(UserFileKind kind) =>
        [.. Directory.GetFiles(Checklists, "*.yaml").Order(StringComparer.Ordinal).Select(UserFile.Copy).Where(file => UserFile.KindOf(file) == kind)];
}
