using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Tests.Adversary;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>What is offered is what is taken: at every moment of jobs that go wrong in every way.</summary>
public sealed class OfferTests
{
    const int JobsOfARow = 12;

    public static TheoryData<string, string, string, string, StageOrder> Rows => ShippedPlans.Rows;

    [Theory]
    [MemberData(nameof(Rows))]
    public void Each_form_that_is_offered_is_taken_and_each_answer_or_move_that_is_taken_is_offered(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);
        IReadOnlyList<UnsafeFact> facts = UnsafeFact.Of(plan);
        int looked = 0;
        for (int job = 0; job < JobsOfARow; job++)
        {
            Saboteur saboteur = new(plan, facts[(job * 37) % facts.Count], new Random(job)) { After = live => looked += Look(live.Procedure, live.Present) };
            saboteur.Work();
        }

        Assert.True(looked > 500, $"only {looked} moments were looked at");
    }

    static int Look(StartupProcedure procedure, Now now)
    {
        if (procedure.Phase is Phase.Finished or Phase.Dictating)
        {
            return 0;
        }

        string[] offered = [.. procedure.View(now).ListeningFor];
        foreach (string form in offered.Where(form => form != "or the reading again"))
        {
            Assert.True(PhrasesOf(form, procedure.Expectation).Any(phrase => IsTaken(procedure, now, phrase)), $"{procedure.Phase} {procedure.View(now).StepTitle}: \"{form}\" is offered and refused");
        }

        (string Form, Phrase Phrase)[] kinds =
        [
            ("yes", Answer(AnswerWord.Yes)), ("no", Answer(AnswerWord.No)), ("next", Order(CommandWord.Next)),
            .. procedure.Phase is Phase.Asking ? [] : new[] { ("confirm", (Phrase)Answer(AnswerWord.Confirm)) },
            .. procedure.Expectation.Choices.Select(choice => (choice.Says, (Phrase)new Phrase.Choice(choice.Value, Evidence.Typed(choice.Says)))),
        ];
        foreach ((string form, Phrase phrase) in kinds)
        {
            // "done" and "next" are one move where a step is only done; "yes" is a way to say confirm.
            string[] ways = form switch { "next" => ["next", "done"], "yes" => ["yes", "confirm"], _ => [form] };
            bool isOffered = offered.Any(one => ways.Any(way => one == way || one.StartsWith($"{way} ", StringComparison.Ordinal) || one.StartsWith($"{way},", StringComparison.Ordinal)));
            Assert.True(isOffered || !IsTaken(procedure, now, phrase), $"{procedure.Phase} {procedure.View(now).StepTitle}: \"{form}\" is taken and not offered ({string.Join(" | ", offered)})");
        }

        return 1;
    }

    static bool IsTaken(StartupProcedure procedure, Now now, Phrase phrase) =>
        procedure.Decide(phrase, now) is { Count: > 0 } events && events.All(happened => happened is not CommandRefused);

    static IEnumerable<Phrase> PhrasesOf(string form, Expectation expectation)
    {
        string word = form.Split(" (")[0].Split(',')[0];
        if (form.Contains(" + ", StringComparison.Ordinal))
        {
            string name = form.Split(" + ")[0];
            Field field = expectation.Readings.Single(reading => reading.Names.Contains(name)).Field;
            // A value that is entered already is refused: one of several must be taken.
            return new[] { 0.25m, 0.5m, 0.75m }.Select(share => new Phrase.Reading(
                field, Math.Round(field.Lowest + (field.Highest - field.Lowest) * share, field.MostDecimals), Evidence.Typed(form)));
        }

        return Commands.Find(word) is { } command ? [Order(command.Word)]
            : Answers.Find(word) is { } answer ? [Answer(answer.Word)]
            : expectation.Choices.Where(choice => choice.Says == form).Select(choice => new Phrase.Choice(choice.Value, Evidence.Typed(form)));
    }

    static Phrase.Command Order(CommandWord word) => new(word, Evidence.Typed(Commands.Of(word).Id));

    static Phrase.Answer Answer(AnswerWord word) => new(word, Evidence.Typed(Answers.Of(word).Ways[0]));
}
