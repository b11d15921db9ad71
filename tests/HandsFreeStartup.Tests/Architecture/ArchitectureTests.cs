using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Tests.Architecture;

/// <summary>Rooms and their folders refer one way only, and an id of the log is written in one place.</summary>
public sealed partial class ArchitectureTests
{
    const string Product = "HandsFreeStartup";

    /// <summary>What each room may refer to. The program may refer to all.</summary>
    static readonly Dictionary<string, string[]> Rooms = new()
    {
        ["Calculations"] = [],
        ["Doors"] = [],
        ["Procedure"] = ["Calculations"],
        ["Speech"] = ["Calculations", "Doors", "Procedure"],
        ["Storage"] = ["Calculations", "Doors", "Procedure"],
        ["Reports"] = ["Calculations", "Doors", "Procedure"],
        ["Simulation"] = ["Calculations", "Procedure"],
        ["Fleet"] = ["Calculations", "Doors", "Procedure", "Storage"],
    };

    /// <summary>Folders that still refer to one another. This list only ever gets shorter.</summary>
    static readonly string[] Known =
    [
        "HandsFreeStartup: ChecklistCommand <-> NewAppliance",
        "HandsFreeStartup: Publish <-> Review",
        "HandsFreeStartup: Rehearse <-> Start",
        "HandsFreeStartup.Speech: Recognising <-> Understanding",
    ];

    /// <summary>Where ids are written: where they are defined.</summary>
    static readonly string[] Border = ["FieldId.cs", "ResultId.cs"];

    static string Sources => Path.GetFullPath(Path.Combine(Here(), "..", "..", "..", "src"));

    static IEnumerable<string> Files => Directory.EnumerateFiles(Sources, "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    [Fact]
    public void A_room_refers_only_to_the_rooms_below_it()
    {
        string[] rooms = [.. Directory.GetDirectories(Sources, $"{Product}*").Select(Path.GetFileName).OfType<string>()];
        Assert.Contains($"{Product}.Procedure", rooms);
        foreach (string room in rooms.Where(room => room != Product))
        {
            string name = room[(Product.Length + 1)..];
            Assert.True(Rooms.TryGetValue(name, out string[]? allowed), $"The room {name} is new: say in this test what it may refer to.");
            string[] referred = [.. Assembly.Load(room).GetReferencedAssemblies().Select(reference => reference.Name!).Where(other => other.StartsWith(Product, StringComparison.Ordinal))];

            Assert.All(referred, other => Assert.Contains(other[(Product.Length + 1)..], allowed));
        }
    }

    [Fact]
    public void Folders_of_a_room_refer_one_way_only()
    {
        HashSet<(string Room, string From, string To)> edges = [.. Files.SelectMany(Edges)];
        Assert.True(edges.Count > 40, "The test does not see what refers to what.");
        string[] cycles = [.. edges.Select(edge => edge.Room).Distinct().SelectMany(room => Cycles(room, edges)).Order(StringComparer.Ordinal)];

        Assert.Empty(cycles.Except(Known));
        Assert.Empty(Known.Except(cycles));
    }

    [Fact]
    public void An_id_of_the_log_is_written_as_text_only_where_it_is_defined()
    {
        string[] ids = [.. new[] { typeof(FieldId), typeof(ResultId) }.SelectMany(type => type.GetFields()).Select(field => (string)field.GetRawConstantValue()!)];
        Assert.Contains("flue_co", ids);
        // "draft" is an English word too, and "oxygen" the name of a gas and of a spoken word; what is written with an underscore is an id and nothing else.
        string[] told = [.. ids.Where(id => id.Contains('_', StringComparison.Ordinal)), "efficiency"];
        foreach (string file in Files.Where(file => !Border.Contains(Path.GetFileName(file))))
        {
            string[] written = [.. File.ReadLines(file).Where(line => !line.TrimStart().StartsWith("///", StringComparison.Ordinal)).SelectMany(line => Literal().Matches(line)).Select(match => match.Groups[1].Value)];

            Assert.False(written.Intersect(told).Any(), $"{file} writes {string.Join(", ", written.Intersect(told))} as text: use FieldId or ResultId.");
        }
    }

    [Fact]
    public void Every_field_and_result_is_in_the_vocabulary()
    {
        Assert.Equal(Ids(typeof(FieldId)), Procedure.Hearing.Fields.All.Concat(Procedure.Hearing.Fields.PlateBounds).Select(field => field.Id).Order(StringComparer.Ordinal));
        Assert.Equal(Ids(typeof(ResultId)), Procedure.Checklists.ResultKind.All.Select(kind => kind.Id).Append(Procedure.Checklists.LimitNames.ReplaceValve).Order(StringComparer.Ordinal));
    }

    static IEnumerable<string> Ids(Type vocabulary) => vocabulary.GetFields().Select(field => (string)field.GetRawConstantValue()!).Order(StringComparer.Ordinal);

    static IEnumerable<(string Room, string From, string To)> Edges(string file)
    {
        string[] place = Path.GetRelativePath(Sources, file).Split(Path.DirectorySeparatorChar);
        return place.Length < 3 ? [] : File.ReadLines(file).Select(line => Using().Match(line)).Where(match => match.Success)
            .Select(match => match.Groups[1].Value).Where(used => used.StartsWith($"{place[0]}.", StringComparison.Ordinal))
            .Select(used => (place[0], place[1], used[(place[0].Length + 1)..].Split('.')[0]))
            .Where(edge => edge.Item3 != edge.Item2 && Directory.Exists(Path.Combine(Sources, edge.Item1, edge.Item3)));
    }

    static IEnumerable<string> Cycles(string room, HashSet<(string Room, string From, string To)> edges)
    {
        ILookup<string, string> to = edges.Where(edge => edge.Room == room).ToLookup(edge => edge.From, edge => edge.To);
        string[] folders = [.. to.Select(from => from.Key)];
        return from one in folders
               from other in folders
               where string.CompareOrdinal(one, other) < 0 && Reached(one, to).Contains(other) && Reached(other, to).Contains(one)
               select $"{room}: {one} <-> {other}";
    }

    static HashSet<string> Reached(string from, ILookup<string, string> to)
    {
        HashSet<string> reached = [];
        Stack<string> open = new(to[from]);
        while (open.TryPop(out string? folder))
        {
            if (reached.Add(folder))
            {
                foreach (string next in to[folder])
                {
                    open.Push(next);
                }
            }
        }

        return reached;
    }

    static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;

    [GeneratedRegex(@"^using (?:static )?(HandsFreeStartup[\w.]*);")]
    private static partial Regex Using();

    [GeneratedRegex("\"([a-z_]+)(?:/[a-z]+)?\"")]
    private static partial Regex Literal();
}
