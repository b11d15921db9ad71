using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>The last guard: whatever led to the signature, it is refused while anything of the record speaks against it.</summary>
public sealed class SigningTests
{
    static readonly LiveJob Ready = new LiveJob().GoTo("sign");

    static DateTimeOffset At => Ready.Now;

    /// <summary>What is said to "finish" where the record of a good job goes on with <paramref name="more"/>, and lacks what <paramref name="lacks"/> names.</summary>
    static string Refusal(Predicate<StartupEvent> lacks, params StartupEvent[] more)
    {
        StartupProcedure procedure = new(Some.Plan());
        foreach (StartupEvent happened in Ready.Log.Where(happened => !lacks(happened)).Concat(more))
        {
            procedure.Apply(happened);
        }

        StartupEvent answer = procedure.Decide(new Phrase.Command(CommandWord.Finish, Evidence.Typed("finish")), Ready.Present)[^1];
        return answer is CommandRefused refused ? refused.Reason.Shown : "";
    }

    static string RefusalAfter(params StartupEvent[] more) => Refusal(_ => false, more);

    [Fact]
    public void A_good_record_is_signed() => Assert.Equal("", RefusalAfter());

    [Fact]
    public void A_step_that_is_not_done() =>
        Assert.StartsWith("It cannot be signed: 'Title of papers' is not done. ", Refusal(happened => happened is StepDone { StepId: "papers" }), StringComparison.Ordinal);

    [Theory]
    [InlineData("prove-port")]
    [InlineData("seal")]
    [InlineData("warm-up")]
    [InlineData("smell")]
    public void A_guard_that_was_skipped(string stepId)
    {
        LiveJob back = new LiveJob(Ready).Say(CommandWord.GoBack);
        StartupProcedure procedure = back.Procedure;
        procedure.Apply(new DictationAsked(At, DictationPurpose.SkipReason));
        procedure.Apply(new StepSkipped(At, stepId, "not today", Evidence.Typed("")));
        procedure.Apply(new StepEntered(At, "sign", Arrival.Forward));

        CommandRefused refused = Assert.IsType<CommandRefused>(procedure.Decide(new Phrase.Command(CommandWord.Finish, Evidence.Typed("finish")), back.Present)[^1]);
        Assert.Contains($"'Title of {stepId}' was skipped and must not be", refused.Reason.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_that_may_be_skipped_and_was_skipped_is_no_obstacle()
    {
        LiveJob job = new LiveJob().GoTo("papers").Say(CommandWord.SkipStep).Dictate("seen before").GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);

        Assert.True(job.Procedure.IsSigned);
    }

    [Fact]
    public void An_unsafe_answer_that_nobody_explained() =>
        Assert.Contains("'Title of prove-port' was answered unsafely", RefusalAfter(new AnswerGiven(At, "prove-port", false, Evidence.Typed("no"))), StringComparison.Ordinal);

    [Fact]
    public void A_reading_that_is_void() =>
        Assert.Contains("oxygen (high) is missing or void", RefusalAfter(new ReadingVoided(At, new ReadingKey("oxygen", "high"), "somebody turned a screw")), StringComparison.Ordinal);

    [Fact]
    public void A_thing_that_is_open_or_only_closed()
    {
        ThingOpened opened = new(At, "open-port", new Thing("manifold port", true));
        Assert.Contains("manifold port is open", RefusalAfter(opened), StringComparison.Ordinal);
        Assert.Contains("manifold port is not checked for leaks", RefusalAfter(opened, new ThingClosed(At, "close-port", "manifold port")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("manifold_pressure", "high", 4.10, "Manifold pressure (high) 4.1 in. w.c. is outside of 3.35 to 3.65 in. w.c. (invented)")]
    [InlineData("room_co", "kitchen", 30, "CO in room (kitchen) is not proven to be at most 9 ppm")]
    public void A_value_outside_of_its_limit(string fieldId, string scope, double value, string obstacle)
    {
        ReadingEntered good = Ready.Log.OfType<ReadingEntered>().Last(entered => entered.Reading.Key == new ReadingKey(fieldId, scope));
        ReadingEntered bad = good with { Reading = good.Reading with { Value = (decimal)value, Verdict = Calculations.Judgement.Verdict.Fail } };

        Assert.Contains(obstacle, RefusalAfter(bad), StringComparison.Ordinal);
    }

    [Fact]
    public void Flue_gas_whose_carbon_monoxide_is_not_proven()
    {
        ResultsComputed good = Ready.Log.OfType<ResultsComputed>().Last(computed => computed.Results.Any(result => result.Id == "co_air_free"));
        ResultsComputed bad = good with { Results = [.. good.Results.Select(result => result.Id == "co_air_free" ? result with { Verdict = Calculations.Judgement.Verdict.ConditionalPass } : result)] };

        Assert.Contains("CO air-free (high) is not proven to be at most 400 ppm", RefusalAfter(bad), StringComparison.Ordinal);
    }

    [Fact]
    public void Air_that_asks_to_shut_off_and_a_reading_that_was_taken_back()
    {
        ReadingEntered good = Ready.Log.OfType<ReadingEntered>().Last(entered => entered.Reading.Key.FieldId == "room_co");
        Assert.Contains("40 ppm: Shut off the furnace", RefusalAfter(good with { Reading = good.Reading with { Value = 40 } }), StringComparison.Ordinal);
        Assert.Contains("oxygen (high) is missing or void", RefusalAfter(new ReadingScratched(At, new ReadingKey("oxygen", "high"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("common practice, no source", true)]
    [InlineData("rating plate (invented)", false)]
    public void A_reason_excuses_what_lies_outside_of_practice_and_never_what_must_be_kept(string source, bool isExcused)
    {
        StartupPlan known = Some.Plan();
        StartupPlan plan = StartupPlan.From(known.Checklist, known.Appliance with { Limits = [.. known.Appliance.Limits.Select(limit => limit.Name == "oxygen" ? limit with { Source = source } : limit)] }, known.Site);
        LiveJob job = new LiveJob(plan).GoTo("sign");
        ReadingEntered good = job.Log.OfType<ReadingEntered>().Last(entered => entered.Reading.Key.FieldId == "oxygen");
        job.Procedure.Apply(good with { Reading = good.Reading with { Value = 10.5m, Verdict = Calculations.Judgement.Verdict.Fail } });
        Assert.Contains("Oxygen (high) 10.5 % is outside of", Assert.IsType<CommandRefused>(job.Say(CommandWord.Finish).Last[^1]).Reason.Shown, StringComparison.Ordinal);

        job.Procedure.Apply(new DictationAsked(job.Now, DictationPurpose.LimitReason));
        job.Procedure.Apply(new ExceptionMade(job.Now, "combustion", DictationPurpose.LimitReason, "Oxygen", "windy", Evidence.Typed("windy")));
        Assert.Equal(isExcused, job.Say(CommandWord.Finish).Last[^1] is FinishAsked { Signs: true });
    }
}
