using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Tests;

public sealed class ExplainingTests
{
    [Fact]
    public void Carbon_monoxide_air_free_is_explained_by_formula_numbers_doubt_and_limit()
    {
        IReadOnlyList<Announcement> told = Explained(Combustion(new LiveJob()).Say("flue_co", 96m).Say(AnswerWord.Confirm));

        Assert.True(told.Count is >= 4 and <= 6, string.Join("\n", told.Select(line => line.Text)));
        Assert.Contains(told, line => line.Text.StartsWith("COaf = ", StringComparison.Ordinal));
        Assert.Contains(told, line => line.Text.Contains("CO 96 ppm (said at 08:", StringComparison.Ordinal));
        Assert.Equal(1, told.Count(line => line.Aloud.Length > 0));
        Assert.Contains("CO air-free", told[0].Aloud, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_is_explained_by_the_words_heard_the_doubt_of_the_instrument_and_its_limit()
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say("manifold_pressure", 3.5m);
        IReadOnlyList<Announcement> told = Explained(job);

        Assert.Contains("Manifold pressure 3.5", told[0].Text, StringComparison.Ordinal);
        Assert.Contains(told, line => line.Text.Contains('|', StringComparison.Ordinal) && line.Text.Contains('X', StringComparison.Ordinal));
    }

    [Fact]
    public void A_limit_proves_nothing_where_the_instrument_states_no_uncertainty()
    {
        StartupPlan plan = Some.Plan();
        LiveJob job = Combustion(new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site with { Instruments = [] })));

        Derivation airFree = job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "co_air_free").Derivation;

        Assert.Equal(Calculations.Judgement.Verdict.CannotTell, airFree.Verdict);
        Assert.StartsWith("cannot be told without the uncertainty of every reading: allowed is at most 400 ppm", FormattableString.Invariant(airFree.Lines()[^1]), StringComparison.Ordinal);
        Assert.DoesNotContain("passes", FormattableString.Invariant(airFree.Sentence()), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_one_of_two_instruments_states_no_uncertainty_the_other_one_is_not_passed_off_as_the_doubt_of_the_result()
    {
        StartupPlan plan = Some.Plan();
        Site half = plan.Site with { Instruments = [.. plan.Site.Instruments.Where(instrument => instrument.FieldId != "flue_co")] };
        LiveJob job = Combustion(new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance, half)));

        CalculatedResult result = job.Log.OfType<ResultsComputed>().SelectMany(computed => computed.Results).Last(one => one.Id == "co_air_free");
        Derivation derivation = job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "co_air_free").Derivation;

        Assert.Null(result.ExpandedUncertainty);
        Assert.EndsWith("ppm, no uncertainty stated", ShownValue.Of(result).Text, StringComparison.Ordinal);
        Assert.EndsWith("ppm, no uncertainty stated", derivation.TextWithUncertainty, StringComparison.Ordinal);
        Assert.All([.. derivation.Lines().Select(FormattableString.Invariant), .. derivation.AllLines()], line => Assert.DoesNotContain("made of", line, StringComparison.Ordinal));
        Assert.Equal("19 ppm (0 to 50)", Combustion(new LiveJob()).Procedure.Derivations().Single(one => one.Derivation.Head.Id == "co_air_free").Derivation.TextWithUncertainty);
    }

    [Fact]
    public void Before_anything_was_said_there_is_nothing_to_explain() =>
        Assert.Contains("Nothing was said yet", Assert.Single(Explained(new LiveJob())).Text, StringComparison.Ordinal);

    [Fact]
    public void What_is_explained_is_what_was_recorded_for_every_result_that_can_be_explained()
    {
        LiveJob job = Combustion(new LiveJob());
        Dictionary<string, CalculatedResult> recorded = job.Log.OfType<ResultsComputed>().SelectMany(computed => computed.Results).ToDictionary(result => result.Id);
        (string Scope, Derivation Derivation)[] explained = [.. job.Procedure.Derivations()];

        Assert.Equal(7, explained.Length);
        foreach ((_, Derivation derivation) in explained)
        {
            CalculatedResult result = recorded[derivation.Head.Id];
            Assert.Equal(result.Value!.Value, derivation.Result.Value, 1e-6 * Math.Abs(result.Value.Value));
            Assert.Equal(result.ExpandedUncertainty!.Value, derivation.Result.ExpandedUncertainty, 1e-4 * Math.Abs(result.Value.Value));
        }
    }

    static LiveJob Combustion(LiveJob job) => job.GoTo("combustion")
        .Say("oxygen", 7.6m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m);

    static IReadOnlyList<Announcement> Explained(LiveJob job)
    {
        job.Say(CommandWord.Explain);
        return job.Procedure.Announce(job.Last, job.Present);
    }
}
