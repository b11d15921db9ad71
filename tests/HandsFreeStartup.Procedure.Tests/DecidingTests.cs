using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>What choices, reasons and repeated answers lead to.</summary>
public sealed class DecidingTests
{
    static readonly Step DraftBy = Some.Steps.Single(step => step.Id == "smell") with
    {
        Id = "draft-by",
        Question = new("Is it natural draft or fan assisted?", true, "", false)
        {
            Choices = [new(Question.Natural, "natural draft"), new(Question.Fan, "fan assisted")],
            Decides = Question.DecidesDraft,
        },
    };

    static Step For(string id, Checklists.DraftBy draws) => Some.Steps.Single(step => step.Id == "papers") with { Id = id, OnlyFor = new Condition { DraftBy = draws } };

    static LiveJob Branching() => new(Some.PlanOf([DraftBy, For("hood", Checklists.DraftBy.Natural), For("inducer", Checklists.DraftBy.Fan), Some.Steps[^1]]));

    [Theory]
    [InlineData(Question.Natural, "hood")]
    [InlineData(Question.Fan, "inducer")]
    public void A_choice_decides_the_branch_and_the_other_one_is_not_asked_for_at_the_signature(string choice, string step)
    {
        LiveJob job = Branching().Choose(choice);
        Assert.Equal(step, job.Step);

        job.Say(CommandWord.Done).Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.True(job.Procedure.IsSigned);
    }

    [Fact]
    public void A_word_that_was_not_offered_is_no_choice()
    {
        LiveJob job = Branching().Choose("a candle");

        Assert.IsType<CommandRefused>(job.Last[^1]);
        Assert.Equal("draft-by", job.Step);
        Assert.IsType<CommandRefused>(new LiveJob().GoTo("papers").Choose(Question.Natural).Last[^1]);
    }

    [Fact]
    public void Yes_is_no_answer_to_a_choice()
    {
        LiveJob job = Branching().Say(AnswerWord.Yes);

        Assert.Equal("Is it natural draft or fan assisted?", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown);
    }

    [Fact]
    public void What_is_typed_as_a_reason_stands_and_what_is_said_is_read_back()
    {
        LiveJob typed = new LiveJob().GoTo("papers").Say(CommandWord.SkipStep).Give(new Phrase.Dictation(Evidence.Typed("seen before")));
        Assert.Equal("seen before", typed.Last.OfType<StepSkipped>().Single().Reason);

        LiveJob said = new LiveJob().GoTo("papers").Say(CommandWord.SkipStep).Give(new Phrase.Dictation(Some.Heard() with { Words = "seen before" }));
        Assert.Equal(Phase.ReadingBack, said.Procedure.Phase);
        Assert.Empty(said.Log.OfType<StepSkipped>());
        Language other = new("es", new Dictionary<string, string> { ["seen before"] = "visto antes", ["\"{0}\"? Confirm, or say no to say it again."] = "¿\"{0}\"?" });
        Assert.Contains("¿\"seen before\"?", said.Procedure.Announce(said.Last, said.Now).Select(announcement => other.Shown(announcement.Told)));
        said.Say(AnswerWord.No);
        Assert.Equal(Phase.Dictating, said.Procedure.Phase);
    }

    [Fact]
    public void A_reason_can_be_withdrawn_and_silence_is_none()
    {
        LiveJob job = new LiveJob().GoTo("papers").Say(CommandWord.SkipStep).Give(new Phrase.Dictation(Some.Heard() with { Words = "  " }));
        Assert.Equal(Phase.Dictating, job.Procedure.Phase);

        job.Say(CommandWord.Disregard);
        Assert.Equal((Phase.Asking, "papers"), (job.Procedure.Phase, job.Step));
    }

    [Theory]
    [InlineData(".")]
    [InlineData("-")]
    [InlineData("x")]
    [InlineData("12 34")]
    public void What_has_no_words_is_no_reason(string said)
    {
        LiveJob changed = new LiveJob().GoTo("prove-port").Say(AnswerWord.No).Say(AnswerWord.Yes).Give(new Phrase.Dictation(Evidence.Typed(said)));
        Assert.IsType<CommandRefused>(changed.Last[^1]);
        Assert.Equal((Phase.Dictating, "prove-port"), (changed.Procedure.Phase, changed.Step));

        LiveJob stopped = new LiveJob().GoTo("papers").Say(CommandWord.EmergencyStop).Say(AnswerWord.Yes).Choose("own-finding").Give(new Phrase.Dictation(Evidence.Typed(said)));
        Assert.DoesNotContain(stopped.Log, happened => happened is StartupResumed);
        Assert.Equal("fan", stopped.Give(new Phrase.Dictation(Evidence.Typed("fan"))).Log.OfType<StartupResumed>().Single().Reason);

        Assert.Equal(said, new LiveJob().GoTo("papers").Say(CommandWord.Note).Give(new Phrase.Dictation(Evidence.Typed(said))).Last.OfType<NoteTaken>().Single().Text);
    }

