using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>What was begun before the present question was asked does not answer it.</summary>
public sealed class LateSpeechTests
{
    static bool IsLate(LiveJob job, Phrase phrase, int met) => job.Procedure.IsLate(phrase, met, job.Present);

    static Phrase.Answer Answer(AnswerWord word) => new(word, Some.Heard());

    static Phrase.Command Command(CommandWord word) => new(word, Some.Heard());

    static Phrase.Reading Reading(string fieldId, decimal value) => new(Fields.Find(fieldId)!, value, Some.Heard());

    [Fact]
    public void A_next_said_twice_does_not_take_a_strange_limit()
    {
        Step read = Some.Steps.Single(step => step.Id == "manifold") with { Id = "measure", Scope = null, Readings = [new("inlet_pressure", "inlet_pressure")] };
        StartupPlan plan = Some.PlanOf([read, Some.Steps[^1]]);
        LiveJob job = new(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [] }, plan.Site));
        job.Say(job.Procedure.Expectation.Readings[1].Field, 30.0m, Certainty.Green);
        int met = job.Procedure.Questions;

        Assert.IsType<LimitDoubted>(job.Say(CommandWord.Next).Last[^1]);

        Assert.True(IsLate(job, Command(CommandWord.Next), met));
        Assert.False(IsLate(job, Command(CommandWord.Next), job.Procedure.Questions));
    }

    [Fact]
    public void A_no_said_twice_does_not_count_as_the_second_time_that_something_is_wrong()
    {
        LiveJob job = new LiveJob().GoTo("prove-port");
        int met = job.Procedure.Questions;

        job.Say(AnswerWord.No);

        Assert.Equal("prove-port", job.Step);
        Assert.True(IsLate(job, Answer(AnswerWord.No), met));
    }

    [Fact]
    public void A_confirm_for_one_place_does_not_lead_to_another()
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        job.Give(new Phrase.Jump(Target("papers"), Some.Heard()));
        int met = job.Procedure.Questions;
        Assert.Equal(Phase.Jumping, job.Procedure.Phase);

        job.Say(AnswerWord.No).Give(new Phrase.Jump(Target("drill"), Some.Heard()));

        Assert.Equal(Phase.Jumping, job.Procedure.Phase);
        Assert.True(IsLate(job, Answer(AnswerWord.Confirm), met));

        SpokenStep Target(string id) => job.Procedure.Expectation.Steps.First(step => step.Id == id);
    }

    [Fact]
    public void A_confirm_for_one_value_does_not_enter_another()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 12m, Certainty.Amber);
        int met = job.Procedure.Questions;

        job.Say("flue_co", 80m, Certainty.Amber);

        Assert.True(IsLate(job, Answer(AnswerWord.Confirm), met));
    }

    [Fact]
    public void A_yes_does_not_lead_on_from_a_stop_over_a_value_that_it_did_not_know_of()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("room_co", 90m);
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
        job.Wait(TimeSpan.FromMinutes(11));
        int met = job.Procedure.Questions;

        job.Say("room_co", 0m);

        Assert.True(IsLate(job, Answer(AnswerWord.Yes), met));
    }

    [Fact]
    public void Values_of_one_step_follow_each_other_as_fast_as_they_are_said()
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        int met = job.Procedure.Questions;

        job.Say("oxygen", 7.6m).Say(CommandWord.WhatIsOpen);

        Assert.False(IsLate(job, Reading("flue_co", 12m), met));
        Assert.False(IsLate(job, Command(CommandWord.Next), met));
    }

    [Theory]
    [InlineData(4, true)]
    [InlineData(7, false)]
    [InlineData(90, false)]
    public void Only_a_value_of_the_room_that_is_not_proven_harmless_counts_at_any_time(int ppm, bool isLate)
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        int met = job.Procedure.Questions;

        job.GoTo("manifold");

        Assert.Equal(isLate, IsLate(job, Reading("room_co", ppm), met));
    }

    [Fact]
    public void The_same_events_ask_as_often_in_a_replay()
    {
        LiveJob job = new LiveJob().GoTo("seal");

        Assert.Equal(job.Procedure.Questions, job.Replayed().Questions);
    }
}
