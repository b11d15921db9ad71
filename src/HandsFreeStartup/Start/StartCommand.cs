using System.CommandLine;
using HandsFreeStartup.Running;
using HandsFreeStartup.Sound;

namespace HandsFreeStartup.Start;

/// <summary>The command <c>start</c>.</summary>
public static class StartCommand
{
    static readonly Option<string[]> Wav = new("--wav") { Description = "Hear recordings, in this order, instead of the microphone.", HelpName = "FILE", AllowMultipleArgumentsPerToken = true };
    static readonly Option<bool> Keys = new("--keys") { Description = "No voice: type what you would say." };
    static readonly Option<bool> Demo = new("--demo") { Description = "A whole start-up from recordings of this program. No real furnace, no real record." };
    static readonly Option<bool> Quick = new("--quick") { Description = "Short timers; the record is marked as a demonstration." };
    static readonly Option<bool> Plain = new("--plain") { Description = "Lines instead of a screen (always so when the output is no terminal)." };
    static readonly Option<string?> Appliance = new("--appliance") { Description = "What the rating plate and the maker's instructions state, as YAML.", HelpName = "FILE" };
    static readonly Option<string?> Checklist = new("--checklist") { Description = "The procedure, as YAML.", HelpName = "FILE" };
    static readonly Option<string?> Occasion = new("--service-type", "--occasion") { Description = "What brings you to the furnace, as the procedure names it: for instance new, repair, seasonal.", HelpName = "NAME" };
    static readonly Option<string?> Site = new("--site") { Description = "Where and for whom, as YAML.", HelpName = "FILE" };
    static readonly Option<string?> Settings = new("--settings") { Description = "The lead technician's settings, as YAML, instead of settings.yaml in the data folder.", HelpName = "FILE" };
    static readonly Option<string?> Technician = new("--technician") { Description = "Who does the work and signs.", HelpName = "NAME" };
    static readonly Option<string?> Microphone = new("--microphone") { Description = "Another microphone: its name, or a whole command that writes 16 kHz raw sound.", HelpName = "NAME" };
    static readonly Option<string?> Hearing = new("--hearing")
    {
        Description = "headset: the microphone does not hear the voice; echo-cancelled: the sound server takes the voice out; half-duplex: nothing is heard while the tool speaks. Left out, what the command sound chose.",
        HelpName = "PROFILE",
    };

    static readonly Option<string?> Model = new("--model") { Description = "Another recognizer model.", HelpName = "FILE" };
    static readonly Option<int> Ears = new("--ears") { Description = "1: the small recognizer alone; 2: the larger one is asked as well.", HelpName = "N", DefaultValueFactory = _ => 2 };
    static readonly Option<string?> Resume = new("--resume") { Description = "Resume an interrupted job: its name, or nothing where only one is unfinished.", HelpName = "JOB", Arity = ArgumentArity.ZeroOrOne };
    static readonly Option<string?> Follow = new("--follow") { Description = "Begin a job that follows one which the lead has returned: same files, linked to it. What stands is carried over, the rest is done and measured anew.", HelpName = "JOB" };
    static readonly Option<string> Look = new("--look") { Description = "dark, or light for glare; the variable NO_COLOR takes all colors away.", HelpName = "dark|light", DefaultValueFactory = _ => "dark" };
    static readonly Option<string?> LanguageCode = new("--language") { Description = "In which language texts are shown and said: en, es. Answers are English in each. Left out, that of the settings.", HelpName = "CODE" };
    static readonly Option<bool> Mute = new("--mute") { Description = "Do not speak." };

    static readonly Option<string> Recordings = new("--recordings") { Description = "keep: the sound of accepted and doubtful utterances stays beside the record; drop: it does not.", HelpName = "keep|drop", DefaultValueFactory = _ => "keep" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("start", "Run a start-up: by microphone, unless --wav or --keys is given.")
        {
            Wav, Keys, Demo, Quick, Plain, Appliance, Checklist, Occasion, Site, Settings, Technician, Microphone, Hearing, Model, Ears, Resume, Follow, Look, LanguageCode, Mute, Recordings,
        };
        Hearing.AcceptOnlyFromAmong(HearingProfiles.All);
        Ears.AcceptOnlyFromAmong("1", "2");
        Look.AcceptOnlyFromAmong("dark", "light");
        Recordings.AcceptOnlyFromAmong("keep", "drop");
        command.SetAction((parsed, _) => new Composition(
            Read(parsed), parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error, TimeProvider.System).Run());
        return command;
    }

    /// <summary>Gives another command the options of a start-up that its questions do not answer.</summary>
    public static void AddTo(Command command)
    {
        foreach (Option option in (Option[])[Keys, Quick, Plain, Appliance, Checklist, Occasion, Site, Settings, Technician, Microphone, Hearing, Model, Ears, Look, LanguageCode, Mute, Recordings])
        {
            command.Options.Add(option);
        }
    }

    /// <summary>What was given.</summary>
    public static StartOptions Read(ParseResult parsed) => new()
    {
        Data = DataFolder.Of(parsed),
        Files = new JobFiles
        {
            Appliance = parsed.GetValue(Appliance),
            Checklist = parsed.GetValue(Checklist),
            Site = parsed.GetValue(Site),
            Settings = parsed.GetValue(Settings),
            Occasion = parsed.GetValue(Occasion),
        },
        Sound = new SoundOptions
        {
            Keys = parsed.GetValue(Keys),
            Wav = [.. parsed.GetValue(Wav) ?? []],
            Microphone = parsed.GetValue(Microphone),
            Hearing = HearingProfiles.Find(parsed.GetValue(Hearing)),
            Model = parsed.GetValue(Model),
            Ears = parsed.GetValue(Ears),
            Mute = parsed.GetValue(Mute),
            KeepsClips = parsed.GetValue(Recordings) == "keep",
        },
        Screen = new ScreenOptions { Plain = parsed.GetValue(Plain), IsLight = parsed.GetValue(Look) == "light" },
        Earlier = parsed.GetResult(Resume) is not null ? new EarlierJob(parsed.GetValue(Resume), IsFollowed: false)
            : parsed.GetValue(Follow) is { } followed ? new EarlierJob(followed, IsFollowed: true)
            : null,
        Technician = parsed.GetValue(Technician),
        Language = parsed.GetValue(LanguageCode),
        Demo = parsed.GetValue(Demo),
        Quick = parsed.GetValue(Quick),
    };
}
