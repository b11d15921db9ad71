using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Which step follows, what may be left undone, and what must be done before the way goes on.</summary>
public sealed class NextStepTests
{
    static Step Known(string id) => Some.Steps.Single(step => step.Id == id);

    static Step Plain(string id) => Known("papers") with { Id = id, Title = $"Title of {id}" };

    static Step Power { get; } = Plain("power") with { Kind = StepKind.Read, Readings = [new("line_voltage", null)] };

    static LiveJob Of(params Step[] steps) => new(Some.PlanOf([.. steps, Known("sign")]));

    static string Refusal(LiveJob job) => Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown;

    static Arrival ArrivalAt(LiveJob job) => job.Last.OfType<StepEntered>().Single().Arrival;

    static string[] Exact(LiveJob job, string name) =>
        [.. job.Last.OfType<ThingOpened>().Where(one => one.Thing.Name == name).Select(_ => "opened"), .. job.Last.OfType<ThingClosed>().Where(one => one.Name == name).Select(_ => "closed")];

    [Fact]
    public void A_question_is_left_by_its_answer_only()
    {
        Assert.Equal("Answer yes or no.", Refusal(new LiveJob().Say(CommandWord.Next)));

        LiveJob choice = Of(Known("smell") with { Question = new("Which?", true, "", false) { Choices = [new("a", "left"), new("b", "right")] } });
        Assert.Equal("Say left or right.", Refusal(choice.Say(CommandWord.Next)));
    }

