using System.Globalization;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Log;

public sealed class EventFormatTests
{
    [Fact]
    public void Trailing_zeros_of_a_reading_are_kept()
    {
        string body = EventFormat.BodyOf(Some.Reading("oxygen", 7.60m, "low"));

        Assert.Contains("\"value\":7.60,", body, StringComparison.Ordinal);
        ReadingEntered read = Assert.IsType<ReadingEntered>(EventFormat.Read("reading-entered", body));
        Assert.Equal("7.60", read.Reading.Value.ToString(CultureInfo.InvariantCulture));
        Assert.Equal("6.0 to 11.0 %", read.Reading.Limit!.Text);
    }

    [Fact]
    public void The_words_of_the_log_are_those_agreed_and_not_class_names()
    {
        Assert.Equal("""{"step_id":"smell","arrival":"forward","at":"2026-03-14T09:26:53.589+00:00"}""",
            EventFormat.BodyOf(new StepEntered(Some.Moment, "smell", Arrival.Forward)));
        Assert.Equal("step-entered", EventFormat.KindOf(new StepEntered(Some.Moment, "smell", Arrival.Forward)));
    }

    [Fact]
    public void A_command_that_was_renamed_keeps_its_word_in_the_log()
    {
        const string Body = """{"word":"repeat-that","at":"2026-03-14T09:26:53.589+00:00"}""";

        Assert.Equal(CommandWord.SayAgain, Assert.IsType<QuestionAsked>(EventFormat.Read("question-asked", Body)).Word);
        Assert.Equal(Body, EventFormat.BodyOf(new QuestionAsked(Some.Moment, CommandWord.SayAgain)));
    }

    [Fact]
    public void Every_kind_of_event_has_a_word() => Assert.Equal(ArbitraryEvent.KindCount, EventFormat.Kinds.Count());

    [Theory]
    [InlineData("no-such-kind", "{}", "is not known to this program")]
    [InlineData("reading-stood", "{}", "cannot be read")]
    [InlineData("confirmation-refused", """{"at":"2026-03-14T09:26:53Z","more":1}""", "cannot be read")]
    [InlineData("confirmation-refused", """{"at":"2026-03-14T09:26:53Z","at":"2026-03-14T09:26:53Z"}""", "cannot be read")]
    [InlineData("note-taken", """{"at":"2026-03-14T09:26:53Z","step_id":null,"text":"","evidence":null}""", "cannot be read")]
    [InlineData("startup-stopped", """{"at":"2026-03-14T09:26:53Z","cause":1,"evidence":{"words":"","channel":"keys","certainty":"green"}}""", "cannot be read")]
    [InlineData("confirmation-refused", "null", "is empty")]
    [InlineData("confirmation-refused", "{", "cannot be read")]
    public void What_was_not_written_by_this_program_is_refused(string kind, string body, string message)
    {
        LogException error = Assert.Throws<LogException>(() => EventFormat.Read(kind, body));

        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }
}
