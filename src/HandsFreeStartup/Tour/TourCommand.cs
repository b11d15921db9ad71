using System.CommandLine;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Tour;

/// <summary>The command <c>tour</c>: two minutes in which a newcomer tries the words, without a furnace and without a record.</summary>
static class TourCommand
{
    /// <summary>The words of the stop are heard to their end.</summary>
    static readonly TimeSpan Farewell = TimeSpan.FromSeconds(6);

    static readonly Option<bool> Keys = new("--keys") { Description = "No voice: type what you would say." };
    static readonly Option<bool> Plain = new("--plain") { Description = "Lines instead of a screen." };
    static readonly Option<bool> Mute = new("--mute") { Description = "Do not speak." };
    static readonly Option<string?> Microphone = new("--microphone") { Description = "Another microphone: its name, or a whole command that writes 16 kHz raw sound.", HelpName = "NAME" };
    static readonly Option<string?> Hearing = new("--hearing") { Description = "As for start.", HelpName = "PROFILE" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("tour", "Try the words for two minutes: no furnace, no record. Says at the end what was heard.") { Keys, Plain, Mute, Microphone, Hearing };
        Hearing.AcceptOnlyFromAmong(Sound.HearingProfiles.All);
        command.SetAction((parsed, _) => Run(parsed));
        return command;
    }

    static async Task<int> Run(ParseResult parsed)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        using ScratchFolder scratch = ScratchFolder.Make("job");
        TourStage stage = new(TimeProvider.System, parsed.GetValue(Mute) || parsed.GetValue(Keys) ? TimeSpan.Zero : Farewell);
        int code = await new Composition(Options(parsed, scratch.Path), output, parsed.InvocationConfiguration.Error, TimeProvider.System, stage).Run();
        output.WriteLine("The tour is over; nothing was kept.");
        foreach (string line in stage.Told())
        {
            output.WriteLine(line);
        }

        return code;
    }

    /// <summary>Lays a file of the tour down.</summary>
    static string Laid(string folder, string name)
    {
        string path = Path.Combine(folder, name);
        using Stream text = typeof(TourCommand).Assembly.GetManifestResourceStream(name)!;
        using FileStream file = File.Create(path);
        text.CopyTo(file);
        return path;
    }

    static StartOptions Options(ParseResult parsed, string scratch) => new()
    {
        Data = new DataFolder(scratch),
        Files = new JobFiles { Checklist = Laid(scratch, "tour.yaml"), Appliance = Laid(scratch, "no-furnace.yaml"), Site = Path.Combine(ShippedFiles.Checklists, "demo-site.yaml") },
        Sound = new SoundOptions
        {
            Keys = parsed.GetValue(Keys),
            Mute = parsed.GetValue(Mute),
            Microphone = parsed.GetValue(Microphone),
            Hearing = Sound.HearingProfiles.Find(parsed.GetValue(Hearing)) ?? Sound.HearingProfiles.Kept(DataFolder.Of(parsed)),
        },
        Screen = new ScreenOptions { Plain = parsed.GetValue(Plain) },
        Rehearsal = new RehearsalNote(0, ""),
        IsTour = true,
    };
}
