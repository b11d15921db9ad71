using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Tests.Architecture;

/// <summary>Rooms and their folders refer one way only, and an id of the log is written in one place.</summary>
public sealed partial class ArchitectureTests
{
    const string Product = "HandsFreeStartup";

    /// <summary>More values than these are mistaken for one another when they are told apart by their order only.</summary>
    const int MostPositions = 7;

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

    /// <summary>Where ids are written: where they are defined.</summary>
    static readonly string[] Border = ["FieldId.cs", "ResultId.cs"];

    static string Sources => Path.GetFullPath(Path.Combine(Here(), "..", "..", "..", "src"));

    static IEnumerable<string> Files => Directory.EnumerateFiles(Sources, "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    static string[] RoomNames => [.. Directory.GetDirectories(Sources, $"{Product}*").Select(Path.GetFileName).OfType<string>()];

    [Fact]
    public void A_room_refers_only_to_the_rooms_below_it()
    {
        Assert.Contains($"{Product}.Procedure", RoomNames);
        foreach (string room in RoomNames.Where(room => room != Product))
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
        foreach (string room in RoomNames)
        {
            Reference[] references = [.. References(room)];
            ILookup<string, string> to = references.ToLookup(reference => reference.From, reference => reference.To);
            string[] cycles =
            [
                .. from one in to.Select(edge => edge.Key)
                   from other in to.Select(edge => edge.Key)
                   where string.CompareOrdinal(one, other) < 0 && Reached(one, to).Contains(other) && Reached(other, to).Contains(one)
                   let path = references.Where(reference => reference.Is(one, other) || reference.Is(other, one)).Select(reference => reference.Types)
                   select $"{room}: {one} <-> {other} by {string.Join(", ", path)}",
            ];

            Assert.Empty(cycles);
        }

        Assert.Contains(References(Product), reference => reference.Is("Start", "Session"));
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

    [Fact]
    public void Nothing_is_made_of_more_than_seven_values_by_their_positions()
    {
        string[] tooMany =
        [
            .. from room in RoomNames
               from type in Assembly.Load(room).GetTypes()
               where !type.IsDefined(typeof(CompilerGeneratedAttribute))
               from constructor in type.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)
               where !constructor.IsPrivate && constructor.GetParameters().Length > MostPositions
               select $"{type.FullName} takes {constructor.GetParameters().Length}: give them names as properties",
        ];

        Assert.Empty(tooMany);
    }

    [Fact]
    public void What_tests_share_is_a_library_and_no_file_of_one_project_is_compiled_in_another()
    {
        string[] projects = Directory.GetFiles(Path.Combine(Sources, "..", "tests"), "*.csproj", SearchOption.AllDirectories);
        Assert.Contains(projects, project => Path.GetFileName(project) == $"{Product}.Testing.csproj");
        Assert.DoesNotContain(projects, project => File.ReadAllText(project).Contains("<Compile Include", StringComparison.Ordinal));
    }

    static IEnumerable<string> Ids(Type vocabulary) => vocabulary.GetFields().Select(field => (string)field.GetRawConstantValue()!).Order(StringComparer.Ordinal);

    /// <summary>What a type of one folder has to do with a type of another: in its members and in the bodies of its methods.</summary>
    sealed record Reference(string From, string To, string Types)
    {
        public bool Is(string from, string to) => (From, To) == (from, to);
    }

    static IEnumerable<Reference> References(string room) =>
        from type in new ArchUnitNET.Loader.ArchLoader().LoadAssembly(Assembly.Load(room)).Build().Types
        let place = FolderOf(type, room)
        from target in type.Dependencies.Select(dependency => dependency.Target).Distinct()
        let other = FolderOf(target, room)
        where place is not null && other is not null && place != other
        select new Reference(place, other, $"{type.Name} -> {target.Name}");

    /// <summary>The folder of a type, as its namespace tells it; null outside the folders of the room.</summary>
    static string? FolderOf(ArchUnitNET.Domain.IType type, string room)
    {
        string space = type.Namespace?.FullName ?? "";
        return space.StartsWith($"{room}.", StringComparison.Ordinal) && space[(room.Length + 1)..].Split('.')[0] is var folder && Directory.Exists(Path.Combine(Sources, room, folder)) ? folder : null;
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

    [GeneratedRegex("\"([a-z_]+)(?:/[a-z]+)?\"")]
    private static partial Regex Literal();
}
