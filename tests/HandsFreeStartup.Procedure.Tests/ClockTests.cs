using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Waits go by the clock that nobody can set; across a run by the shorter of both.</summary>
public sealed class ClockTests
{
    static LiveJob WarmingUp(double hoursUp = 9) => new LiveJob(steady: TimeSpan.FromHours(hoursUp)).GoTo("warm-up");

    static TimeSpan Left(LiveJob job) => job.View.Timers.Single().Remaining;

    [Theory]
    [InlineData(2)]
    [InlineData(-2)]
    public void A_wall_clock_that_is_set_ends_no_wait_and_prolongs_none_and_is_told(int hours)
    {
        LiveJob job = WarmingUp().Wait(TimeSpan.FromMinutes(3)).SetClock(TimeSpan.FromHours(hours));

        Assert.Equal(TimeSpan.FromHours(hours), job.Last.OfType<ClockJumped>().Single().By);
        Assert.Equal(TimeSpan.FromMinutes(5), Left(job));
        Assert.Empty(job.Wait(TimeSpan.FromSeconds(1)).Last.OfType<ClockJumped>());
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.ClockJump);
    }

    [Theory]
    [InlineData(10, false)]
    [InlineData(11, true)]
    [InlineData(-10, false)]
    [InlineData(-11, true)]
    public void Clocks_that_creep_apart_by_ten_seconds_are_in_order(int seconds, bool isTold) =>
        Assert.Equal(isTold, WarmingUp().SetClock(TimeSpan.FromSeconds(seconds)).Last.Any(happened => happened is ClockJumped));

    [Fact]
    public void Across_a_run_the_shorter_of_both_clocks_counts()
    {
        // Both clocks say 3 minutes; the wall clock alone was set forward by an hour; the wall clock alone was set back.
        Assert.Equal(TimeSpan.FromMinutes(5), Left(WarmingUp().Restart(TimeSpan.FromMinutes(3))));

        LiveJob forward = WarmingUp();
        forward.Now += TimeSpan.FromHours(1);
        Assert.Equal(TimeSpan.FromMinutes(5), Left(forward.Restart(TimeSpan.FromMinutes(3))));

        LiveJob back = WarmingUp();
        back.Now -= TimeSpan.FromMinutes(2);
        Assert.Equal(TimeSpan.FromMinutes(7), Left(back.Restart(TimeSpan.FromMinutes(3))));
    }

    [Fact]
    public void After_a_restart_of_the_machine_no_more_counts_than_it_has_been_up() =>
        Assert.Equal(TimeSpan.FromMinutes(7), Left(WarmingUp().Restart(TimeSpan.FromMinutes(20), isMachineToo: true)));

    [Fact]
    public void A_wait_that_begins_in_a_later_run_goes_by_the_steady_clock_of_that_run()
    {
        LiveJob job = WarmingUp().Restart(TimeSpan.FromMinutes(1)).Say(CommandWord.StartTimer).Wait(TimeSpan.FromMinutes(2)).SetClock(TimeSpan.FromMinutes(-30));

        Assert.Equal(TimeSpan.FromMinutes(6), Left(job));
    }

    [Fact]
    public void A_wait_whose_end_was_told_is_over_whatever_the_clocks_say_later()
    {
        LiveJob job = WarmingUp().Wait(TimeSpan.FromMinutes(8)).Restart(TimeSpan.FromMinutes(1), isMachineToo: true).SetClock(TimeSpan.FromHours(-5));

        Assert.Equal(TimeSpan.Zero, Left(job));
        Assert.Equal("combustion", job.Say(CommandWord.Next).Step);
    }
}
