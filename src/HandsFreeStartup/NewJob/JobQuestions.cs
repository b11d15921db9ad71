using HandsFreeStartup.Doors;
using HandsFreeStartup.Interview;
using HandsFreeStartup.NewAppliance;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
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
        conversation.Tell("\"why\" tells why something is asked, \"back\" returns to the question before, \"skip the rest\" leaves out all that may be left out from there on, Ctrl+C ends without a job.");
        kept.Try();
        if (Unfinished() is { } name)
        {
            return options with { Earlier = new EarlierJob(name, IsFollowed: false) };
        }

        if (!File.Exists(kept.Instruments))
        {
            conversation.Tell("The first time here? 'tour' lets you try the words for two minutes, without furnace and record: Ctrl+C, then tour.");
        }

        string instruments = File.Exists(kept.Instruments) ? kept.ReadInstruments() : AskInstruments(conversation, kept, clock);
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
        (string Path, Site Site)[] known = Readable(kept.Sites, UserFile.ReadSite);
        if (conversation.Choose("Which place", [.. known.Select(one => one.Site.Title)]) is { } index)
        {
            return known[index].Path;
        }

        string text = new SiteQuestions(conversation, known.FirstOrDefault().Site).Ask(instruments);
        string path = kept.NewSite(UserFile.ReadSite(UserFile.Copy("place", text)).Title);
        KeptFiles.Write(path, text, "The place");
        return path;
    }

    string Furnace()
    {
        (string Path, ApplianceSheet Sheet)[] known = Readable(kept.Appliances, UserFile.ReadApplianceSheet);
        if (conversation.Choose("Which furnace", [.. known.Select(one => one.Sheet.Title)]) is { } index)
        {
            return known[index].Path;
        }

        conversation.Tell("What the rating plate and the maker's instructions say. An empty line skips a limit: it is then asked at the step that needs it. Ranges: 3.2 3.8, or 3.2-3.8, or 3.2 to 3.8.");
        ApplianceSheet sheet = SheetInterview.Ask(conversation, new Draft("furnace")) ?? throw Conversation.Over();
        string path = kept.NewAppliance(sheet.Title);
        KeptFiles.Write(path, ApplianceSheetWriter.Text(sheet with { Id = Path.GetFileNameWithoutExtension(path) }, SheetInterview.Comment), "The sheet");
        return path;
    }

    /// <summary>What can be offered; a file that was spoiled is named and passed over.</summary>
    (string Path, T Content)[] Readable<T>(IReadOnlyList<string> paths, Func<FileCopy, T> read)
    {
        List<(string, T)> readable = [];
        foreach (string path in paths)
        {
            try
            {
                readable.Add((path, read(UserFile.Copy(path))));
            }
            catch (ChecklistFileException)
            {
                conversation.Tell($"Not offered, because it cannot be read: {path}. 'checklist' and its path tell what is wrong.");
            }
        }

        return [.. readable];
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
        Asked asked = new($"Who does the work and signs? [{last}]", new AnswerForm.Words()) { Says = "Who does the work and signs?", Last = last };
        while (true)
        {
            string line = (conversation.Line(asked) ?? throw Conversation.Over()).Trim();
            if (Asked.IsToTheTool(line))
            {
                conversation.Reply("That is a command, not a name: type the name of whoever works and signs.");
                continue;
            }

            string technician = line.Length == 0 ? last : line;
            KeptFiles.Write(kept.Technician, technician, "The name");
            return technician;
        }
    }
}
