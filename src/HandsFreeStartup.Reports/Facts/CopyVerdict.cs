using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>The verdict over a job, in a word and in a sentence.</summary>
/// <param name="Word">"Signed", "Not signed", "Stopped" or "Unsafe".</param>
/// <param name="Short">The same in a few words for a banner.</param>
/// <param name="Sentence">One sentence.</param>
/// <param name="IsSigned">Whether the record ends with a signature.</param>
/// <param name="Dangers">Why the appliance must not run as it is; empty where nothing in the record says so.</param>
sealed record CopyVerdict(string Word, string Short, string Sentence, bool IsSigned, IReadOnlyList<string> Dangers)
{
    public static CopyVerdict Of(JobRecord facts, int openQuestions)
    {
        string[] dangers = [.. DangersOf(facts)];
        bool isSigned = facts.End == JobEnd.Signed;
        int done = facts.Steps.Count(step => step.End == StepEnd.Done);
        (string word, string few, string text) = facts.End switch
        {
            JobEnd.Signed => ("Signed", "signed", $"The start-up was completed and signed by {facts.EndText} on {facts.Times.Stamp(facts.Signature!.At)}"),
            JobEnd.OutOfService => ("Not signed", "Not put into service", $"Not signed, and the appliance was not put into service: {facts.EndText.TrimEnd('.')}"),
            JobEnd.Stopped => ("Stopped", "Stopped for safety", $"Not signed: stopped for safety, {facts.EndText}, and not resumed"),
            _ => ("Not signed", "The start-up is unfinished", FormattableString.Invariant($"Not signed: {done} of {facts.Steps.Count} steps are done")),
        };
        string questions = Counted(facts.Exceptions.Length, openQuestions);
        return dangers.Length == 0
            ? new CopyVerdict(word, few, $"{text}{questions}.", isSigned, dangers)
            : new CopyVerdict("Unsafe", isSigned ? "Unsafe" : $"Unsafe. {few}", $"{text}; unsafe: {dangers[0]}{questions}.", isSigned, dangers);
    }

    /// <summary>"; 2 exceptions; 1 point is to be looked at".</summary>
    public static string Counted(int exceptions, int openQuestions) => exceptions switch
    {
        0 => "",
        1 => "; 1 exception",
        _ => FormattableString.Invariant($"; {exceptions} exceptions"),
    } + openQuestions switch
    {
        0 => "",
        1 => "; 1 point is to be looked at",
        _ => FormattableString.Invariant($"; {openQuestions} points are to be looked at"),
    };

    static IEnumerable<string> DangersOf(JobRecord facts) =>
    [
        .. facts.Unsafe.Select(found => found.Condition.Shown),
        .. facts.Decided is { Kind: EndKind.Unsafe } decided && facts.Unsafe.Count == 0 ? [decided.Reason] : Array.Empty<string>(),
        .. facts.Stop is { Cause: not StopCause.Emergency } stopped ? [StopWords.Of(stopped.Cause)] : Array.Empty<string>(),
        .. facts.Readings.Where(fate => fate.Counts && fate.Reading.Limit is { IsSafety: true } && VerdictWords.MustBeLookedAt(fate.Reading.Verdict, fate.Reading.Limit))
            .Select(fate => $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading).Plain} is not proven to keep its limit ({fate.Reading.Limit!.Text})"),
        .. facts.Results.Where(fate => fate.Result.Limit is { IsSafety: true } && VerdictWords.MustBeLookedAt(fate.Result.Verdict, fate.Result.Limit))
            .Select(fate => $"{fate.Result.Label}{Labels.In(fate.Scope)} {ResultWords.Of(fate.Result)} is not proven to keep its limit ({fate.Result.Limit!.Text})"),
        .. facts.Things.Where(thing => thing.IsOpen && (facts.End != JobEnd.OutOfService || thing.Thing.IsGasSide))
            .Select(thing => thing.Closed is null ? $"{thing.Thing.Name} is open" : $"{thing.Thing.Name} was closed and not checked for leaks"),
        .. facts.Steps.Where(step => step.Step.IsSafetyStop && step.Step.Question is { } question
            && facts.Answer(step.Step.Id) is { } last && last.Answer != question.Proper)
            .Select(step => $"\"{step.Step.Question!.Text}\" was answered {Labels.YesNo(!step.Step.Question.Proper)}"),
    ];
}
