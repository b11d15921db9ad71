using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests;

/// <summary>A row of the table names who measured its value.</summary>
[Trait("Speed", "Fast")]
public sealed class CarriedRowTests
{
    [Theory]
    [InlineData("F. Irst", "F. Irst")]
    [InlineData(null, "")]
    public void What_is_carried_over_bears_the_name_of_who_measured_it(string? told, string named)
    {
        StartupBegan began = (StartupBegan)new ScriptedJob(technician: "S. Econd").Events[0];
        static EnteredReading Pressure(string scope, decimal value) => new(new("manifold_pressure", scope), value, "in. w.c.", Evidence.Typed("manifold"));
        StartupEvent[] events =
        [
            began with { Job = began.Job with { Follows = new FollowedJob("before", 9, "AB") { Technician = told } } },
            new StepCarried(began.At, "manifold-high", began.At.AddDays(-1), [new(began.At.AddDays(-1), Pressure("high", 3.5m))], null, null),
            new ReadingEntered(began.At, "adjust-high", Pressure("low", 1.6m)),
        ];

        Assert.Equal([("3.5", named), ("1.6", "S. Econd")], ReadingRow.Of(ScriptedJob.Plan, events).Select(row => (row.Value, row.Technician)));
    }
}
