using HandsFreeStartup.Interview;
using HandsFreeStartup.NewJob;
using HandsFreeStartup.Running;
using HandsFreeStartup.Start;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>A call for help that is typed instead of an answer: whoever calls is told what to do, and the call is no answer to any question.</summary>
public sealed class CallForHelpTests
{
    const string Leave = "!! Touch no switch, leave the house with everybody in it, and call for help from outside.", MakeSafe = "!! Shut the burner and the gas off now, and step back.";

    static readonly string[] Calls = ["emergency stop", "I smell gas", "there is a fire", "Help, gas leak!", "STOP STOP STOP", "room monoxide 90", "yes, we smell gas", "there's a fire in the kitchen"];

    static readonly string[] Job =
    [
        "", "2020-01-01", "20 5%", "0.3", "4 1.5%", "2", "0.008", "", "", "", "", "Pat Owner", "14 Pond Lane", "650", "Basement, kitchen", "2", "", "1200",
        "Attic furnace", "natural-gas", "1", "I", "no", "clockwise", "Threaded cap", "5-7", "1", "1.0-1.5", "1.0-1.5", "small burner", "1", .. Enumerable.Repeat("", 11), "", "Terry Echnician", "no",
    ];

    [Fact]
    public void Before_every_answer_of_a_new_job_it_is_answered_and_nothing_of_it_is_kept()
    {
        (Dictionary<string, string> plain, string quiet) = Kept(Job);
        (Dictionary<string, string> called, string told) = Kept(Job.SelectMany((answer, at) => (string[])[Calls[at % Calls.Length], answer]));

        Assert.Equal(plain, called);
        Assert.DoesNotContain("!!", quiet, StringComparison.Ordinal);
        Assert.Equal(Job.Length, told.Split("!!").Length - 1);
        Assert.Equal(Job.Where((_, at) => Calls[at % Calls.Length] is "emergency stop" or "STOP STOP STOP").Count(), told.Split(MakeSafe).Length - 1);
    }

    [Fact]
    public void Words_like_a_call_are_answers()
    {
        (Dictionary<string, string> kept, string told) = Kept([.. Job[..11], "Emergency Heat LLC", "12 Gas Main Road, Fire Station", .. Job[13..]]);

        Assert.DoesNotContain("!!", told, StringComparison.Ordinal);
        Assert.Contains(kept.Values, text => text.Contains("Emergency Heat LLC, 12 Gas Main Road, Fire Station", StringComparison.Ordinal));
    }

    [Fact]
    public void A_name_that_holds_a_call_is_an_answer_only_when_it_is_typed_again()
    {
        (Dictionary<string, string> kept, string told) = Kept([.. Job[..11], "Gas Leak Repairs", "Gas Leak Repairs", .. Job[12..]]);

        Assert.Equal(2, told.Split(Leave).Length);
        Assert.Contains("If these words are the answer, type them again.", told, StringComparison.Ordinal);
        Assert.Contains(kept.Values, text => text.Contains("customer: \"Gas Leak Repairs\"", StringComparison.Ordinal) || text.Contains("customer: Gas Leak Repairs", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("new", "instruments")]
    [InlineData("checklist", "new-appliance")]
    public async Task The_other_commands_that_ask_answer_it_too(params string[] command)
    {
        using TemporaryFolder folder = new();

        ProgramResult result = await ProgramProcess.RunTyping(["I smell gas", "emergency stop"], [.. command, .. command[0] == "new" ? ["--data", folder.Path] : new[] { Path.Combine(folder.Path, "my-furnace.yaml") }]);

        Assert.Contains(Leave, result.Output, StringComparison.Ordinal);
        Assert.Contains(MakeSafe, result.Output, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    static (Dictionary<string, string> Files, string Told) Kept(IEnumerable<string> lines)
    {
        using TemporaryFolder folder = new();
        using StringWriter told = new();
        DataFolder data = new(folder.Path);
        TypedAnswers answers = new(TypedLines.Of(new StringReader(string.Join('\n', lines))), told);
        Assert.Null(new JobQuestions(new Conversation(answers), new KeptFiles(data), data, TimeProvider.System).Ask(new StartOptions { Data = data }, null));
        return (Directory.GetFiles(folder.Path, "*", SearchOption.AllDirectories).ToDictionary(path => Path.GetRelativePath(folder.Path, path), File.ReadAllText), told.ToString());
    }
}