    [Fact]
    public void There_is_nothing_before_the_first_step_nor_before_the_first_one_of_making_safe()
    {
        Assert.Equal("This is the first step.", Refusal(new LiveJob().Say(CommandWord.GoBack)));

        LiveJob ended = new LiveJob().GoTo("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time").Choose("owners-wish");
        Assert.Contains("the first step of making it safe", Refusal(ended.Say(CommandWord.GoBack)), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_kind_of_guard_is_a_guard_by_itself()
    {
        Question plain = new("Is it so?", true, "Make it so.", false);
        Step ask = Known("smell") with { IsSafetyStop = false, Question = plain };

        Assert.Contains("safety stop", Refusal(Of(ask with { IsSafetyStop = true }).Say(CommandWord.SkipStep)), StringComparison.Ordinal);
        Assert.Contains("safety stop", Refusal(Of(ask with { Question = plain with { StopsForGas = true } }).Say(CommandWord.SkipStep)), StringComparison.Ordinal);
        Assert.Contains("safety stop", Refusal(Of(ask with { Question = plain with { UnsafeAfter = 1 } }).Say(CommandWord.SkipStep)), StringComparison.Ordinal);
        Assert.Equal(Phase.Dictating, Of(ask).Say(CommandWord.SkipStep).Procedure.Phase);
        Assert.Equal(Phase.Dictating, Of(Power).Say(CommandWord.SkipStep).Procedure.Phase);
    }

    [Fact]
    public void What_a_limit_judges_that_must_be_kept_is_not_skipped_though_it_judges_a_result_only()
    {
        Assert.Contains("must be kept", Refusal(new LiveJob().GoTo("rise").Say(CommandWord.SkipStep)), StringComparison.Ordinal);
        Assert.Contains("must be kept", Refusal(new LiveJob().GoTo("manifold").Say(CommandWord.SkipStep)), StringComparison.Ordinal);

        // The efficiency is one of several results of the flue temperature.
        StartupPlan plan = Some.PlanOf([Plain("flue") with { Kind = StepKind.Read, Readings = [new("flue_temperature", null)] }, Known("sign")]);
        DeclaredLimit efficiency = new("efficiency", 78, 86, "%", "rating plate (invented)", false);
        Assert.Contains("must be kept", Refusal(new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [efficiency] }, plan.Site)).Say(CommandWord.SkipStep)), StringComparison.Ordinal);
        LiveJob practice = new(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [efficiency with { Source = "common practice, no source" }] }, plan.Site));
        Assert.Equal(Phase.Dictating, practice.Say(CommandWord.SkipStep).Procedure.Phase);
    }

    [Fact]
    public void At_the_signature_next_leads_to_the_first_thing_that_is_not_done_or_void()
    {
        LiveJob ready = new LiveJob().GoTo("sign");
        ReadingVoided voided = new(ready.Present, new ReadingKey("oxygen", "high"), "somebody turned a screw");

        Assert.Equal("Say finish to sign.", Assert.IsType<CommandRefused>(Next(ready, _ => false)[^1]).Reason.Shown);
        Assert.Equal(("papers", Arrival.Return), Entered(Next(ready, happened => happened is StepDone { StepId: "papers" })));
        Assert.Equal(("combustion", Arrival.Return), Entered(Next(ready, _ => false, voided)));
        Assert.Equal(("papers", Arrival.Return), Entered(Next(ready, happened => happened is StepDone { StepId: "papers" }, voided)));
        IReadOnlyList<StartupEvent> seal = Next(ready, happened => happened is StepDone { StepId: "seal" });
        Assert.Equal("seal", Entered(seal).StepId);
        Assert.DoesNotContain(seal, happened => happened is ThingOpened);
    }

    static (string StepId, Arrival Arrival) Entered(IReadOnlyList<StartupEvent> events) => events.OfType<StepEntered>().Select(entered => (entered.StepId, entered.Arrival)).Single();

    static IReadOnlyList<StartupEvent> Next(LiveJob job, Predicate<StartupEvent> lacks, params StartupEvent[] more)
    {
        StartupProcedure procedure = new(Some.Plan());
        foreach (StartupEvent happened in job.Log.Where(happened => !lacks(happened)).Concat(more))
        {
            procedure.Apply(happened);
        }

        return procedure.Decide(new Phrase.Command(CommandWord.Next, Evidence.Typed("next")), job.Present);
    }

    [Fact]
    public void What_was_left_undone_is_led_to_before_the_signature_and_as_a_return()
    {
        LiveJob ready = new LiveJob().GoTo("seal");
        StartupProcedure procedure = new(Some.Plan());
        foreach (StartupEvent happened in ready.Log.Where(happened => happened is not StepDone { StepId: "papers" }))
        {
            procedure.Apply(happened);
        }

        Assert.Equal(("papers", Arrival.Return), Entered(procedure.Decide(new Phrase.Command(CommandWord.Done, Evidence.Typed("done")), ready.Present)));
        Assert.Equal(Arrival.Forward, ArrivalAt(ready.Say(CommandWord.Done)));
    }

    [Fact]
    public void Of_several_steps_to_repeat_the_first_is_entered_and_its_wait_begins_anew()
    {
        Step wait = Known("warm-up");
        Step asked = Known("prove-port") with { Proves = [], Question = new("Drawn in?", true, "Again.", false) { Repeats = ["warm-up", "power"] } };
        LiveJob job = Of(Power, wait, Plain("between"), asked).Say("line_voltage", 120m).Say(CommandWord.Next).GoTo("prove-port").Say(AnswerWord.No);
        Assert.Equal("power", job.Step);
        Assert.Equal(Arrival.Return, ArrivalAt(job));

        LiveJob waits = Of(wait, Plain("between"), asked with { Question = asked.Question! with { Repeats = ["warm-up"] } }).GoTo("prove-port").Say(AnswerWord.No);
        Assert.Equal(TimeSpan.FromMinutes(8), waits.Last.OfType<TimerStarted>().Single().Duration);
        Assert.Contains("timer still runs", Refusal(waits.Say(CommandWord.Next)), StringComparison.Ordinal);
        Assert.Equal("prove-port", waits.Wait(TimeSpan.FromMinutes(8)).Say(CommandWord.Next).Step);
    }

    [Fact]
    public void A_wait_that_was_over_and_that_nothing_made_doubtful_is_not_waited_for_again()
    {
        LiveJob job = new LiveJob().GoTo("warm-up").Wait(TimeSpan.FromMinutes(8)).Say(CommandWord.EmergencyStop).LeadBack("a false alarm");

        Assert.Equal("warm-up", job.Step);
        Assert.DoesNotContain(job.Last, happened => happened is TimerStarted);
        Assert.Equal("combustion", job.Say(CommandWord.Next).Step);
    }

    [Fact]
    public void What_one_branch_opened_is_closed_and_checked_though_the_other_branch_is_chosen_later()
    {
        Condition natural = new() { DraftBy = DraftBy.Natural };
        Step draftBy = Known("smell") with
        {
            Id = "draft-by",
            IsSafetyStop = false,
            Question = new("Natural draft or fan?", true, "", false) { Choices = [new(Question.Natural, "natural"), new(Question.Fan, "fan")], Decides = Question.DecidesDraft },
        };
        LiveJob job = Of(draftBy, Known("open-port") with { OnlyFor = natural }, Plain("hood") with { OnlyFor = natural }, Known("close-port") with { OnlyFor = natural }, Known("prove-port") with { OnlyFor = natural });
        job.Choose(Question.Natural).Say(CommandWord.Done).Say(CommandWord.GoBack).Say(CommandWord.GoBack);
        Assert.Equal("draft-by", job.Step);

        Assert.Equal("close-port", job.Choose(Question.Fan).Step);
        Assert.Equal("prove-port", job.Say(CommandWord.Done).Step);
        Assert.Equal("sign", job.Say(AnswerWord.Yes).Step);
    }

    [Fact]
    public void The_branch_is_the_one_that_was_chosen_last_and_other_choices_leave_it_as_it_is()
    {
        Step draftBy = Known("smell") with
        {
            Id = "draft-by",
            IsSafetyStop = false,
            Question = new("Natural draft or fan?", true, "", false) { Choices = [new(Question.Natural, "natural"), new(Question.Fan, "fan")], Decides = Question.DecidesDraft },
        };
        Step other = draftBy with { Id = "color", Question = draftBy.Question! with { Decides = null } };
        LiveJob job = Of(draftBy, other, Plain("hood") with { OnlyFor = new() { DraftBy = DraftBy.Natural } }, Plain("inducer") with { OnlyFor = new() { DraftBy = DraftBy.Fan } });

        Assert.Equal("hood", job.Choose(Question.Natural).Choose(Question.Fan).Step);
        Assert.Equal("inducer", job.Say(CommandWord.GoBack).Say(CommandWord.GoBack).Choose(Question.Fan).Choose(Question.Natural).Step);
    }

    [Fact]
    public void Making_safe_closes_what_is_open_and_nothing_else()
    {
        Step two = Known("open-port") with { Opens = [new("inlet port", true), new("manifold port", true)] };
        Step later = Known("open-port") with { Id = "later", Opens = [new("sampling port", true)] };
        LiveJob job = Of(Known("papers"), two, later, Known("close-port") with { Closes = ["inlet port", "manifold port", "sampling port"] }, Known("prove-port") with { Proves = ["inlet port", "manifold port", "sampling port"] })
            .Say(CommandWord.Done).Say(CommandWord.Done).Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time").Choose("owners-wish").MakeSafe();

        Assert.Equal(["inlet port", "manifold port"], job.Log.OfType<ThingClosed>().Select(one => one.Name));
        Assert.Equal(["inlet port", "manifold port"], job.Log.OfType<ThingProved>().Select(one => one.Name));
        Assert.Contains(job.Log, happened => happened is StepEntered { StepId: "safe-ports" });
        LiveJob nothing = new LiveJob().GoTo("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time").Choose("owners-wish").MakeSafe();
        Assert.DoesNotContain(nothing.Log, happened => happened is ThingClosed or ThingProved or StepEntered { StepId: "safe-ports" });
    }

    [Fact]
    public void A_closing_is_passed_over_only_where_everything_that_it_closes_is_closed()
    {
        Step caps = Known("drill") with { Id = "caps", Opens = [new("caps", false)] };
        Step both = Known("seal") with { Closes = ["test hole", "cover"] };
        Step cover = Known("drill") with { Id = "cover", Opens = [new("cover", false)] };
        Step put = Known("seal") with { Id = "put-back", Closes = ["caps"] };
        LiveJob half = Of(caps, Known("drill"), cover, both, put).Say(CommandWord.Done).Say(CommandWord.SkipStep).Dictate("not needed").Say(CommandWord.Done);
        Assert.Equal("seal", half.Step);

        LiveJob skipped = Of(caps, Known("drill"), cover, both, put).Say(CommandWord.Done).Say(CommandWord.SkipStep).Dictate("it is open").Say(CommandWord.SkipStep).Dictate("it is open");
        Assert.Equal("seal", skipped.Step);

        LiveJob none = Of(caps, both, put).Say(CommandWord.Done);
        Assert.Equal("put-back", none.Step);
        Assert.Contains(none.Last, happened => happened is StepDone { StepId: "seal", Evidence: null });
    }

    [Fact]
    public void Going_back_to_a_leak_check_withdraws_its_proof_though_nothing_is_open()
    {
        LiveJob job = Of(Known("open-port"), Known("close-port"), Known("prove-port")).Say(CommandWord.Done).Say(CommandWord.Done).Say(AnswerWord.Yes);
        Assert.Empty(job.View.Open);

        Assert.Equal(["manifold port (leak check missing)"], job.Say(CommandWord.GoBack).View.Open.AsEnumerable());
    }

    [Fact]
    public void Going_back_never_makes_an_open_port_look_closed()
    {
        Step again = Known("open-port") with { Id = "open-again" };
        LiveJob job = Of(Known("open-port"), Known("close-port"), Known("prove-port"), again, Known("close-port") with { Id = "close-again" }, Known("prove-port") with { Id = "prove-again" })
            .Say(CommandWord.Done).Say(CommandWord.Done).Say(AnswerWord.Yes).Say(CommandWord.Done).Say(CommandWord.GoBack).Say(CommandWord.GoBack);

        Assert.Equal("prove-port", job.Step);
        Assert.Equal(["manifold port"], job.View.Open.AsEnumerable());
    }

    [Fact]
    public void A_step_that_closes_and_proves_one_thing_opens_it_once_when_somebody_goes_back()
    {
        LiveJob job = Of(Known("open-port"), Known("close-port") with { Proves = ["manifold port"] }).Say(CommandWord.Done).Say(CommandWord.Done).Say(CommandWord.GoBack);

        Assert.Equal(["opened"], Exact(job, "manifold port"));
    }

    [Fact]
    public void A_wait_that_runs_is_not_begun_anew_by_a_later_step_and_one_that_is_over_is()
    {
        Step wait = Known("warm-up");
        Step lights = Plain("lights") with { Starts = ["warm-up"] };
        LiveJob runs = Of(lights, Plain("second") with { Starts = ["warm-up"] }, wait).Say(CommandWord.Done).Wait(TimeSpan.FromMinutes(3)).Say(CommandWord.Done);
        Assert.Empty(runs.Last.OfType<TimerStarted>());
        Assert.Equal(TimeSpan.FromMinutes(5), runs.View.Timers.Single().Remaining);

        LiveJob over = Of(lights, Plain("second") with { Starts = ["warm-up"] }, wait).Say(CommandWord.Done).Wait(TimeSpan.FromMinutes(8)).Say(CommandWord.Done);
        Assert.Equal("warm-up", over.Last.OfType<TimerStarted>().Single().StepId);
    }

    [Fact]
    public void An_adjustment_that_is_left_as_it_was_begins_no_settling_anew()
    {
        LiveJob job = Of(Known("manifold"), Known("adjust") with { Starts = ["warm-up"], Voids = [] }, Known("warm-up"), Plain("after"))
            .Say("manifold_pressure", 3.2m).Say(CommandWord.Next).Say("manifold_pressure", 3.5m).Say(CommandWord.Next);
        Assert.Single(job.Last.OfType<TimerStarted>());

        job.Wait(TimeSpan.FromMinutes(8)).Say(CommandWord.Next).Say(CommandWord.GoBack).Say(CommandWord.GoBack);
        Assert.Equal("adjust", job.Step);
        job.Say(CommandWord.Next);
        Assert.DoesNotContain(job.Last, happened => happened is TimerStarted or AdjustmentMade);
    }

    [Fact]
    public void A_value_outside_of_a_limit_that_must_be_kept_does_not_pass_with_next()
    {
        LiveJob oxygen = new LiveJob().GoTo("combustion").Say("oxygen", 10.5m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next);
        Assert.Equal("Oxygen (high) 10.5 % is outside of 5 to 9.5 % (invented). Correct it and measure again, or say finish to end without putting the furnace into service.", Refusal(oxygen));

        LiveJob rise = new LiveJob().GoTo("rise").Say("supply_temperature", 160m).Say("return_temperature", 68m).Say(CommandWord.Next);
        Assert.StartsWith("Temperature rise (high) 92 °F", Refusal(rise), StringComparison.Ordinal);
        Assert.Contains("is outside of 40 to 70 °F (invented).", Refusal(rise), StringComparison.Ordinal);
    }

    [Fact]
    public void A_rise_is_judged_in_a_step_that_reads_something_else_too()
    {
        LiveJob job = Of(Known("rise") with { Readings = [new("flame_current", null), .. Known("rise").Readings] })
            .Say("flame_current", 3.5m).Say("supply_temperature", 160m).Say("return_temperature", 68m).Say(CommandWord.Next);

        Assert.Contains("Temperature rise", Refusal(job), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_an_adjustment_of_the_same_stage_that_follows_lets_a_pressure_pass_that_is_outside()
    {
        LiveJob Outside(params Step[] steps) => Of(steps).Say("manifold_pressure", 3.9m).Say(CommandWord.Next);

        Assert.Equal("adjust", Outside(Known("manifold"), Known("adjust") with { Voids = [] }).Step);
        Assert.Contains("is outside of", Refusal(Outside(Known("manifold"))), StringComparison.Ordinal);
        Assert.Contains("is outside of", Refusal(Outside(Known("manifold"), Known("adjust") with { Scope = "low", Voids = [] })), StringComparison.Ordinal);
        Step before = Known("adjust") with { Voids = [] };
        Assert.Contains("is outside of", Refusal(Of(before, Known("manifold")).Say("manifold_pressure", 3.5m).Say(CommandWord.Next).Say("manifold_pressure", 3.9m).Say(AnswerWord.Confirm).Say(CommandWord.Next)), StringComparison.Ordinal);
        LiveJob rise = Of(Known("rise"), Known("adjust") with { Voids = [] }).Say("supply_temperature", 160m).Say("return_temperature", 68m).Say(CommandWord.Next);
        Assert.Contains("Temperature rise", Refusal(rise), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void An_input_that_is_outside_passes_where_the_pressure_is_adjusted_next(bool isAdjusted)
    {
        Step meter = Known("manifold") with { Id = "meter", Readings = [new("meter_time", null)] };
        StartupPlan plan = Some.PlanOf(isAdjusted ? [meter, Known("manifold"), Known("adjust") with { Voids = [] }, Known("sign")] : [meter, Known("manifold"), Known("sign")]);
        DeclaredLimit input = new("input_rate/high", 76_000, 82_000, "Btu/h", "invented", false);
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [.. plan.Appliance.Limits, input] }, plan.Site with { MeterDialCubicFeet = 1, HeatingValue = 1035 }))
            .Say("meter_time", 40m).Say(CommandWord.Next);   // 3600 x 1035 / 40 = 93 150 Btu/h

        Assert.Equal(isAdjusted ? "manifold" : "meter", job.Step);
    }

    [Fact]
    public void What_a_limit_cannot_judge_needs_a_reason_and_stays_as_an_exception()
    {
        Step meter = Known("manifold") with { Id = "meter", Readings = [new("meter_time", null)] };
        StartupPlan plan = Some.PlanOf([meter, Known("sign")]);
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [new("input_rate/high", 76_000, 82_000, "Btu/h", "invented", false)] }, plan.Site)).Say("meter_time", 40m).Say(CommandWord.Next);
        Assert.Equal(Phase.Dictating, job.Procedure.Phase);

        job.Dictate("nobody states the heating value");
        Assert.Contains("is not judged by 76000 to 82000 Btu/h", job.Log.OfType<ExceptionMade>().Single().Subject.Shown, StringComparison.Ordinal);
        Assert.Equal("sign", job.Step);
    }

    [Fact]
    public void What_is_not_proven_by_a_stated_instrument_is_not_put_down_to_the_site_file() =>
        Assert.DoesNotContain("site file", Refusal(new LiveJob().GoTo("rooms/kitchen").Say("room_co", 8m).Say(CommandWord.Next)), StringComparison.Ordinal);
}
