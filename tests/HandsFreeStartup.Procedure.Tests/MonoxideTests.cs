using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Carbon monoxide is judged the moment it is heard, whatever else is missing, early or taken back.</summary>
public sealed class MonoxideTests
{
    /// <summary>With instruments that are never wrong: the lines of the tiers as they are.</summary>
    static StartupPlan Exact(params Step[] steps)
    {
        StartupPlan plan = steps.Length == 0 ? Some.Plan() : Some.PlanOf([.. steps]);
        return StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site with { Instruments = [.. plan.Site.Instruments.Select(instrument => instrument with { Expanded = 0, ExpandedPercent = 0 })] });
    }

    // 9 ppm of 40 CFR 50.8 and 35 ppm of NREL Standard Work Specifications 2.0105.1 were read; 70 ppm of ANSI/BPI-1200-S and 400 ppm air-free of ANSI Z21.47/CSA 2.3 are values from memory; 100 ppm is common practice, no source.
    [Theory]
    [InlineData(8, null)]
    [InlineData(9, MonoxideAction.FindSource)]
    [InlineData(35, MonoxideAction.FindSource)]
    [InlineData(36, MonoxideAction.ShutOff)]
    [InlineData(69, MonoxideAction.ShutOff)]
    [InlineData(70, MonoxideAction.Evacuate)]
    [InlineData(501, MonoxideAction.Evacuate)]
    [InlineData(1200, MonoxideAction.Evacuate)]
    public void In_a_room_each_line_belongs_to_the_graver_side(int ppm, MonoxideAction? action)
    {
        LiveJob job = new LiveJob(Exact()).GoTo("rooms/kitchen").Say("room_co", ppm);

        MonoxideJudged? judged = job.Last.OfType<MonoxideJudged>().SingleOrDefault();
        Assert.Equal(action, judged?.Action);
        Assert.Equal(action is null ? null : ppm, judged?.Ppm);
        Assert.Equal(action == MonoxideAction.Evacuate, job.Procedure.Phase == Phase.Stopped);
        Assert.Equal(ppm, job.Log.OfType<ReadingEntered>().Last().Reading.Value);
    }

    [Theory]
    [InlineData(99, null)]
    [InlineData(100, MonoxideAction.FindSource)]
    [InlineData(399, MonoxideAction.FindSource)]
    [InlineData(400, MonoxideAction.ShutOff)]
    [InlineData(4500, MonoxideAction.ShutOff)]
    public void In_the_flue_the_value_as_read_is_judged_before_any_oxygen_was_said(int ppm, MonoxideAction? action)
    {
        LiveJob job = new LiveJob(Exact()).GoTo("combustion").Say("flue_co", ppm);

        MonoxideJudged? judged = job.Last.OfType<MonoxideJudged>().SingleOrDefault();
        Assert.Equal(action, judged?.Action);
        Assert.NotEqual(true, judged?.IsAirFree);
    }

    [Fact]
    public void The_uncertainty_of_the_analyzer_counts_against_the_line()
    {
        // 20 ppm or 5 percent, the larger: 385 + 20 reaches 400, 375 + 20 does not.
        Assert.Equal(MonoxideAction.ShutOff, new LiveJob().GoTo("combustion").Say("flue_co", 385m).Last.OfType<MonoxideJudged>().Single().Action);
        Assert.Equal(MonoxideAction.FindSource, new LiveJob().GoTo("combustion").Say("flue_co", 375m).Last.OfType<MonoxideJudged>().Single().Action);
    }

    [Fact]
    public void More_than_the_instrument_shows_is_entered_as_over_and_is_in_the_highest_tier()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Give(new Phrase.Reading(Fields.Find("room_co")!, 9999m, Some.Heard()) { IsOver = true });

        Assert.Equal(StopCause.CarbonMonoxide, job.Log.OfType<StartupStopped>().Single().Cause);
        Assert.True(job.Log.OfType<ReadingEntered>().Last().Reading.IsOver);
        Assert.Contains("over 9999 ppm", job.Procedure.Exceptions[0].Subject.Shown + job.Procedure.Exceptions[1].Subject.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_is_early_is_not_judged_as_proof_but_told_as_danger()
    {
        Step wait = Some.Steps.Single(step => step.Id == "warm-up"), combustion = Some.Steps.Single(step => step.Id == "combustion") with { After = "warm-up" };
        LiveJob job = new(Some.PlanOf([wait with { Id = "first", Kind = StepKind.Do, Timer = null, Starts = ["warm-up"] }, combustion, wait, Some.Steps[^1]]));
        job.Say(CommandWord.Done).Say("flue_co", 2900m);

        Assert.True(job.Last.OfType<ReadingEntered>().Single().Reading.IsEarly);
        Assert.Equal((MonoxideAction.ShutOff, 2900d), (job.Last.OfType<MonoxideJudged>().Single().Action, job.Last.OfType<MonoxideJudged>().Single().Ppm));
        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.IsUrgent && said.Text.StartsWith("DANGER: 2900 ppm CO in the flue", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_oxygen_dilutes_too_much_to_work_out_the_air_free_value_the_value_as_read_is_judged()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 16.5m).Say("flue_co", 3900m);

        Assert.Equal(MonoxideAction.ShutOff, job.Last.OfType<MonoxideJudged>().Single().Action);
        Assert.IsType<CommandRefused>(job.Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next).Last[^1]);
    }

    [Fact]
    public void A_dangerous_value_that_is_doubtful_is_told_before_it_is_confirmed_and_stays_on_the_list_when_it_is_denied()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber);

        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.IsUrgent && said.Text.Contains("250 ppm", StringComparison.Ordinal));
        job.Say(AnswerWord.No).Say("room_co", 2m).Say(CommandWord.Next);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard && exception.Subject.Shown.Contains("250 ppm", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(12)]    // a tier of its own
    [InlineData(45)]
    [InlineData(90)]
    public void A_dangerous_value_that_was_denied_stays_beside_the_next_one(int next)
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber).Say(AnswerWord.No).Say("room_co", next);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard && exception.Subject.Shown.Contains("250 ppm", StringComparison.Ordinal));
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Alarm && exception.Subject.Shown.Contains(FormattableString.Invariant($"{next} ppm"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_dangerous_value_that_was_never_confirmed_stays_when_the_job_is_stopped_or_another_value_is_said(bool isStopped)
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber);
        if (isStopped)
        {
            job.Say(CommandWord.EmergencyStop).LeadBack("nothing was found");
        }

        job.GoTo("rooms/kitchen").Say("room_co", 12m);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Subject.Shown.Contains("250 ppm", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dangerous_value_that_is_confirmed_is_one_measurement_and_an_alarm()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber).Say(AnswerWord.Confirm);

        Assert.Single(job.Procedure.Exceptions, exception => exception.Subject.Shown.Contains("250 ppm", StringComparison.Ordinal));
        Assert.DoesNotContain(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard);
    }

    [Fact]
    public void A_dangerous_value_takes_the_place_of_a_harmless_one_at_once()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 2m).Say("room_co", 250m);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    [Fact]
    public void What_is_disregarded_stays_on_the_list_with_its_number()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 2900m).Say(CommandWord.Disregard).Say("flue_co", 12m);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Alarm && exception.Subject.Shown.Contains("2900 ppm", StringComparison.Ordinal));
    }

    [Fact]
    public void The_second_measurement_over_a_line_ends_it_and_says_where_and_how_much()
    {
        Assert.Equal("CO in the room is 36 ppm again, 36 ppm or more", Condition(new LiveJob(Exact()).GoTo("rooms/kitchen").Say("room_co", 40m).Say("room_co", 36m)));
        Assert.Equal("CO in the flue is 400 ppm again, 400 ppm or more", Condition(new LiveJob(Exact()).GoTo("combustion").Say("flue_co", 450m).Say("flue_co", 400m)));
        Assert.Equal("CO in the flue is over 9999 ppm again, 400 ppm or more", Condition(new LiveJob(Exact()).GoTo("combustion").Say("flue_co", 450m)
            .Give(new Phrase.Reading(Fields.Find("flue_co")!, 9999m, Some.Heard()) { IsOver = true })));

        // 20.9 / (20.9 - 15.0) x 150 = 531; x 160 = 567 (air-free CO by oxygen).
        Assert.Equal("CO in the flue, air-free, is 567 ppm again, 400 ppm or more", Condition(new LiveJob(Exact()).GoTo("combustion").Say("oxygen", 15.0m).Say("flue_co", 150m).Say("flue_co", 160m).Say(AnswerWord.Confirm)));
    }

    static string Condition(LiveJob job) => Assert.Single(job.Last.OfType<UnsafeAsked>()).Condition.Shown;

    [Fact]
    public void A_measurement_that_only_its_uncertainty_brings_over_the_line_does_not_count_as_a_second_one()
    {
        // 34 + 3 reaches 36, 34 does not.
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 40m).Say("room_co", 34m);

        MonoxideJudged judged = job.Last.OfType<MonoxideJudged>().Single();
        Assert.Equal((MonoxideAction.ShutOff, false), (judged.Action, judged.Counts));
        Assert.Empty(job.Last.OfType<UnsafeAsked>());
    }

    [Fact]
    public void Rooms_are_counted_apart_and_so_are_room_and_flue()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 450m).Say(CommandWord.Disregard).Wait(TimeSpan.FromMinutes(5));
        job.GoTo("rooms/kitchen").Say("room_co", 40m);
        Assert.Empty(job.Last.OfType<UnsafeAsked>());

        job.Say(CommandWord.Disregard).Wait(TimeSpan.FromMinutes(5)).Say("room_co", 1m).Say(CommandWord.Next).Say("room_co", 40m);
        Assert.Equal("rooms/bedroom", job.Step);
        Assert.Empty(job.Last.OfType<UnsafeAsked>());
    }

    [Fact]
    public void Within_one_tier_the_air_free_value_is_told_and_the_graver_of_two_tiers_otherwise()
    {
        // 20.9 / (20.9 - 7.6) = 1.571: 450 ppm are 707, 300 ppm are 471 air-free, 30 ppm are 47.
        MonoxideJudged same = new LiveJob(Exact()).GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 450m).Last.OfType<MonoxideJudged>().Single();
        MonoxideJudged graver = new LiveJob(Exact()).GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 300m).Last.OfType<MonoxideJudged>().Single();
        MonoxideJudged later = new LiveJob(Exact()).GoTo("combustion").Say("flue_co", 300m).Say("oxygen", 7.6m).Last.OfType<MonoxideJudged>().Single();
        MonoxideJudged diluted = new LiveJob(Exact()).GoTo("combustion").Say("oxygen", 18.0m).Say("flue_co", 450m).Last.OfType<MonoxideJudged>().Single();

        Assert.Equal((true, 707, MonoxideAction.ShutOff), (same.IsAirFree, (int)Math.Round(same.Ppm!.Value), same.Action));
        Assert.Equal((true, 471, MonoxideAction.ShutOff), (graver.IsAirFree, (int)Math.Round(graver.Ppm!.Value), graver.Action));
        Assert.Equal((true, 471), (later.IsAirFree, (int)Math.Round(later.Ppm!.Value)));
        Assert.Equal((false, 450), (diluted.IsAirFree, (int)diluted.Ppm!.Value));
        Assert.Empty(new LiveJob(Exact()).GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 30m).Last.OfType<MonoxideJudged>());
    }

    [Fact]
    public void A_doubtful_value_is_told_as_it_was_heard_and_does_not_count()
    {
        MonoxideJudged feared = new LiveJob().GoTo("combustion").Say("flue_co", 450m, Certainty.Amber).Last.OfType<MonoxideJudged>().Single();

        Assert.Equal((true, false, false, 450), (feared.IsDoubtful, feared.Counts, feared.IsAirFree, (int)feared.Ppm!.Value));
    }

    [Fact]
    public void Over_the_field_is_over_everything_even_where_the_number_is_small()
    {
        EnteredReading over = new(new ReadingKey("room_co", ""), 5m, "ppm", Some.Heard()) { IsOver = true };

        Assert.Equal(MonoxideAction.Evacuate, CarbonMonoxideTier.Of(MonoxidePlace.Room, over).Action);
        Assert.Equal(MonoxideAction.ShutOff, CarbonMonoxideTier.Of(MonoxidePlace.Flue, over).Action);
        Assert.False(CarbonMonoxideTier.IsClear(over));
        Assert.True(CarbonMonoxideTier.IsClear(over with { IsOver = false }));
    }

    // Looked up: 40 CFR 50.8(a), 9 ppm over 8 hours and 35 ppm over one hour (as restated in 45 FR 55066 of 1980, kept by 76 FR 54294 of 2011); NIOSH 35 ppm over a working day and
    // 200 ppm ceiling (criteria document of 1972). Value from memory: 29 CFR 1910.1000 Table Z-1, 50 ppm over a working day; NIOSH 1200 ppm immediately dangerous; WHO guidelines for
    // indoor air 2010, 100 mg/m³ over 15 minutes and 35 mg/m³ over one hour, at 25 °C 1.145 mg/m³ for 1 ppm. WHO's 7 mg/m³ over 24 hours, 6 ppm, is no line of a visit.
    [Theory]
    [InlineData(9, MonoxideAction.FindSource)]
    [InlineData(100 / 1.145, MonoxideAction.Evacuate)]
    [InlineData(35 / 1.145, MonoxideAction.FindSource)]
    [InlineData(35.5, MonoxideAction.FindSource)]
    [InlineData(36, MonoxideAction.ShutOff)]
    [InlineData(50, MonoxideAction.ShutOff)]
    [InlineData(200, MonoxideAction.Evacuate)]
    [InlineData(1200, MonoxideAction.Evacuate)]
    public void No_tier_of_a_room_asks_for_less_than_open_standards_of_air_that_is_breathed(double ppm, MonoxideAction least) =>
        Assert.True(CarbonMonoxideTier.Of(MonoxidePlace.Room, ppm, 0).Action >= least);

    [Fact]
    public void Every_tier_and_wait_names_its_source_and_says_where_a_number_is_from_memory()
    {
        // The two whose text was read are rows of the outside checks.
        string[] read = ["40 CFR 50.8", "NREL Standard Work Specifications 2.0105.1"];
        Assert.All(CarbonMonoxideTier.All.Select(tier => tier.Source).Concat(SafetyWait.All.Select(wait => wait.Source)), source => Assert.True(
            source.Contains("from memory", StringComparison.Ordinal) || source.Contains("common practice, no source", StringComparison.Ordinal) || source.Contains("as quoted", StringComparison.Ordinal)
            || read.Contains(source.Split(':')[0]), source));

        // Lighting instructions of gas appliances, value from memory; the wait after carbon monoxide is common practice, no source.
        Assert.Equal([(StopCause.GasSmell, 5), (StopCause.CarbonMonoxide, 10)], SafetyWait.All.Select(wait => (wait.Cause, (int)wait.Duration.TotalMinutes)));
    }
}
