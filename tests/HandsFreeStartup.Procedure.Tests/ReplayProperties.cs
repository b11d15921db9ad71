using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Laws over arbitrary phrase sequences.</summary>
public sealed class ReplayProperties
{
    /// <summary>A phrase of any kind, legal or not; a good step forward is the likeliest, so that long walks happen.</summary>
    static Gen<Action<LiveJob>> Moves() => Gen.Frequency<Action<LiveJob>>(
        (12, Gen.Constant<Action<LiveJob>>(Forward)),
        (3, from value in Gen.Choose(0, 200)
            from field in Gen.Elements(Fields.All.AsEnumerable())
            from certainty in Gen.Elements(Certainty.Green, Certainty.Amber)
            select (Action<LiveJob>)(job => job.Say(field.Id, value / 10m, certainty))),
        (3, Gen.Elements(Enum.GetValues<CommandWord>()).Select<CommandWord, Action<LiveJob>>(word => job => job.Say(word))),
        (2, Gen.Elements(Enum.GetValues<AnswerWord>()).Select<AnswerWord, Action<LiveJob>>(word => job => job.Say(word))),
        (1, Gen.Elements("a reason", " ").Select<string, Action<LiveJob>>(text => job => job.Dictate(text))),
        (1, Gen.Choose(-60, 600).Select<int, Action<LiveJob>>(seconds => job => job.Wait(TimeSpan.FromSeconds(seconds)))),
        (1, Gen.Constant<Action<LiveJob>>(job => job.Give(new Phrase.NotUnderstood(Some.Heard(Certainty.Red))))));

    /// <summary>Checklists from which any steps are left out, the closing ones too: the signature must hold even where the author forgot one.</summary>
    static Gen<StartupPlan> Plans() =>
        from kept in Gen.ListOf(Gen.Frequency((4, Gen.Constant(true)), (1, Gen.Constant(false))), Some.Steps.Length)
        select Some.PlanOf([.. Some.Steps.Where((step, index) => kept[index] || step.Kind == StepKind.Sign)]);

    static void Forward(LiveJob job)
    {
        if (job.Procedure.Phase == Phase.Asking && !job.View.IsPaused && job.Step != "sign")
        {
            job.DoStep();
        }
        else
        {
            job.Say(job.Step == "sign" && job.Procedure.Phase == Phase.Asking ? CommandWord.Finish : CommandWord.GoAhead).Say(AnswerWord.Yes);
        }
    }

    [Property(MaxTest = 300)]
    public Property Replay_equals_live_and_nothing_unproven_is_ever_signed() => Prop.ForAll(
        Plans().ToArbitrary(),
        Gen.ListOf(Moves()).Resize(80).ToArbitrary(),
        (plan, moves) =>
        {
            LiveJob job = new(plan);
            foreach (Action<LiveJob> move in moves)
            {
                move(job);
                if (job.Last.Any(happened => happened is StartupSigned))
                {
                    Assert.Empty(job.View.Open);
                    Assert.True(EverythingDemandedCounts(job));
                }
            }

            StartupView replayed = job.Replayed().View(job.Now);
            Assert.Equal(Text(job.View), Text(replayed));
        });

    [Property(MaxTest = 100)]
    public Property Deciding_changes_nothing() => Prop.ForAll(
        Gen.ListOf(Moves()).Resize(40).ToArbitrary(),
        moves =>
        {
            LiveJob job = new();
            foreach (Action<LiveJob> move in moves)
            {
                move(job);
            }

            string before = Text(job.View);
            foreach (CommandWord word in Enum.GetValues<CommandWord>())
            {
                job.Procedure.Decide(new Phrase.Command(word, Some.Heard()), job.Now);
            }

            Assert.Equal(before, Text(job.View));
        });

    static bool EverythingDemandedCounts(LiveJob job)
    {
        HashSet<string> skipped = [.. job.Log.OfType<StepSkipped>().Select(step => step.StepId)];
        Dictionary<ReadingKey, bool> counts = [];
        foreach (StartupEvent happened in job.Log)
        {
            switch (happened)
            {
                case ReadingEntered entered:
                    counts[entered.Reading.Key] = true;
                    break;
                case ReadingVoided voided:
                    counts[voided.Key] = false;
                    break;
                case ReadingScratched scratched:
                    counts[scratched.Key] = false;
                    break;
            }
        }

        return job.Procedure.Plan.Steps
            .Where(step => step.Kind == StepKind.Read && !skipped.Contains(step.Id))
            .All(step => step.Readings.All(demand => counts.GetValueOrDefault(new ReadingKey(demand.FieldId, step.Scope ?? ""))));
    }

    static string Text(StartupView view) => System.Text.Json.JsonSerializer.Serialize(view with { Expectation = Expectation.Open });
}
