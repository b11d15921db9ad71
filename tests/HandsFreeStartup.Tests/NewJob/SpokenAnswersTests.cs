using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Languages;
using HandsFreeStartup.NewJob;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Understanding;
using HandsFreeStartup.Start;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>The questions of <c>new job</c> answered by words, as an ear gives them, and by keys: the same questions, the same checks, the same files.</summary>
public sealed class SpokenAnswersTests
{
    static readonly DateTime Day = DateTime.Today.AddDays(-1);
    static readonly string[] Rest = [.. Enumerable.Repeat("", 11)];

    static readonly string[] Typed =
    [
        "", FormattableString.Invariant($"{Day:yyyy-MM-dd}"), "20 5%", "0.3", "4 1.5%", "2", "0.008", "", "", "", "",
        "Pat Owner", "14 Pond Lane", "650", "Basement, kitchen", "2", "", "1200",
        "Attic furnace", "natural-gas", "1", "I", "no", "clockwise", "Threaded cap", "5-7", "1", "3.2-3.8", "", .. Rest,
        "", "Terry Echnician", "no",
    ];

    static readonly string[] Spoken =
    [
        "Skip step.", $"{Day.ToString("MMMM d, yyyy", CultureInfo.InvariantCulture)}.", "confirm",
        "twenty P P M", "five percent of reading", "confirm", "zero point three percent", "confirm", "four degrees", "one point five percent of reading", "confirm", "two degrees", "confirm",
        "zero point zero zero eight inches", "confirm", "skip step", "Unknown.", "Skip.", "Skip step.",
        "Pat Owner.", "confirm", "14 Pond Lane. 14 Pond Lane.", "confirm", "six hundred fifty feet", "confirm", "Basement and kitchen.", "confirm", "two cubic feet", "confirm", "skip step", "twelve hundred hours", "confirm",
        "Attic furnace.", "confirm", "Natural gas.", "confirm", "One stage.", "confirm", "Category one.", "confirm", "no", "Clockwise.", "confirm", "Threaded cap.", "confirm",
        "five to seven inches", "confirm", "Rating plate.", "confirm", "three point two to three point eight", "confirm", "yes", .. Enumerable.Repeat("skip step", 11),
        "skip step", "Terry Echnician.", "confirm", "no",
    ];

