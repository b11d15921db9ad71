using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewAppliance;

/// <summary>An appliance sheet that is being asked for: what was answered so far, and what comes next.</summary>
/// <param name="Id">Id of the sheet.</param>
sealed partial record Draft(string Id)
{
    const string NoSourceYet = "asked next";

    ImmutableDictionary<string, string> Plain { get; init; } = ImmutableDictionary<string, string>.Empty;
    ImmutableArray<DeclaredLimit> Limits { get; init; } = [];
    int Answered { get; init; }
    DeclaredLimit? Unsourced { get; init; }

    /// <summary>A strange limit that was typed once, or twice and waits for its reason.</summary>
    DeclaredLimit? Doubted { get; init; }
    bool IsRepeated { get; init; }
    string Remark { get; init; } = "";
    string LastSource { get; init; } = "rating plate";

    /// <summary>Whether everything that may be left out is, from here on.</summary>
    bool LeavesRest { get; init; }

    bool MayBeLeftOut => Pending is { } plain ? plain.MayBeLeftOut : Unsourced is null && !IsRepeated && !IsComplete;

    /// <summary>Whether nothing more is to be asked.</summary>
    public bool IsComplete => Pending is null && Unsourced is null && !IsRepeated && Answered >= Questions.Length;

    /// <summary>What is asked now.</summary>
    public Asked Question => Pending is { } plain ? Of(plain)
        : IsRepeated ? new Asked("  Why is it right for this furnace?", new AnswerForm.Words()) { Says = "Why is it right for this furnace?", IsInList = true }
        : Unsourced is not null ? new Asked($"  Who sets it? 1 rating plate, 2 maker's instructions, 3 common practice, no source, or your own words [{LastSource}]", new AnswerForm.OneOf(Sources)) { Says = "Who sets it?", Last = LastSource, IsInList = true }
        : Of(Questions[Answered]);

    Asked Of(PlainQuestion plain) =>
        new($"{Progress}{plain.Says}{(plain.Choices.IsEmpty ? "" : $" ({string.Join(", ", plain.Choices)})")}{(plain.MayBeLeftOut ? " [leave empty to skip]" : "")}", plain.Form) { Says = plain.Spoken, Skips = plain.MayBeLeftOut ? "" : null, IsInList = true };

    Asked Of(LimitQuestion limit) =>
        new($"{Progress}{limit.Says}, {(limit.HasLower ? "lowest and highest" : "at most")}, {UnitOf(limit)}", limit.Form) { Says = Answered == 0 ? limit.Spoken : limit.Short, Skips = "", IsInList = true };

    /// <summary>Who may set a limit; other words are typed.</summary>
    static ImmutableArray<SpokenChoice> Sources => [new("1", "rating plate"), new("1", "the rating plate"), new("2", "makers instructions"), new("2", "the instructions"), new("3", "common practice")];

    /// <summary>Why it is asked, and where the answer stands.</summary>
    public string Why => Pending is { } plain ? WhyAsked.Of(plain.Key)
        : Unsourced is not null || IsRepeated ? "Every limit carries its source, so that anybody can look it up."
        : WhyAsked.Of(Questions[Answered].BaseName);

    string Progress => FormattableString.Invariant($"question {Plain.Count + Answered + 1} of {PlainQuestion.All.Length + LimitQuestion.For(Firing, null).Length}: ");

    /// <summary>As answered; two stages, which are asked most, while it was not.</summary>
    Firing Firing => Plain.GetValueOrDefault("stages", "2") switch { "1" => Firing.SingleStage, "modulating" => Firing.Modulating, _ => Firing.TwoStage };

    /// <summary>The sheet as far as it was answered.</summary>
    public ApplianceSheet Sheet => new(
        Id, Plain["title"], Plain["fuel"], Plain["stages"] == "1" ? 1 : 2, Plain.GetValueOrDefault("turn_to_raise", "clockwise"), Plain.GetValueOrDefault("seal", "asked next"),
        Unsourced is null ? Limits : Limits.Add(Unsourced))
    {
        IsModulating = Plain["stages"] == "modulating",
        Venting = Enum.TryParse(Plain["venting"], out VentCategory category) ? category : null,
        IsCondensing = Plain["condensing"] switch { "yes" => true, "no" => false, _ => null },
    };

    PlainQuestion? Pending => PlainQuestion.All.FirstOrDefault(question => !Plain.ContainsKey(question.Key));

    ImmutableArray<LimitQuestion> Questions => LimitQuestion.For(Sheet.Branch.Firing, Sheet.Venting);

