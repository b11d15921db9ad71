using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.RegularExpressions;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Storage.UserFiles;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Languages;

/// <summary>The Spanish file: whole where a life can hang on it, and never a text whose parts are mixed up.</summary>
[Trait("Speed", "Fast")]
public sealed partial class SpanishTests(ITestOutputHelper output)
{
    const int LongestOrder = 24;

    static readonly string File = Path.Combine(ShippedFiles.Languages, "es.po");
    static readonly string Source = Above("src");

    /// <summary>What tells of danger, what leads through a step and what is asked.</summary>
    static readonly ImmutableArray<string> Vital =
    [
        "Procedure/Showing/Alarms.cs", "Procedure/Showing/Announcer.cs", "Procedure/Showing/Prompts.cs", "Procedure/Showing/Imperatives.cs",
        "Procedure/Showing/Explaining.cs", "Calculations/Derivations/DerivationText.cs", "Calculations/Derivations/Derivation.cs",
        "Procedure/Safety/CarbonMonoxideTier.cs", "Procedure/Safety/SafetyWait.cs", "Procedure/Checklists/MakingSafe.cs", "Procedure/Checklists/OthersRunning.cs",
        "Procedure/Wording/MonoxideWords.cs", "Procedure/Wording/MonoxideProof.cs", "Procedure/Deciding/Halt.cs", "Procedure/Deciding/RoomAir.cs",
    ];

    public static TheoryData<string> VitalFiles => [.. Vital];

    [Fact]
    public void Each_translation_has_exactly_the_holes_of_its_text() =>
        Assert.DoesNotContain(Texts(), text => !Language.HasSameHoles(text.Key, text.Value));

    [Theory]
    [InlineData("gas-furnace")]
    [InlineData("two-stage-natural-gas")]
    public void Each_text_of_a_shipped_checklist_is_translated(string checklist)
    {
        List<string> missing = [];
        Language spanish = Asking(missing);

        foreach (Step step in UserFile.ReadChecklist(UserFile.Copy(Path.Combine(AppContext.BaseDirectory, "checklists", $"{checklist}.yaml"))).Steps)
        {
            string[] names = [step.Title, step.Section, step.Imperative ?? "", .. step.Opens.Select(thing => thing.Name)];
            Message?[] told = [step.Do, step.Why, step.Caution, step.Prompt, step.Question?.Text, step.Question?.Otherwise];
            Assert.All(names, name => spanish.Name(name));
            Assert.All(told.OfType<Message>(), text => spanish.In(text));
        }

        Assert.Empty(missing);
    }

    [Theory]
    [MemberData(nameof(VitalFiles))]
    public void Each_alarm_stop_caution_and_prompt_is_translated(string file)
    {
        IReadOnlyDictionary<string, string> texts = Texts();
        string[] wanted = [.. SourceTexts.Of(Path.Combine(Source, $"HandsFreeStartup.{file}")).Where(IsText)];

        Assert.NotEmpty(wanted);
        Assert.Equal([], wanted.Where(text => !texts.ContainsKey(text) && !texts.ContainsKey($"{char.ToUpperInvariant(text[0])}{text[1..]}")).ToArray());
    }

    [Fact]
    public void A_large_line_fits_and_each_of_its_letters_is_drawn()
    {
        string[] orders = [.. Texts().Where(text => text.Key.Length <= LongestOrder && IsOrder().IsMatch(text.Key)).Select(text => text.Value)];

        Assert.True(orders.Length > 100, $"{orders.Length} orders");
        Assert.DoesNotContain(orders, order => order.Length > LongestOrder);
        Assert.DoesNotContain(orders.SelectMany(order => order), letter => !BigLetters.IsDrawn(letter));
    }

    /// <summary>Not everything is translated: this many of the texts that the screen and the voice have. The figure only rises.</summary>
    [Fact]
    public void Of_all_texts_of_the_procedure_and_the_screen_at_least_nine_of_ten_are_translated()
    {
        IReadOnlyDictionary<string, string> texts = Texts();
        string[] folders = ["HandsFreeStartup.Procedure/Showing", "HandsFreeStartup.Procedure/Safety", "HandsFreeStartup.Procedure/Deciding", "HandsFreeStartup.Procedure/Wording", "HandsFreeStartup.Procedure/Record", "HandsFreeStartup/Screen", "HandsFreeStartup/Showing", "HandsFreeStartup/Session"];
        string[] wanted = [.. folders.SelectMany(folder => Directory.GetFiles(Path.Combine(Source, folder), "*.cs")).SelectMany(SourceTexts.Of).Where(IsText).Distinct()];
        string[] missing = [.. wanted.Where(text => !texts.ContainsKey(text))];

        output.WriteLine($"{wanted.Length - missing.Length} of {wanted.Length} translated; missing:\n{string.Join('\n', missing)}");
        Assert.True(missing.Length * 10 <= wanted.Length, $"{missing.Length} of {wanted.Length} are missing");
    }

    /// <summary>What people read afterwards is whole: the copies and the summary.</summary>
    [Theory]
    [InlineData("HandsFreeStartup.Reports/Copies")]
    [InlineData("HandsFreeStartup.Reports/Facts")]
    [InlineData("HandsFreeStartup.Reports/Summary")]
    [InlineData("HandsFreeStartup.Procedure/Wording")]
    public void Each_text_of_a_translated_room_is_there(string room)
    {
        IReadOnlyDictionary<string, string> texts = Texts();
        string[] wanted = [.. Directory.GetFiles(Path.Combine(Source, room), "*.cs", SearchOption.AllDirectories).SelectMany(SourceTexts.Of).Where(IsWords).Distinct()];
        string[] missing = [.. wanted.Where(text => !texts.ContainsKey(text) && !texts.ContainsKey($"{char.ToUpperInvariant(text[0])}{text[1..]}"))];

        output.WriteLine($"{wanted.Length} texts");
        Assert.NotEmpty(wanted);
        Assert.True(missing.Length == 0, string.Join('\n', missing));
    }

