using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using Timer = HandsFreeStartup.Procedure.Checklists.Timer;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A step with the entry it was read from.</summary>
sealed record StepEntry(Step Step, EntryReader Entry)
{
    /// <summary>False where the kind is missing or unknown; that has been reported, and rules about kinds say nothing.</summary>
    public required bool HasKind { get; init; }
}

/// <summary>A checklist with the entries of its steps and limits.</summary>
sealed record ChecklistEntry(Checklist Checklist, ImmutableArray<StepEntry> Steps, ImmutableArray<LimitEntry> Limits);

/// <summary>Reads a checklist.</summary>
sealed class ChecklistReader(Findings findings)
{
    /// <summary>Every way through a checklist is walked before it is used; more would take longer than a person waits.</summary>
    const int MostSteps = 500;
    const int MostOccasions = 12;

    static readonly ImmutableArray<string> Kinds = [.. Enum.GetNames<StepKind>().Select(name => name.ToLowerInvariant())];
    ImmutableArray<string> _occasions = [];

    static readonly ImmutableArray<string> Agains = [.. Enum.GetNames<Again>().Select(name => name.ToLowerInvariant())];
    static readonly ImmutableArray<string> ResultIds = [.. ResultKind.All.Select(kind => kind.Id)];
    static readonly ImmutableArray<string> Draws = ["natural", "fan", "unknown"];
    static readonly ImmutableArray<string> FieldIds = [.. Fields.All.Select(field => field.Id)];

    public static ChecklistEntry? Read(string text, Findings findings) =>
        YamlTree.Read(text, findings) is { } map ? Read(map, findings) : null;

    public static ChecklistEntry Read(YamlMap map, Findings findings) => new ChecklistReader(findings).Read(map);

    ChecklistEntry Read(YamlMap map)
    {
        EntryReader file = new(map, findings, "a checklist", "id", "version", "title", "occasions", "limits", "sections", "prompts");
        HashSet<string> taken = [];
        ImmutableArray<Occasion> occasions = file.Each("occasions", false, value => Occasion(value, taken));
        _occasions = [.. occasions.Select(occasion => occasion.Id)];
        ImmutableArray<LimitEntry> limits = new LimitReader(findings).Read(file, isRequired: false);
        ImmutableArray<StepEntry> steps = [.. file.Each("sections", true, Section).SelectMany(section => section)];
        Checklist checklist = new(
            file.Id("id"), file.Text("version"), file.Text("title"),
            [.. WithPrompts(file, steps)], [.. limits.Select(limit => limit.Limit)])
        {
            Occasions = occasions,
        };
        ChecklistEntry read = new(checklist, steps, limits);
        if (steps.Length > MostSteps || occasions.Length > MostOccasions)
        {
            findings.Add(map.Place, FormattableString.Invariant($"The checklist has {steps.Length} steps and {occasions.Length} service types; {MostSteps} and {MostOccasions} are taken. Make two of it."));
            return read;
        }

        ChecklistRules.Check(read);
        return read;
    }

    static IEnumerable<Step> WithPrompts(EntryReader file, ImmutableArray<StepEntry> steps)
    {
        EntryReader? prompts = file.Map("prompts", "prompts", [.. steps.Select(entry => entry.Step.Id)]);
        return steps.Select(entry => entry.Step with { Prompt = prompts is null ? null : Written(prompts, entry.Step.Id) });
    }

    Occasion Occasion(YamlValue value, HashSet<string> taken)
    {
        EntryReader entry = new(value, findings, "an occasion", "id", "title");
        if (entry.Has("id") && !taken.Add(entry.Id("id")))
        {
            entry.Report("id", $"The service type '{entry.Id("id")}' stands here a second time. Give it another id, or remove it.");
        }

        return new Occasion(entry.Id("id"), entry.Text("title"));
    }

    ImmutableArray<StepEntry> Section(YamlValue value)
    {
        EntryReader section = new(value, findings, "a section", "title", "fire", "steps");
        string title = section.Text("title");
        string? fire = section.Has("fire") ? section.Choice("fire", ["low", "high"]) : null;
        return section.Each("steps", true, step => Step(step, title, fire));
    }

    StepEntry Step(YamlValue value, string section, string? fire)
    {
        EntryReader entry = new(value, findings, "a step", "id", "title", "now", "kind", "do", "why", "caution", "stage", "readings", "also",
            "question", "timer", "starts", "after", "opens", "closes", "proves", "voids", "safety_stop", "only_for", "again_after", "limited");
        bool hasKind = Enum.TryParse(entry.Choice("kind", Kinds), ignoreCase: true, out StepKind kind);
        return new StepEntry(new Step
        {
            Id = entry.Id("id"),
            Section = section,
            Title = entry.Text("title"),
            Imperative = Imperative(entry),
            Kind = kind,
            Do = Message.Written(entry.Text("do", " Write what to do, in plain words.")),
            Why = Written(entry, "why"),
            Caution = Written(entry, "caution"),
            Scope = entry.Has("stage") ? entry.Id("stage") : null,
            Readings = entry.Each("readings", false, Reading),
            Also = Also(entry),
            Question = Question(entry),
            Timer = Timer(entry),
            Opens = entry.Each("opens", false, Thing),
            Closes = entry.Texts("closes"),
            Proves = entry.Texts("proves"),
            Voids = entry.Texts("voids"),
            IsSafetyStop = entry.Flag("safety_stop"),
            Starts = entry.Texts("starts"),
            After = entry.TextOrNull("after"),
            FireBlock = fire,
            OnlyFor = OnlyFor(entry),
            AgainAfter = [.. entry.Choices("again_after", Agains).Select(word => Enum.Parse<Again>(word, ignoreCase: true))],
            Limited = entry.Choices("limited", ResultIds),
        }, entry)
        { HasKind = hasKind };
    }

