using System.Collections.Immutable;
using System.CommandLine;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Sound;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Rehearse;

/// <summary>The command <c>rehearse</c>: a start-up at a simulated furnace, with reasons, hints and a critique at the end.</summary>
public static class RehearseCommand
{
    static readonly Option<string?> Appliance = new("--appliance") { Description = "The equipment data sheet whose furnace is simulated, instead of that of the demonstration.", HelpName = "FILE" };
    static readonly Option<string?> Site = new("--site") { Description = "The site; left out, the shipped one that fits the sheet.", HelpName = "FILE" };
    static readonly Option<string?> Checklist = new("--checklist") { Description = "The procedure, as YAML.", HelpName = "FILE" };
    static readonly Option<string?> Occasion = new("--service-type", "--occasion") { Description = "What brings you to the furnace: for instance new, repair, seasonal.", HelpName = "NAME" };
    static readonly Option<string?> Settings = new("--settings") { Description = "The lead technician's settings, as YAML.", HelpName = "FILE" };
    static readonly Option<string[]> Faults = new("--fault") { Description = $"What is wrong: {string.Join(", ", NamedFault.All.Select(fault => fault.Name))}. May be given more than once.", HelpName = "NAME", AllowMultipleArgumentsPerToken = true };
    static readonly Option<long> Seed = new("--seed") { Description = "The same seed is the same furnace with the same noise.", HelpName = "N", DefaultValueFactory = _ => 1 };
    static readonly Option<int> Speed = new("--speed") { Description = "How many times as fast as time, 1 to 100.", HelpName = "N", DefaultValueFactory = _ => 1 };
    static readonly Option<string?> Script = new("--script") { Description = "Play phrases and hands from a file, one a line, without waiting.", HelpName = "FILE" };
    static readonly Option<string?> Trainee = new("--technician") { Description = "Who rehearses.", HelpName = "NAME" };
    static readonly Option<bool> Keys = new("--keys") { Description = "No voice: type what you would say." };
    static readonly Option<bool> Plain = new("--plain") { Description = "Lines instead of a screen." };
    static readonly Option<bool> Mute = new("--mute") { Description = "Do not speak." };
    static readonly Option<string?> Microphone = new("--microphone") { Description = "Another microphone: its name, or a whole command that writes 16 kHz raw sound.", HelpName = "NAME" };
    static readonly Option<string?> Hearing = new("--hearing") { Description = "As for start.", HelpName = "PROFILE" };
    static readonly Option<string?> LanguageCode = new("--language") { Description = "As for start; the instruments, hints and the critique are English in each.", HelpName = "CODE" };

