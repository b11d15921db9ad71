using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>Verdicts as people see and hear them, the same everywhere.</summary>
public static class VerdictWords
{
    /// <summary>The verdict alone; empty where nothing was judged.</summary>
    public static string Of(Verdict? verdict) => verdict switch
    {
        null => "",
        Verdict.Pass => "pass",
        Verdict.ConditionalPass => "conditional pass",
        Verdict.ConditionalFail => "conditional fail",
        Verdict.Fail => "FAIL",
        _ => "CANNOT TELL",
    };

    /// <summary>The verdict with what it means beside a limit; empty where nothing was judged.</summary>
    public static string Of(Verdict? verdict, DeclaredLimit? limit)
    {
        string proven = limit is { IsSafety: true } ? ", NOT PROVEN" : "";
        return limit is null ? "" : verdict switch
        {
            Verdict.ConditionalPass => $"{Of(verdict)}{proven}: inside by less than the uncertainty",
            Verdict.ConditionalFail => $"{Of(verdict)}{proven}: outside by less than the uncertainty",
            _ => Of(verdict),
        };
    }

    /// <summary>Whether somebody must look at it: everything that is judged and does not pass.</summary>
    public static bool MustBeLookedAt(Verdict? verdict, DeclaredLimit? limit) => verdict is not null and not Verdict.Pass && limit is not null;
}