    /// <summary>Outside check: the tool of GNU gettext itself, where it is installed.</summary>
    [Fact]
    public void The_tool_of_gettext_takes_the_file()
    {
        if (!System.IO.File.Exists("/usr/bin/msgfmt"))
        {
            return;
        }

        using Process msgfmt = Process.Start(new ProcessStartInfo("msgfmt", ["--check", "--statistics", "-o", "/dev/null", File]) { RedirectStandardError = true })!;
        string said = msgfmt.StandardError.ReadToEnd();
        msgfmt.WaitForExit();

        Assert.Equal(0, msgfmt.ExitCode);
        Assert.Contains($"{Texts().Count} translated messages.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_language_that_is_not_there_is_one_sentence_with_those_that_are()
    {
        WrongUseException wrong = Assert.Throws<WrongUseException>(() => LanguageFiles.Find("xx"));

        Assert.StartsWith("There is no language \"xx\". Choose one of: en, es.", wrong.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("msgid \"a\nmsgstr \"b\"", 1)]
    [InlineData("msgid \"a\"\nmsgstr \"b\" c", 2)]
    [InlineData("msgid \"a\"\n\nmsgctxt \"b\"", 3)]
    [InlineData("\"a\"", 1)]
    public void A_line_that_is_none_of_the_format_is_told_with_its_place(string content, int line) =>
        Assert.StartsWith($"x.po({line}):", Assert.Throws<WrongUseException>(() => PoFile.Read("x.po", content)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_string_over_several_lines_is_one_text_and_a_fuzzy_one_does_not_count()
    {
        PoFile file = PoFile.Read("x.po", "msgid \"\"\nmsgstr \"X-Voice: es-419\\n\"\n\n# note\nmsgid \"\"\n\"say \"\n\"\\\"a\\\"\"\nmsgstr \"diga \\\"a\\\"\"\n\n#, fuzzy\nmsgid \"b\"\nmsgstr \"c\"\n\nmsgid \"d\"\nmsgstr \"\"\n");

        Assert.Equal(["say \"a\"=diga \"a\""], file.Texts.Select(text => $"{text.Key}={text.Value}"));
        Assert.Equal("es-419", file.Head["X-Voice"]);
    }

    [Fact]
    public void A_backslash_that_is_escaped_stays_one_before_any_letter() =>
        Assert.Equal(@"C:\new" + "\n", PoFile.Read("x.po", @"msgid ""folder""" + "\n" + @"msgstr ""C:\\new\n""" + "\n").Texts["folder"]);

    static IReadOnlyDictionary<string, string> Texts() => PoFile.Read(File, System.IO.File.ReadAllText(File)).Texts;

    static Language Asking(List<string> missing) => new("es", Texts()) { Missing = missing.Add };

    /// <summary>A text for people, not a name in the code or a command that is said: words with a blank between them, or a whole sentence.</summary>
    static bool IsText(string text) => IsSentence().IsMatch(text) && !IsForCode().IsMatch(text);

    /// <summary>The same, and words that stand alone as a title or a heading; what is put together of holes alone has no words.</summary>
    static bool IsWords(string text) => WordOutsideOfHole().IsMatch(text) && !IsName().IsMatch(text);

    static string Above(string folder)
    {
        DirectoryInfo above = new(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(above.FullName, folder)))
        {
            above = above.Parent ?? throw new InvalidOperationException($"The folder {folder} is not above the tests.");
        }

        return Path.Combine(above.FullName, folder);
    }

    [GeneratedRegex(@"\p{L}{2}.* .*|\p{L}{3,}.*[.?!:]$|^.* .*\p{L}{2}", RegexOptions.CultureInvariant)]
    private static partial Regex IsSentence();

    /// <summary>Exceptions of the program, patterns, and forms of which parts are found by themselves.</summary>
    [GeneratedRegex(@"^(There is no|No kind of|No such key|The step '\{0\}' is never|Nothing is carried over where|yyyy|how long$|read back$|\(\?:|\^)|number.*\(\{|\(only if|^no, to say|^go to \+|^\{0\} fire$|^, (watch|the first)|read to 1/100|\{0\} as \{1\}", RegexOptions.CultureInvariant)]
    private static partial Regex IsForCode();

    [GeneratedRegex(@"(?<!\{)\b\p{L}{2}", RegexOptions.CultureInvariant)]
    private static partial Regex WordOutsideOfHole();

    /// <summary>Formats, names of fonts, scopes and errors of the program itself.</summary>
    [GeneratedRegex(@"^(yyyy|HH:|zzz$|There is no sentence|No way to set|/|uuid:|HandsFree Startup \{0\}$|AAAA|deg [FC]$|ss$|\{0\} \{1\}: \{2\} sha256)", RegexOptions.CultureInvariant)]
    private static partial Regex IsName();

    [GeneratedRegex("^[A-Z][A-Z ,:'-]*[A-Z]$", RegexOptions.CultureInvariant)]
    private static partial Regex IsOrder();
}