    [Fact]
    public void What_is_said_ends_in_the_same_files_as_what_is_typed()
    {
        Dictionary<string, string> typed = FilesOf(new TypedAnswers(TypedLines.Of(new StringReader(string.Join('\n', Typed))), TextWriter.Null));
        Listener listener = new(Spoken);
        Dictionary<string, string> spoken = FilesOf(new SpokenAnswers(listener, TextWriter.Null));

        Assert.Equal(0, listener.Left);
        Assert.Equal(4, typed.Count);
        Assert.Equal(typed, spoken);
        Assert.Contains("upper: 3.8", string.Concat(typed.Values), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public async Task Every_question_is_said_in_four_seconds(string code)
    {
        Language language = LanguageFiles.Find(code);
        string[] questions = [.. Heard(language).Asked.Distinct()];
        Assert.True(questions.Length > 20);
        if (InstalledProgram.Find("espeak-ng") is not { } espeak)
        {
            return;
        }

        List<string> tooLong = [];
        foreach (string question in questions)
        {
            using Process voice = Process.Start(new ProcessStartInfo(espeak, [.. EspeakSynthesizer.Manner(language.Voice), "--stdout", question]) { RedirectStandardOutput = true })!;
            using MemoryStream wav = new();
            await voice.StandardOutput.BaseStream.CopyToAsync(wav);
            double seconds = wav.Length / (2.0 * 22_050);
            tooLong.AddRange(seconds > 4 ? [FormattableString.Invariant($"{seconds:0.0} s: {question}")] : Array.Empty<string>());
        }

        Assert.Empty(tooLong);
    }

    /// <summary>What can be said is English, and so is what somebody has said: a name is read back as it was heard.</summary>
    [Fact]
    public void What_is_asked_and_read_back_in_Spanish_is_said_in_Spanish()
    {
        string[] own = ["Pat Owner?", "14 Pond Lane?", "fourteen Pond Lane?", "Basement, kitchen?", "Attic furnace?", "Threaded cap?", "Terry Echnician?"];
        (Listener english, Listener spanish) = (Heard(Language.English), Heard(LanguageFiles.Find("es")));

        Assert.Equal(english.Told.Count, spanish.Told.Count);
        Assert.Empty(english.Told.Zip(spanish.Told).Where(pair => pair.First == pair.Second && pair.First.Length > 0).Select(pair => pair.First).Except(own));
        Assert.DoesNotContain(spanish.Told, told => told.Split(' ', ',', '?', '.').Any(word => word is "the" or "is" or "and" or "to" or "five" or "feet" or "one"));
        Assert.Contains("6 5 0 pies?", spanish.Told);
    }

    static Listener Heard(Language language)
    {
        Listener listener = new(Spoken, language);
        FilesOf(new SpokenAnswers(listener, TextWriter.Null, new LanguagesInUse(language, language)));
        return listener;
    }

    [Theory]
    [InlineData("650", "six hundred fifty feet", "confirm")]
    [InlineData("650", "six hundred fifteen feet", "no", "six hundred fifty feet", "confirm")]
    [InlineData("650", "six hundred fifteen feet", "six hundred fifty feet", "keep")]
    [InlineData("650", "six hundred fifty gallons", "mumble", "six hundred fifty", "confirm")]
    [InlineData("650", "confirm", "six hundred fifty feet", "say again", "confirm")]
    [InlineData("650", "no", "six hundred fifty feet", "yes")]
    [InlineData("650", "six hundred fifteen feet", "key: 650")]
    [InlineData("", "the same")]
    [InlineData("", "yes")]
    [InlineData("", "say again", "yes")]
    [InlineData("why", "tell me more")]
    [InlineData("back", "six hundred fifteen feet", "go back")]
    [InlineData("650", "I smell gas", "six hundred fifty feet", "confirm")]
    [InlineData("650", "key: there is a fire", "key: help, gas leak!", "six hundred fifty feet", "confirm")]
    [InlineData("650", "emergency stop", "six hundred fifty feet", "confirm")]
    [InlineData("650", "key: emergency stop", "key: 650")]
    public void A_number_becomes_an_answer_by_its_confirmation_alone(string line, params string[] said)
    {
        Field feet = new("altitude", "Altitude", [], new Unit("ft", ["feet"], 0.3048)) { Lowest = 0, Highest = 9_000, UsualLowest = 0, UsualHighest = 9_000, FewestDecimals = 0, MostDecimals = 0 };
        Listener listener = new(said);

        string? answer = new SpokenAnswers(listener, TextWriter.Null).Next(new Asked("How high?", AnswerForm.Numbers.Of(feet)) { Says = "How high?", Last = "700", IsInList = true });

        Assert.Equal(line, answer);
        Assert.Equal(0, listener.Left);
        Assert.Equal(said.Any(words => words.Contains("gas ", StringComparison.Ordinal) || words.Contains("smell", StringComparison.Ordinal)), listener.Told.Any(words => words.Contains("leave the house", StringComparison.Ordinal)));
        Assert.Equal(said.Any(words => words.Contains("emergency", StringComparison.Ordinal)), listener.Told.Any(words => words.Contains("gas off now", StringComparison.Ordinal)));
    }

    /// <summary>The ear for free speech writes "skip step" with commas, and "Skip, step" became a way to seal the test hole.</summary>
    [Theory]
    [InlineData("skip step", "This one is needed.")]
    [InlineData("Skip, step.", "This one is needed.")]
    [InlineData("Skip, the rest!", "This one is needed.")]
    [InlineData("Skip the rest", "This one is needed.")]
    [InlineData("Confirm.", "Say it again, or type it.")]
    [InlineData("Go, back.", "Say it again, or type it.")]
    public void What_is_said_to_the_tool_is_no_answer_to_a_question_that_must_be_answered(string said, string told)
    {
        Listener listener = new([said, "threaded cap", "confirm"]);

        Assert.Equal("threaded cap", new SpokenAnswers(listener, TextWriter.Null).Next(new Asked("Which seal?", new AnswerForm.Words()) { Says = "Which seal?" }));
        Assert.Equal(["Which seal?", told, "threaded cap?"], listener.Told);
    }

    [Fact]
    public void What_was_answered_the_last_time_is_said_before_yes_takes_it()
    {
        Listener listener = new(["yes"]);
        new SpokenAnswers(listener, TextWriter.Null).Next(new Asked("Who?", new AnswerForm.Words()) { Says = "Who?", Last = "Pat Owner" });

        Assert.Equal("Who? Pat Owner?", listener.Told[0]);
    }

    /// <summary>In the fewest words from nothing: the uncertainties by which carbon monoxide is judged, the place, and what a start-up cannot do without.</summary>
    [Fact]
    public void The_rest_of_each_part_is_left_out_by_one_phrase_that_is_confirmed()
    {
        string day = Day.ToString("MMMM d, yyyy", CultureInfo.InvariantCulture);
        Listener listener = new(
        [
            day, "confirm", "three P P M", "confirm", day, "confirm", "twenty P P M", "confirm", "zero point three percent", "confirm", "skip the rest", "no", "skip the rest", "confirm",
            "Pat Owner", "confirm", "14 Pond Lane", "confirm", "six hundred fifty feet", "confirm", "Basement", "confirm", "Skip the rest.", "confirm",
            "Attic furnace", "confirm", "Natural gas", "confirm", "One stage", "confirm", "Skip the rest.", "confirm", "Clockwise", "confirm", "Cap", "confirm",
            "skip step", "yes", "no",
        ]);
        Dictionary<string, string> spoken = FilesOf(new SpokenAnswers(listener, TextWriter.Null));
        string typedDay = FormattableString.Invariant($"{Day:yyyy-MM-dd}");
        string[] typed = [typedDay, "3", typedDay, "20", "0.3", "skip the rest", "Pat Owner", "14 Pond Lane", "650", "Basement", "skip the rest", "Attic furnace", "natural-gas", "1", "Skip the rest", "clockwise", "Cap", "", "", "no"];

        Assert.Equal(0, listener.Left);
        Assert.Equal(FilesOf(new TypedAnswers(TypedLines.Of(new StringReader(string.Join('\n', typed))), TextWriter.Null)), spoken);
        Assert.DoesNotContain(listener.Told, words => words.Contains("never proven", StringComparison.Ordinal));
        Assert.DoesNotContain("limits:\n  ", string.Concat(spoken.Values), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "skip the rest")]
    [InlineData("3", "2020-01-01", "20", "skip the rest")]
    public void Who_leaves_out_what_proves_carbon_monoxide_low_is_told_so(string uncertaintyOfMeter, params string[] then)
    {
        using StringWriter told = new();
        string[] lines = [.. uncertaintyOfMeter.Length == 0 ? [] : new[] { "2020-01-01", uncertaintyOfMeter }, .. then];
        new InstrumentQuestions(new Conversation(new TypedAnswers(TypedLines.Of(new StringReader(string.Join('\n', lines))), told)), DateOnly.FromDateTime(DateTime.Today)).Ask();

        Assert.Contains("carbon monoxide is never proven to be low.", told.ToString().Split('\n')[^2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3.2 to 3.8", "three point two to three point eight inches", "confirm")]
    [InlineData("3.2 to 3.8", "lowest three point two", "highest three point eight inches", "confirm")]
    [InlineData("max 3.8", "highest three point eight", "confirm")]
    [InlineData("3.2 to 3.8", "lowest three point two", "three point eight", "highest three point eight", "confirm")]
    [InlineData("3.25 to 3.8", "three point two to three point eight", "lowest three point two five", "confirm")]
    public void A_range_is_said_at_once_or_bound_by_bound(string line, params string[] said)
    {
        HandsFreeStartup.NewAppliance.LimitQuestion manifold = HandsFreeStartup.NewAppliance.LimitQuestion.For(Procedure.Checklists.Firing.SingleStage, null).First(limit => limit.Name == "manifold_pressure/high");
        Listener listener = new(said);

        Assert.Equal(line, new SpokenAnswers(listener, TextWriter.Null).Next(new Asked("Manifold", manifold.Form) { Says = manifold.Spoken }));
        Assert.Equal(0, listener.Left);
    }

    [Theory]
    [InlineData("March 3rd, 2026.", "2026-03-03")]
    [InlineData("the third of March twenty twenty six", "2026-03-03")]
    [InlineData("March twenty first 2025", "2025-03-21")]
    [InlineData("May 21, 2026", "2026-05-21")]
    [InlineData("February 30, 2026", null)]
    [InlineData("March 2026", null)]
    [InlineData("3 2026", null)]
    [InlineData("March 3rd", null)]
    [InlineData("March April 3 2026", null)]
    public void A_day_is_read_only_where_it_can_be_no_other(string words, string? day) =>
        Assert.Equal(day, SpokenDay.Read(words) is { } read ? FormattableString.Invariant($"{read:yyyy-MM-dd}") : null);

    /// <summary>Everything that is kept, by its path.</summary>
    static Dictionary<string, string> FilesOf(IAnswers answers)
    {
        using TemporaryFolder folder = new();
        DataFolder data = new(folder.Path);
        StartOptions? started = new JobQuestions(new Conversation(answers), new KeptFiles(data), data, TimeProvider.System).Ask(new StartOptions { Data = data }, null);
        Assert.Null(started);
        return Directory.GetFiles(folder.Path, "*", SearchOption.AllDirectories).ToDictionary(path => Path.GetRelativePath(folder.Path, path), File.ReadAllText);
    }

    /// <summary>An ear without sound: words as they were heard, read under what may be said.</summary>
    sealed class Listener(string[] script, Language? language = null) : IListener
    {
        readonly Queue<string> _script = new(script);
        bool _isNew;

        public int Left => _script.Count;

        public List<string> Told { get; } = [];

        public List<string> Asked { get; } = [];

        public void Forget() => _isNew = true;

        public Heard Next(Expectation expectation, Expectation? words)
        {
            string said = _script.Count > 0 ? _script.Dequeue() : throw new InvalidOperationException(string.Join('\n', Told));
            return said.StartsWith("key: ", StringComparison.Ordinal)
                ? new Heard.Typed(said[5..])
                : new Heard.Said(PhraseReader.Read(new Utterance([], said, 20), expectation));
        }

        public void Say(Message words, bool breaksOff)
        {
            string said = SpokenMessage.Of(words, language: language);
            Told.Add(said);
            Asked.AddRange(_isNew ? [said] : Array.Empty<string>());
            _isNew = false;
        }

        public void Warn(ImmutableArray<Message> sentences) => Told.AddRange(sentences.Select(sentence => SpokenMessage.Of(sentence, language: language)));
    }
}