    /// <summary>The draft with one more answer; null with a problem where it cannot be taken.</summary>
    /// <param name="line">As typed.</param>
    /// <param name="said">The problem, or a remark about what was taken; empty for none.</param>
    public Draft? With(string line, out string said)
    {
        if (!Asked.IsRest(line))
        {
            return Taking(line, out said)?.WithoutRest();
        }

        said = MayBeLeftOut ? "  The rest is left out: a limit is asked for at the step that needs it, or is not judged." : "  This one is needed.";
        return MayBeLeftOut ? (this with { LeavesRest = true }).WithoutRest() : null;
    }

    Draft WithoutRest()
    {
        Draft draft = this;
        while (draft.LeavesRest && draft.MayBeLeftOut)
        {
            draft = draft.Taking("", out _)!;
        }

        return draft;
    }

    Draft? Taking(string line, out string said)
    {
        if (Pending is { } plain)
        {
            return plain.Read(line, out said) is { } answer ? Checked(this with { Plain = Plain.Add(plain.Key, answer) }, ref said) : null;
        }

        if (IsRepeated)
        {
            said = line.Trim().Length == 0 ? "  A reason is needed. \"back\" returns to the limit." : "";
            return said.Length > 0 ? null : this with { Unsourced = Doubted! with { Unusual = line.Trim() }, Doubted = null, IsRepeated = false };
        }

        if (Unsourced is { } limit)
        {
            said = "";
            string source = Source(line.Trim());
            string whole = Remark.Length == 0 ? source : $"{source}, {Remark}";
            return this with { Limits = Limits.Add(limit with { Source = whole }), Unsourced = null, Remark = "", Answered = Answered + 1, LastSource = source };
        }

        LimitQuestion question = Questions[Answered];
        if (line.Trim().Length == 0)
        {
            said = $"  Left out: {Labels.Within(question.Says)} is asked by voice at the step that needs it, or is not judged.";
            return this with { Answered = Answered + 1, Doubted = null };
        }

        if (LimitAnswer.Read(line, question, UnitOf(question), Plain["fuel"], out said) is not { } bounds)
        {
            return null;
        }

        DeclaredLimit taken = new(question.Name, bounds.Lower, bounds.Upper, UnitOf(question), NoSourceYet, question.IsSafety);
        said = bounds.Remark.Length == 0 ? "" : $"  Taken as {taken.Text}, {bounds.Remark}.";
        return LimitPlausibility.Of(taken, Sheet) is { Impossible: null, Unusual: { } unusual }
            ? Strange(taken, bounds.Remark, unusual.Shown, ref said)
            : Checked(this with { Unsourced = taken, Remark = bounds.Remark, Doubted = null }, ref said);
    }

    /// <summary>What is strange is asked twice; typed the same again it needs its reason, without which the reader of the files would refuse it.</summary>
    Draft? Strange(DeclaredLimit taken, string remark, string unusual, ref string said)
    {
        if (Doubted == taken)
        {
            return Checked(this with { Doubted = taken, IsRepeated = true, Remark = remark }, ref said);
        }

        said = $"  {unusual} Look at the plate again, then type the right numbers, or the same ones again.";
        return Checked(this with { Doubted = taken }, ref said);
    }

    /// <summary>What the reader of the files would refuse is refused at once.</summary>
    Draft? Checked(Draft next, ref string said)
    {
        if (!next.Plain.ContainsKey("condensing"))
        {
            return next;
        }

        try
        {
            ApplianceSheet sheet = next.Doubted is { } doubted ? next.Sheet with { Limits = next.Limits.Add(doubted with { Unusual = NoSourceYet }) } : next.Sheet;
            UserFile.ReadApplianceSheet(UserFile.Copy("sheet", ApplianceSheetWriter.Text(sheet, "draft")));
            return next;
        }
        catch (ChecklistFileException mistakes)
        {
            said = string.Join(' ', mistakes.Errors.Select(error => LineNumber().Replace(error.Message, "")));
            return null;
        }
    }

    string Source(string line) => line switch
    {
        "" => LastSource,
        "1" => "rating plate",
        "2" => "maker's instructions",
        "3" => "common practice, no source",
        _ => line,
    };

    static string UnitOf(LimitQuestion question) => LimitNames.UnitOf(question.BaseName)!;

    /// <summary>There is no file yet in which a line could be looked up.</summary>
    [GeneratedRegex(@" \(line \d+\)")]
    private static partial Regex LineNumber();
}