    static Message? Written(EntryReader entry, string key) => entry.TextOrNull(key) is { } text ? Message.Written(text) : null;

    static string? Imperative(EntryReader step)
    {
        if (step.TextOrNull("now") is { Length: > Procedure.Checklists.Step.LongestImperative } text)
        {
            step.Report("now", FormattableString.Invariant($"'{text}' has {text.Length} characters; the large letters hold {Procedure.Checklists.Step.LongestImperative}. Write the one thing to do shorter."));
        }

        return step.TextOrNull("now");
    }

    ReadingDemand Reading(YamlValue value)
    {
        EntryReader entry = new(value, findings, "a reading", "field", "limit", "settles");
        return new ReadingDemand(entry.Choice("field", FieldIds), entry.TextOrNull("limit"), Settles(entry));
    }

    static Settles? Settles(EntryReader reading) =>
        reading.Map("settles", "settles", "seconds", "drift", "scatter", "twice", "source") is { } entry
            ? new Settles(
                TimeSpan.FromSeconds((double)entry.Number("seconds", 5, 600)),
                entry.Number("drift", 0.001m, 1000), entry.Number("scatter", 0.001m, 1000),
                entry.Text("source", " Name who says so, or write 'common practice, no source'."),
                entry.Flag("twice"))
            : null;

    Condition OnlyFor(EntryReader step) =>
        step.Map("only_for", "only_for", "stages", "fuel", "venting", "condensing", "draft_by", "occasion") is { } entry
            ? new Condition
            {
                Firings = [.. entry.Choices("stages", ApplianceSheetReader.Stages).Select(ApplianceSheetReader.FiringOf)],
                Fuels = entry.Choices("fuel", ApplianceSheetReader.Fuels),
                Venting = [.. entry.Choices("venting", ApplianceSheetReader.Categories).Select(Enum.Parse<VentCategory>)],
                Condensing = entry.Has("condensing") ? entry.Flag("condensing") : null,
                DraftBy = entry.Has("draft_by") ? ApplianceSheetReader.DraftOf(entry.Choice("draft_by", Draws)) : null,
                WhereDraftIsUnknown = entry.TextOrNull("draft_by") == "unknown",
                Occasions = Occasions(entry),
            }
            : Condition.Always;

    ImmutableArray<string> Occasions(EntryReader only)
    {
        if (only.Has("occasion") && _occasions.IsEmpty)
        {
            only.Report("occasion", "The checklist knows no service types. Declare them at its top: occasions, each with id and title.");
            return [];
        }
        return only.Choices("occasion", _occasions);
    }

    ImmutableDictionary<string, ImmutableArray<string>> Also(EntryReader step)
    {
        ImmutableDictionary<string, ImmutableArray<string>>.Builder names = ImmutableDictionary.CreateBuilder<string, ImmutableArray<string>>();
        EntryReader? also = step.Map("also", "also", [.. FieldIds]);
        foreach (string field in FieldIds.Where(field => also?.Has(field) == true))
        {
            names.Add(field, also!.Texts(field, isRequired: true));
        }
        return names.ToImmutable();
    }

    static Question? Question(EntryReader step)
    {
        if (step.Map("question", "a question", "text", "proper", "otherwise", "stops_for_gas", "unsafe_after", "repeats", "decides") is not { } entry)
        {
            return null;
        }

        if (entry.Has("decides"))
        {
            entry.Choice("decides", [Procedure.Checklists.Question.DecidesDraft]);
            return new Question(Message.Written(entry.Text("text")), true, "", false) { Decides = Procedure.Checklists.Question.DecidesDraft, Choices = DraftChoices };
        }

        return new Question(
            Message.Written(entry.Text("text")),
            entry.Choice("proper", ["yes", "no"]) == "yes",
            Message.Written(entry.Text("otherwise", " Write what must be done after the other answer.")),
            entry.Flag("stops_for_gas"),
            entry.Has("unsafe_after") ? (int)entry.Number("unsafe_after", 1, 9) : null)
        {
            Repeats = entry.Texts("repeats"),
        };
    }

    static ImmutableArray<SpokenChoice> DraftChoices { get; } =
        [new(Procedure.Checklists.Question.Natural, "natural draft"), new(Procedure.Checklists.Question.Fan, "fan assisted")];

    static Timer? Timer(EntryReader step)
    {
        if (step.Map("timer", "a timer", "minutes", "seconds", "source") is not { } entry)
        {
            return null;
        }

        if (entry.IsMap && entry.Has("minutes") == entry.Has("seconds"))
        {
            step.Report("timer", "Expected either 'minutes' or 'seconds' in a timer, and not both.");
        }

        string source = entry.Text("source", " Name who sets the time, or write 'common practice, no source'.");
        decimal seconds = entry.Has("minutes") ? 60 * entry.Number("minutes", 0.1m, 240) : entry.Has("seconds") ? entry.Number("seconds", 1, 14400) : 1;
        return new Timer(TimeSpan.FromTicks((long)(seconds * TimeSpan.TicksPerSecond)), source);
    }

    Thing Thing(YamlValue value)
    {
        EntryReader entry = new(value, findings, "an opened thing", "name", "gas_side");
        string name = entry.Text("name");
        entry.Choice("gas_side", ["true", "false"]);
        return new Thing(name, entry.Flag("gas_side"));
    }
}