    static readonly Option<string?> Resume = new("--resume") { Description = "Resume an interrupted rehearsal: its name, or nothing where only one is unfinished. Its time stood still meanwhile.", HelpName = "NAME", Arity = ArgumentArity.ZeroOrOne };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("rehearse", "Rehearse a start-up at a simulated furnace: by microphone, unless --keys is given. The record is none of a start-up.")
        {
            Appliance, Site, Checklist, Occasion, Settings, Faults, Seed, Speed, Script, Trainee, Keys, Plain, Mute, Microphone, Hearing, LanguageCode, Resume,
        };
        Hearing.AcceptOnlyFromAmong(HearingProfiles.All);
        command.SetAction((parsed, _) => Run(parsed));
        return command;
    }

    static async Task<int> Run(ParseResult parsed)
    {
        bool isScript = parsed.GetValue(Script) is not null;
        int speed = parsed.GetValue(Speed) is >= 1 and <= 100 and var given ? given : throw new WrongUseException("A rehearsal runs 1 to 100 times as fast as time: give --speed with a number between them.");
        TimeProvider? real = isScript ? null : TimeProvider.System;
        (StartOptions options, RehearsalStage stage, string? trainee) = parsed.GetResult(Resume) is null ? New(parsed, real, speed) : Interrupted(parsed, real, speed);
        TextWriter output = parsed.InvocationConfiguration.Output;
        int code = isScript
            ? new ScriptRun(options, stage, output).Play(UserFile.Copy(parsed.GetValue(Script)!).Text)
            : await new Composition(options, output, parsed.InvocationConfiguration.Error, TimeProvider.System, stage).Run();
        Farewell.Tell(stage.Bench, options with { Technician = trainee }, output, TimeProvider.System);
        return code;
    }

    static (StartOptions Options, RehearsalStage Stage, string? Trainee) New(ParseResult parsed, TimeProvider? real, int speed)
    {
        StartOptions options = Read(parsed);
        ImmutableArray<NamedFault> faults = [.. (parsed.GetValue(Faults) ?? []).Select(Named)];
        PlanFiles files = UserFile.ReadTogether(UserFile.CopyChecklist(options.Files.Checklist!, ShippedFiles.Checklists), UserFile.Copy(options.Files.Appliance!), UserFile.Copy(options.Files.Site!), options.Files.Settings is { } settings ? UserFile.Copy(settings) : null);
        OccasionChoice.Check(files.Checklist, options.Files.Occasion);
        StartupPlan plan = StartupPlan.From(files.Checklist, files.Appliance, files.Site, settings: files.Settings, occasion: options.Files.Occasion);
        if (faults.Select(fault => Furnace.WhyNot(fault.Fault, plan)).FirstOrDefault(why => why is not null) is { } refusal)
        {
            throw new WrongUseException(refusal);
        }

        RehearsalNote note = new(parsed.GetValue(Seed), string.Join(',', faults.Select(fault => fault.Name)));
        DateTimeOffset began = real?.GetUtcNow() ?? new DateTimeOffset(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);
        return (options with { Rehearsal = note }, Stage(plan, note, new RehearsalClock(real, speed, began)), options.Technician);
    }

    static (StartOptions Options, RehearsalStage Stage, string? Trainee) Interrupted(ParseResult parsed, TimeProvider? real, int speed)
    {
        if (parsed.GetValue(Appliance) is not null || parsed.GetValue(Site) is not null || parsed.GetValue(Checklist) is not null || parsed.GetValue(Faults) is { Length: > 0 } || parsed.GetResult(Seed) is { Implicit: false })
        {
            throw new WrongUseException("A rehearsal is resumed with the furnace that it began with: leave out --appliance, --site, --checklist, --fault and --seed, or begin a new one.");
        }

        string folder = DataFolder.Of(parsed).Rehearsals;
        string path = parsed.GetValue(Resume) is { } name ? JobFile.Find(folder, name) : UnfinishedJobs.Only(folder, "rehearse");
        UnfinishedJobs.Check(path);
        IReadOnlyList<StartupEvent> events = StoredJob.Read(path).Events;
        if (events is not [StartupBegan { Job: { Rehearsal: { } note } job } began, ..])
        {
            throw new WrongUseException($"{path} is no record of a rehearsal. An interrupted start-up is resumed with start --resume.");
        }

        RehearsalStage stage = Stage(UserFile.PlanOf(job), note, new RehearsalClock(real, speed, began.At));
        stage.GoThrough(events, new KeptHands(path).Read());
        return (Read(parsed) with { Rehearsal = note, Files = new JobFiles(), Technician = null, Earlier = new EarlierJob(path, IsFollowed: false) }, stage, job.Technician);
    }

    static RehearsalStage Stage(StartupPlan plan, RehearsalNote note, RehearsalClock clock) =>
        new(new Bench(Furnace.From(plan, note.Faults.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(name => Named(name).Fault), (ulong)note.Seed)), clock);

    static NamedFault Named(string name) => NamedFault.Find(name)
        ?? throw new WrongUseException($"There is no fault '{name}'. The faults are {string.Join(", ", NamedFault.All.Select(fault => fault.Name))}.");

    static StartOptions Read(ParseResult parsed)
    {
        string appliance = parsed.GetValue(Appliance) ?? Shipped("demo-furnace.yaml");
        DataFolder data = DataFolder.Of(parsed);
        string? settings = parsed.GetValue(Settings) ?? (File.Exists(data.Settings) ? data.Settings : null);
        return new StartOptions
        {
            Data = data,
            Files = new JobFiles
            {
                Appliance = appliance,
                Checklist = parsed.GetValue(Checklist) ?? Shipped("gas-furnace.yaml"),
                Site = parsed.GetValue(Site) ?? SiteFor(appliance),
                Settings = settings,
                Occasion = parsed.GetValue(Occasion),
            },
            Sound = new SoundOptions
            {
                Keys = parsed.GetValue(Keys) || parsed.GetValue(Script) is not null,
                Microphone = parsed.GetValue(Microphone),
                Hearing = HearingProfiles.Find(parsed.GetValue(Hearing)),
                Mute = parsed.GetValue(Mute),
            },
            Screen = new ScreenOptions { Plain = parsed.GetValue(Plain) },
            Technician = parsed.GetValue(Trainee),
            Language = parsed.GetValue(LanguageCode),
        };
    }

    /// <summary>The shipped site that fits a shipped sheet; for any other sheet that of the demonstration.</summary>
    static string SiteFor(string appliance) => Shipped(Path.GetFileName(appliance) switch
    {
        "furnace-two-stage-altitude.yaml" => "site-mountain.yaml",
        "furnace-one-stage-propane.yaml" => "site-farm.yaml",
        "furnace-modulating.yaml" or "furnace-natural-draft.yaml" => "site-row-house.yaml",
        _ => "demo-site.yaml",
    });

    static string Shipped(string name) => Path.Combine(ShippedFiles.Checklists, name);
}