    [Fact]
    public void A_guard_that_was_answered_unsafely_is_left_with_a_reason_only_and_with_one_reason_for_good()
    {
        LiveJob job = new LiveJob().GoTo("prove-port").Say(AnswerWord.No).Say(AnswerWord.Yes);
        Assert.Equal(Phase.Dictating, job.Procedure.Phase);
        Assert.Equal("prove-port", job.Step);

        job.Dictate("tightened and brushed again");
        Assert.Equal("seal", job.Step);
        job.Say(CommandWord.GoBack).Say(AnswerWord.Yes);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
        Assert.Equal("seal", job.Step);
    }

    [Fact]
    public void A_value_outside_of_practice_needs_its_reason_once_and_another_value_another_one()
    {
        StartupPlan plan = Some.Plan();
        ApplianceSheet sheet = plan.Appliance with { Limits = [.. plan.Appliance.Limits.Select(limit => limit.Name == "oxygen" ? limit with { Source = "common practice, no source" } : limit)] };
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, sheet, plan.Site)).GoTo("combustion")
            .Say("oxygen", 10.5m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next);
        Assert.Equal(Phase.Dictating, job.Procedure.Phase);
        job.Dictate("windy day");
        Assert.Equal("manifold", job.Step);

        job.Say(CommandWord.GoBack).Say(CommandWord.Next);
        Assert.Equal((Phase.Asking, "manifold"), (job.Procedure.Phase, job.Step));

        job.Say(CommandWord.GoBack).Say("oxygen", 11.0m).Say(AnswerWord.Confirm).Say(CommandWord.Next);
        Assert.Equal(Phase.Dictating, job.Procedure.Phase);
        Assert.Equal("Oxygen (high) 11.0 % is outside of 5 to 9.5 % (common practice, no source)", job.Dictate("still windy").Log.OfType<ExceptionMade>().Last().Subject);
    }

    [Fact]
    public void A_doubtful_reading_is_confirmed_by_the_same_field_and_value_only()
    {
        LiveJob same = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m, Certainty.Amber).Say("oxygen", 7.6m);
        Assert.Equal(7.6m, same.Last.OfType<ReadingEntered>().Single().Reading.Value);

        LiveJob other = new LiveJob().GoTo("combustion").Say("oxygen", 12.0m, Certainty.Amber).Say("flue_co", 12m, Certainty.Amber);
        Assert.DoesNotContain(other.Log, happened => happened is ReadingEntered { Reading.Key.Scope: "high" });
        Assert.Equal("flue_co", other.Last.OfType<ConfirmationAsked>().Single().Reading.Key.FieldId);

        LiveJob value = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m, Certainty.Amber).Say("oxygen", 7.1m, Certainty.Amber);
        Assert.Equal(7.1m, value.Last.OfType<ConfirmationAsked>().Single().Reading.Value);
    }

    [Fact]
    public void A_correction_says_what_it_was_before_unless_there_is_another_doubt()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("oxygen", 7.1m);
        Assert.Equal("it was 7.6 before", job.Last.OfType<ConfirmationAsked>().Single().Reading.Evidence.Why);

        LiveJob doubtful = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("oxygen", 7.1m, Certainty.Amber);
        Assert.Equal("unusual", doubtful.Last.OfType<ConfirmationAsked>().Single().Reading.Evidence.Why);
    }

    [Fact]
    public void A_reading_that_completes_no_result_computes_none() =>
        Assert.DoesNotContain(new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Last, happened => happened is ResultsComputed);

    [Fact]
    public void An_utterance_with_a_recording_is_named_once_by_the_events_it_led_to()
    {
        Evidence heard = Some.Heard() with { Clip = "clip-1" };
        LiveJob reading = new LiveJob().GoTo("combustion").Give(new Phrase.Reading(Fields.Find("oxygen")!, 7.6m, heard));
        LiveJob order = new LiveJob().GoTo("combustion").Give(new Phrase.Command(CommandWord.GoBack, heard));

        Assert.DoesNotContain(reading.Last, happened => happened is UtteranceHeard);
        Assert.Equal("clip-1", Assert.IsType<UtteranceHeard>(order.Last[0]).Evidence.Clip);
    }

    [Fact]
    public void An_adjustment_that_changes_gas_has_everything_again_that_hangs_on_it()
    {
        StartupPlan plan = Some.PlanOf([.. Some.Steps.Select(step => step.Id switch
        {
            "papers" or "warm-up" => step with { AgainAfter = [Again.Change] },
            "adjust" => step with { Starts = ["warm-up"] },
            _ => step,
        })]);
        LiveJob job = new LiveJob(plan).GoTo("manifold").Say("manifold_pressure", 3.20m).Say(CommandWord.Next);
        Assert.Equal("adjust", job.Step);

        job.Say("manifold_pressure", 3.50m).Say(CommandWord.Next);
        Assert.Equal(["papers", "warm-up"], job.Log.OfType<StepReopened>().Select(step => step.StepId));
        Assert.Equal("papers", job.Step);
        job.GoTo("sign");
        Assert.Equal(2, job.Log.OfType<StepDone>().Count(done => done.StepId == "combustion"));
    }

    [Fact]
    public void An_adjustment_that_turned_nothing_has_nothing_again()
    {
        StartupPlan plan = Some.PlanOf([.. Some.Steps.Select(step => step.Id == "papers" ? step with { AgainAfter = [Again.Change] } : step)]);
        LiveJob job = new LiveJob(plan).GoTo("manifold").Say("manifold_pressure", 3.50m).Say(CommandWord.Next);

        Assert.Equal("rise", job.Step);
        Assert.Empty(job.Log.OfType<StepReopened>());
    }

    [Theory]
    [InlineData(CommandWord.SayAgain)]
    [InlineData(CommandWord.Help)]
    [InlineData(CommandWord.WhatIsOpen)]
    [InlineData(CommandWord.HowLong)]
    public void What_only_asks_is_answered_while_a_reading_is_read_back(CommandWord word) =>
        Assert.Equal(word, new LiveJob().GoTo("combustion").Say("oxygen", 15.4m, Certainty.Amber).Say(word).Last.OfType<QuestionAsked>().Single().Word);

    [Theory]
    [InlineData(CommandWord.SayAgain)]
    [InlineData(CommandWord.Help)]
    [InlineData(CommandWord.WhatIsOpen)]
    public void What_only_asks_is_answered_while_one_of_several_words_is_asked_for(CommandWord word)
    {
        LiveJob job = new LiveJob().GoTo("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time");
        Assert.Equal(Phase.Choosing, job.Procedure.Phase);

        Assert.Equal(word, job.Say(word).Last.OfType<QuestionAsked>().Single().Word);
        Assert.Equal("First choose one, or say no.", Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]).Reason.Shown);
    }

    [Theory]
    [InlineData(CommandWord.SayAgain)]
    [InlineData(CommandWord.Help)]
    public void What_only_asks_is_answered_while_free_speech_is_read_back(CommandWord word)
    {
        LiveJob job = new LiveJob().GoTo("papers").Say(CommandWord.Note).Give(new Phrase.Dictation(Some.Heard() with { Words = "a note" }));

        Assert.Equal(word, job.Say(word).Last.OfType<QuestionAsked>().Single().Word);
    }

    [Fact]
    public void Prompts_are_short_or_full_as_said()
    {
        Assert.True(new LiveJob().GoTo("papers").Say(CommandWord.FullPrompts).Last.OfType<PromptsChosen>().Single().Full);
        Assert.False(new LiveJob().GoTo("papers").Say(CommandWord.ShortPrompts).Last.OfType<PromptsChosen>().Single().Full);
    }

    [Fact]
    public void What_was_not_understood_and_what_is_for_the_voice_leads_to_nothing_and_after_the_end_nothing_does_but_an_alarm()
    {
        Assert.Empty(new LiveJob().GoTo("papers").Say(CommandWord.StopTalking).Last);
        Assert.Empty(new LiveJob().GoTo("papers").Give(new Phrase.NotUnderstood(Some.Heard())).Last);
        Assert.Empty(new StartupProcedure(Some.Plan()).Decide(new Phrase.Command(CommandWord.Next, Some.Heard()), Some.Morning));

        LiveJob signed = new LiveJob().GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.Empty(signed.Say(CommandWord.Note).Last);
        Assert.Empty(signed.Say(AnswerWord.Yes).Last);
        Assert.Empty(signed.Wait(TimeSpan.FromHours(1)).Last);
        Assert.Contains(signed.Say(CommandWord.GasSmell).Last, happened => happened is StartupStopped);
    }

    [Fact]
    public void An_unsafe_answer_is_told_as_it_was_given()
    {
        Question question = new("Do you see cracks?", false, "Do not light it.", false, UnsafeAfter: 1);
        LiveJob cracks = new LiveJob(Some.PlanOf([Some.Steps[0] with { Question = question }, Some.Steps[^1]])).Say(AnswerWord.Yes);
        Assert.Equal("\"Do you see cracks?\" was answered yes", cracks.Last.OfType<UnsafeAsked>().Single().Condition.Shown);

        LiveJob drawn = new LiveJob(Some.PlanOf([Some.Steps[0] with { Question = question with { Text = "Drawn in?", Proper = true } }, Some.Steps[^1]])).Say(AnswerWord.No);
        Assert.Equal("\"Drawn in?\" was answered no", drawn.Last.OfType<UnsafeAsked>().Single().Condition.Shown);
    }

    [Fact]
    public void An_order_during_free_speech_is_no_note_and_an_utterance_names_its_recording_once()
    {
        LiveJob job = new LiveJob().GoTo("papers").Say(CommandWord.Note).Say(CommandWord.Next);
        Assert.Empty(job.Last);
        Assert.Equal(Phase.Dictating, job.Procedure.Phase);

        Evidence heard = Some.Heard() with { Clip = "clip-1" };
        LiveJob several = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Give(new Phrase.Reading(Fields.Find("flue_co")!, 12m, heard));
        Assert.True(several.Last.Count > 1);
        Assert.DoesNotContain(several.Last, happened => happened is UtteranceHeard);
    }
}
