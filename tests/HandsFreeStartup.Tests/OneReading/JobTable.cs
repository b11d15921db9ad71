using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>Jobs as they happen: each alarm, correction, adjustment, exception, break-off and resumption.</summary>
static class JobTable
{
    public static IReadOnlyDictionary<string, Action<TableJob>> All { get; } = new Dictionary<string, Action<TableJob>>
    {
        ["as it should go"] = job => job.Finish(),
        ["broken off after the papers"] = job => job.GoTo("open-port"),
        ["gas smelled at the door, not resumed"] = job => job.Say(AnswerWord.Yes),
        ["gas called out, led back"] = job => job.GoTo("combustion").Say(CommandWord.GasSmell).With(live => live.LeadBack("the union was loose, tightened")).Finish(),
        ["emergency stop, led back"] = job => job.GoTo("rise").Say(CommandWord.EmergencyStop).With(live => live.LeadBack("a tool fell into the blower")).Finish(),
        ["fire called out, not resumed"] = job => job.GoTo("manifold").With(live => live.Give(new Phrase.Command(CommandWord.EmergencyStop, Some.Heard()) { IsFire = true })),
        ["carbon monoxide in a room twice"] = job => job.GoTo("rooms/kitchen").Say("room_co", 40).With(live => live.Say(AnswerWord.Confirm)).Say("room_co", 41).With(live => live.Say(AnswerWord.Confirm).Say(AnswerWord.Confirm)),
        ["carbon monoxide makes everybody leave"] = job => job.GoTo("rooms/kitchen").Say("room_co", 250),
        ["everybody left, room aired and measured again"] = job => job.GoTo("rooms/kitchen").Say("room_co", 250).With(live => live.Wait(TimeSpan.FromMinutes(11)))
            .Say("room_co", 1).With(live => live.Say(AnswerWord.Yes).Choose("fire-service").Dictate("a car ran in the garage")).Finish(),
        ["a little carbon monoxide in a room"] = job => job.GoTo("rooms/kitchen").Say("room_co", 12).Say("room_co", 2).With(live => live.Say(AnswerWord.Confirm)).Finish(),
        ["more in the flue than good practice wants"] = job => job.GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 150).Say("flue_temperature", 328).Say("air_temperature", 68).Say(CommandWord.Next).Finish(),
        ["too much in the flue, corrected cause"] = job => job.GoTo("combustion").Say("oxygen", 9.0m).Say("flue_co", 380).With(live => live.Wait(TimeSpan.FromMinutes(5))).Say("flue_co", 12).With(live => live.Say(AnswerWord.Confirm)).Say("oxygen", 8.6m).With(live => live.Say(AnswerWord.Confirm)).Finish(),
        ["too much in the flue, left so"] = job => job.GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 900),
        ["a danger read back and denied"] = job => job.GoTo("combustion").Say("flue_co", 900, Certainty.Amber).With(live => live.Say(AnswerWord.No)).Finish(),
        ["over the range"] = job => job.GoTo("combustion").With(live => live.Give(new Phrase.Reading(job.Plan.FieldOf("flue_co"), 9999, Some.Heard()) { IsOver = true })),
        ["oxygen disregarded at once"] = job => job.GoTo("combustion").Say("oxygen", 6.7m).Say(CommandWord.Disregard).Finish(),
        ["oxygen corrected after it was final"] = job => job.GoTo("combustion").Say("oxygen", 6.7m).Say("flue_co", 12).Say("oxygen", 7.1m).With(live => live.Say(AnswerWord.Confirm)).Finish(),
        ["a doubtful value confirmed"] = job => job.GoTo("combustion").Say("oxygen", 7.1m, Certainty.Amber).With(live => live.Say(AnswerWord.Confirm)).Finish(),
        ["a doubtful value refused"] = job => job.GoTo("combustion").Say("oxygen", 7.1m, Certainty.Amber).With(live => live.Say(AnswerWord.No)).Finish(),
        ["a doubtful value never answered"] = job => job.GoTo("combustion").Say("oxygen", 7.1m, Certainty.Amber).Say(CommandWord.EmergencyStop),
        ["oxygen barely outside"] = job => job.GoTo("combustion").Say("oxygen", 4.9m).Say("flue_co", 12).Say("flue_temperature", 328).Say("air_temperature", 68).Say(CommandWord.Next),
        ["oxygen barely inside"] = job => job.GoTo("combustion").Say("oxygen", 5.1m).Say("flue_co", 12).Say("flue_temperature", 328).Say("air_temperature", 68).Say(CommandWord.Next).Finish(),
        ["no carbon monoxide at all"] = job => job.GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 0).Say("flue_temperature", 328).Say("air_temperature", 68).Say(CommandWord.Next).Finish(),
        ["too much air to tell"] = job => job.GoTo("combustion").Say("oxygen", 16.5m).Say("flue_co", 12),
        ["the pressure adjusted"] = job => job.GoTo("manifold").Say("manifold_pressure", 3.10m).Say(CommandWord.Next).Say("manifold_pressure", 3.50m).Say(CommandWord.Next).Finish(),
        ["the pressure adjusted in two turns"] = job => job.GoTo("manifold").Say("manifold_pressure", 3.90m).Say(CommandWord.Next).Say("manifold_pressure", 3.70m).Say("manifold_pressure", 3.50m).Say(CommandWord.Next).Finish(),
        ["a step skipped for a reason"] = job => job.GoTo("papers").Say(CommandWord.SkipStep).With(live => live.Dictate("no papers in the house")).Finish(),
        ["a note and a photo"] = job => job.GoTo("papers").Say(CommandWord.Note).With(live => live.Dictate("the cover is bent").Give(new Phrase.Photo("plate.jpg", new string('a', 64), Evidence.Typed("photo plate.jpg")))).Finish(),
        ["ended by the owner's wish"] = job => End(job.GoTo("open-port"), "owners-wish", "the owner wants another furnace"),
        ["ended because it is not in order"] = job => End(job.GoTo("manifold"), "not-in-order", "the valve leaks").With(live => live.MakeSafe()),
        ["resumed after a crash"] = job => job.GoTo("combustion").Say("oxygen", 7.6m).With(live => live.Restart(TimeSpan.FromMinutes(3))).Finish(),
        ["resumed while a wait ran"] = job => job.GoTo("warm-up").With(live => live.Wait(TimeSpan.FromMinutes(2)).Restart(TimeSpan.FromMinutes(1), isMachineToo: true)).Finish(),
        ["an unsafe answer changed for a reason"] = job => job.GoTo("prove-port").Say(AnswerWord.No).Finish(),
        ["the air too hot"] = job => job.GoTo("rise").Say("supply_temperature", 185).Say("return_temperature", 68).Say(CommandWord.Next),
        ["listening paused"] = job => job.GoTo("papers").Say(CommandWord.StandBy).With(live => live.Wait(TimeSpan.FromMinutes(12))).Say(CommandWord.GoAhead).Finish(),
        ["signed, then gas smelled"] = job => job.Finish().Say(CommandWord.GasSmell),
        ["returned by the lead"] = job => job.Finish().Review(ReviewOutcome.Returned, "measure the draft again"),
        ["accepted by the lead"] = job => job.Finish().Review(ReviewOutcome.Accepted, ""),
    };

    static TableJob End(TableJob job, string kind, string reason) => job.Say(CommandWord.Finish).Say(AnswerWord.Confirm).With(live => live.Dictate(reason).Choose(kind));

    public static Settings Metric { get; } = new() { Pressure = Unit.Pascals, Temperature = Unit.Celsius, Heat = Unit.Kilowatts };
}
