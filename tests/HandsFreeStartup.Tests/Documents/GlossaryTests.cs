using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Tests.Documents;

/// <summary>Everything that is said and shown holds to one glossary: each string that is compiled into the program, each shipped file, each document.</summary>
[Trait("Speed", "Fast")]
public sealed partial class GlossaryTests
{
    static readonly string Base = AppContext.BaseDirectory;
    static readonly (string Say, Regex Never)[] Terms = [.. Rows().Select(row => (row[0], new Regex($@"\b({row[1]})(?![\w-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)))];

    public static TheoryData<string> Assemblies => [.. Directory.GetFiles(Base, "HandsFreeStartup*.dll").Select(path => Path.GetFileName(path)!)
        .Where(name => !name.Contains("Tests", StringComparison.Ordinal) && !name.Contains("Benchmarks", StringComparison.Ordinal))];

    public static TheoryData<string> Files =>
    [
        .. Directory.GetFiles(Path.Combine(Base, "checklists")).Select(path => Path.GetRelativePath(Base, path)),
        .. Directory.GetFiles(Path.Combine(Base, "Documents"), "*.md").Select(path => Path.GetRelativePath(Base, path)),
        .. Directory.GetFiles(Path.Combine(Base, "Documents"), "*.schema.json").Select(path => Path.GetRelativePath(Base, path)),
    ];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void What_the_program_says_holds_to_the_glossary(string assembly)
    {
        string[] strings = [.. Strings(Path.Combine(Base, assembly))];

        Assert.NotEmpty(strings);
        Assert.Empty(strings.SelectMany(Wrong));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void What_is_shipped_beside_it_holds_to_the_glossary(string file) => Assert.Empty(File.ReadLines(Path.Combine(Base, file)).Select(line => CodeName().Replace(line, "")).SelectMany(Wrong));

    [Theory]
    [InlineData("Say the flow pressure.", "dynamic pressure")]
    [InlineData("TAG IT", "red-tag")]
    [InlineData("Look at the colour of the flame.", "color")]
    [InlineData("Exhaust comes into the room.", "flue gas")]
    public void A_calque_is_found_and_the_right_word_named(string text, string say) => Assert.Contains($"say '{say}'", Assert.Single(Wrong(text)), StringComparison.Ordinal);

    [Theory]
    [InlineData("Red-tag it now and tell the owner.")]
    [InlineData("Exhaust fans and dryer on.")]
    [InlineData("The blower is running.")]
    public void The_words_of_the_trade_are_not_found(string text) => Assert.Empty(Wrong(text));

    static IEnumerable<string> Wrong(string text) => Terms.SelectMany(term => term.Never.Matches(text).Select(match => $"say '{term.Say}', not '{match.Value}': {text.Trim()}"));

    static IEnumerable<string[]> Rows() => File.ReadLines(Path.Combine(Base, "Documents", "glossary.tsv")).Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split('\t'));

    /// <summary>The string literals of an assembly, those of its members' names left out: records spell them for nobody to see.</summary>
    static IEnumerable<string> Strings(string path)
    {
        using PEReader file = new(File.OpenRead(path));
        MetadataReader metadata = file.GetMetadataReader();
        UserStringHandle handle = MetadataTokens.UserStringHandle(0);
        while (!(handle = metadata.GetNextHandle(handle)).IsNil)
        {
            string text = metadata.GetUserString(handle);
            if (!MemberName().IsMatch(text))
            {
                yield return text;
            }
        }
    }

    [GeneratedRegex("`[A-Z][A-Za-z]*`")]
    private static partial Regex CodeName();

    [GeneratedRegex("^(, )?[A-Z][A-Za-z]*( = )?$")]
    private static partial Regex MemberName();
}
