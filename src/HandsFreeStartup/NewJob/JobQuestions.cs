using HandsFreeStartup.Doors;
using HandsFreeStartup.Interview;
using HandsFreeStartup.NewAppliance;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Running;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewJob;

/// <summary>All questions of a new job.</summary>
/// <param name="conversation">Asks.</param>
/// <param name="kept">Earlier answers.</param>
/// <param name="data">Where the records are.</param>
/// <param name="clock">The present.</param>
sealed class JobQuestions(Conversation conversation, KeptFiles kept, DataFolder data, TimeProvider clock)
{
    /// <summary>Asks and keeps.</summary>
    /// <returns>What is to be started; null for nothing.</returns>
    public StartOptions? Ask(StartOptions options, string? photo)
    {
        conversation.Tell("\"why\" tells why something is asked, \"back\" returns to the question before, Ctrl+C ends without a job.");
        if (Unfinished() is { } name)
        {
            return options with { Earlier = new EarlierJob(name, IsFollowed: false) };
        }

        if (!File.Exists(kept.Instruments))
        {
            conversation.Tell("The first time here? 'tour' lets you try the words for two minutes, without furnace and record: Ctrl+C, then tour.");
        }

        string instruments = File.Exists(kept.Instruments) ? KeptFiles.TextOf(kept.Instruments) : AskInstruments(conversation, kept, clock);
        foreach (string overdue in new InstrumentQuestions(conversation, Today(clock)).Overdue(instruments))
        {
            conversation.Tell(overdue);
        }

        string site = options.Files.Site ?? Place(instruments);
        string appliance = options.Files.Appliance ?? Furnace();
        photo ??= Photo();
        string technician = options.Technician ?? Technician();
        conversation.Tell($"Place:   {site}");
        conversation.Tell($"Furnace: {appliance}");
        conversation.Tell($"Start again with the same: start --site {site} --appliance {appliance}");
        return conversation.Agrees("Start now?") ? options with { Files = options.Files with { Site = site, Appliance = appliance }, Technician = technician, Photo = photo } : null;
    }

    /// <summary>Asks for the set of instruments and keeps it.</summary>
    public static string AskInstruments(Conversation conversation, KeptFiles kept, TimeProvider clock)
    {
        string text = new InstrumentQuestions(conversation, Today(clock)).Ask();
        KeptFiles.Write(kept.Instruments, text, "The list of instruments");
        conversation.Tell($"Kept in {kept.Instruments}; 'new instruments' asks again.");
        return text;
    }

    static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().Date);

    string? Unfinished()
    {
        string[] names = [.. UnfinishedJobs.All(data.Jobs).Select(path => Path.GetFileNameWithoutExtension(path)!)];
        if (names.Length == 0)
        {
            return null;
        }

        conversation.Tell("Not finished yet:");
        return conversation.Choose("Resume one", names) is { } index ? names[index] : null;
    }

    string Place(string instruments)
    {
        IReadOnlyList<string> known = kept.Sites;
        Site? last = known.Count > 0 ? UserFile.ReadSite(UserFile.Copy(known[0])) : null;
        if (conversation.Choose("Which place", [.. known.Select(path => UserFile.ReadSite(UserFile.Copy(path)).Title)]) is { } index)
        {
            return known[index];
        }

        string text = new SiteQuestions(conversation, last).Ask(instruments);
        string path = kept.NewSite(UserFile.ReadSite(UserFile.Copy("place", text)).Title);
        KeptFiles.Write(path, text, "The place");
        return path;
    }

    string Furnace()
    {
        IReadOnlyList<string> known = kept.Appliances;
        if (conversation.Choose("Which furnace", [.. known.Select(path => UserFile.ReadApplianceSheet(UserFile.Copy(path)).Title)]) is { } index)
        {
            return known[index];
        }

        conversation.Tell("What the rating plate and the maker's instructions say. Nothing leaves a limit out: it is then asked at the step that needs it. Ranges: 3.2 3.8, or 3.2-3.8, or 3.2 to 3.8.");
        ApplianceSheet sheet = SheetInterview.Ask(conversation, new Draft("furnace")) ?? throw Conversation.Over();
        string path = kept.NewAppliance(sheet.Title);
        KeptFiles.Write(path, ApplianceSheetWriter.Text(sheet with { Id = Path.GetFileNameWithoutExtension(path) }, SheetInterview.Comment), "The sheet");
        return path;
    }

    string? Photo()
    {
        while (true)
        {
            string line = (conversation.Line(new Asked("Photo of the rating plate: its file, or nothing", new AnswerForm.TypedAlone()) { Says = "A photo of the plate? Type its file, or skip.", Skips = "" }) ?? throw Conversation.Over()).Trim();
            if (line.Length == 0 || FileStatus.Of(line).Kind == FileKind.Regular)
            {
                return line.Length == 0 ? null : line;
            }

            conversation.Reply($"There is no file {line}.");
        }
    }

    string Technician()
    {
        string last = KeptFiles.TextOf(kept.Technician).Trim() is { Length: > 0 } name ? name : Environment.UserName;
        string line = (conversation.Line(new Asked($"Who works and signs? [{last}]", new AnswerForm.Words()) { Says = "Who works and signs?", HasLast = true }) ?? throw Conversation.Over()).Trim();
        string technician = line.Length == 0 ? last : line;
        KeptFiles.Write(kept.Technician, technician, "The name");
        return technician;
    }
}
