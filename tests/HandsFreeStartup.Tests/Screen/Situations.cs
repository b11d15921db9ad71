using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Session;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Tests.Screen;

/// <summary>Twelve moments of the shipped demonstration checklist, as a technician meets them.</summary>
static class Situations
{
    static readonly string Checklists = Path.Combine(AppContext.BaseDirectory, "checklists");
    static readonly EarView Listening = new(EarState.Listening) { Level = -32 };

    public static ImmutableArray<string> Names { get; } =
    [
        "question", "work", "before-measuring", "measured-good", "outside", "doubtful", "timer", "settling", "not-understood", "paused", "gas-smell", "signing",
    ];

    /// <summary>The console in that situation.</summary>
    public static ConsoleState Of(string name, Language? language = null) => new Telling(language ?? Language.English).Of(name);

    public static LiveJob Job() => new(UserFile.PlanOf(Some.Job with
    {
        Checklist = UserFile.Copy(Path.Combine(Checklists, "two-stage-natural-gas.yaml")),
        Appliance = UserFile.Copy(Path.Combine(Checklists, "demo-furnace.yaml")),
        Site = UserFile.Copy(Path.Combine(Checklists, "demo-site.yaml")),
    }, isNew: true));

    sealed class Telling(Language language)
    {
        public ConsoleState Of(string name) => name switch
        {
            "question" => Shown(Job()),
            "work" => Shown(Job().GoTo("zero")),
            "before-measuring" => Shown(Job().GoTo("manifold-low")),
            "measured-good" => Shown(Job().GoTo("manifold-low"), job => job.Say("manifold_pressure", 1.7m)),
            "outside" => Shown(Job().GoTo("manifold-high"), job => job.Say("manifold_pressure", 3.1m)),
            "doubtful" => Shown(Job().GoTo("inlet-static"), job => job.Say("inlet_pressure", 7.0m, Certainty.Amber)),
            "timer" => Shown(Job().GoTo("warm-up"), job => job.Wait(TimeSpan.FromSeconds(95))),
            "settling" => Shown(Job().GoTo("combustion-high"), job => job.Say("oxygen", 8.4m).Wait(TimeSpan.FromSeconds(20)).Say("oxygen", 7.9m).Wait(TimeSpan.FromSeconds(20)).Say("oxygen", 7.7m).Say("flue_co", 12m)),
            "not-understood" => Shown(Job().GoTo("room-before"), _ => { }, new Evidence("oxygen seventy", Procedure.Hearing.Channel.Voice, Certainty.Red)
            {
                Why = "no such value",
            }, ear: Listening with { OffersKeys = true }),
            "paused" => Shown(Job().GoTo("vent"), job => job.Say(CommandWord.StandBy)),
            "gas-smell" => Shown(Job().GoTo("leak-check"), job => job.Say(CommandWord.GasSmell).Wait(TimeSpan.FromSeconds(48))),
            "signing" => Shown(Job().GoTo("sign"), job => job.Say(CommandWord.Finish)),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such situation"),
        };

        ConsoleState Shown(LiveJob job, Action<LiveJob>? then = null, Evidence? heard = null, EarView? ear = null)
        {
            ConsoleState state = ConsoleState.Of(new Moment(job.Procedure.View(job.Present, language), Listening, null, Told(job)));
            if (then is null)
            {
                return state;
            }

            then(job);
            return state.With(new Moment(job.Procedure.View(job.Present, language), ear ?? Listening, heard ?? Some.Heard(), Told(job)));
        }

        ImmutableArray<Announcement> Told(LiveJob job) => [.. job.Procedure.Announce(job.Last, job.Present).Select(announcement => announcement.In(language))];
    }
}
