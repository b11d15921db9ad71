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
    /// <param name="facts">The record.</param>
    /// <param name="openQuestions">How many points are to be looked at.</param>
    /// <param name="language">In which it is told; null for English.</param>
    public static CopyVerdict Of(JobRecord facts, int openQuestions, Language? language = null)
    {
        language ??= Language.English;
        string[] dangers = [.. DangersOf(facts).Select(language.Shown)];
        bool isSigned = facts.End == JobEnd.Signed;
        int done = facts.Steps.Count(step => step.End == StepEnd.Done);
        (string word, string few, Message told) = facts.End switch
        {
            JobEnd.Signed => ("Signed", "signed", (Message)$"The start-up was completed and signed by {facts.EndText} on {facts.Times.Stamp(facts.Signature!.At)}"),
            JobEnd.OutOfService => ("Not signed", "Not put into service", $"Not signed, and the appliance was not put into service: {facts.EndText.TrimEnd('.')}"),
            JobEnd.Stopped => ("Stopped", "Stopped for safety", $"Not signed: stopped for safety, {facts.EndText}, and not resumed"),
            _ => ("Not signed", "The start-up is unfinished", $"Not signed: {done} of {facts.Steps.Count} steps are done"),
        };
        string questions = language.Shown(Counted(facts.Exceptions.Length, openQuestions)), text = language.Shown(told);
        return dangers.Length == 0
            ? new CopyVerdict(language.Text(word), language.Text(few), $"{text}{questions}.", isSigned, dangers)
            : new CopyVerdict(language.Text("Unsafe"), isSigned ? language.Text("Unsafe") : $"{language.Text("Unsafe")}. {language.Text(few)}", $"{text}; {language.Text("unsafe")}: {dangers[0]}{questions}.", isSigned, dangers);
    }

    /// <summary>"; 2 exceptions; 1 point is to be looked at".</summary>
    public static Message Counted(int exceptions, int openQuestions)
    {
        Message first = exceptions switch { 0 => (Message)"", 1 => "; 1 exception", _ => $"; {exceptions} exceptions" };
        Message then = openQuestions switch { 0 => (Message)"", 1 => "; 1 point is to be looked at", _ => $"; {openQuestions} points are to be looked at" };
        return $"{first}{then}";
    }

    static IEnumerable<Message> DangersOf(JobRecord facts) =>
    [
        .. facts.Unsafe.Select(found => found.Condition),
        .. facts.Decided is { Kind: EndKind.Unsafe } decided && facts.Unsafe.Count == 0 ? [Message.Written(decided.Reason)] : Array.Empty<Message>(),
        .. facts.Stop is { Cause: not StopCause.Emergency } stopped ? [Message.FromString(StopWords.Of(stopped.Cause))] : Array.Empty<Message>(),
        .. facts.Readings.Where(fate => fate.Counts && fate.Reading.Limit is { IsSafety: true } && VerdictWords.MustBeLookedAt(fate.Reading.Verdict, fate.Reading.Limit))
            .Select(fate => (Message)$"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading)} is not proven to keep its limit ({fate.Reading.Limit!})"),
        .. facts.Results.Where(fate => fate.Result.Limit is { IsSafety: true } && VerdictWords.MustBeLookedAt(fate.Result.Verdict, fate.Result.Limit))
            .Select(fate => (Message)$"{Labels.Of(fate.Result, fate.Scope)} {ResultWords.Told(fate.Result)} is not proven to keep its limit ({fate.Result.Limit!})"),
        .. facts.Things.Where(thing => thing.IsOpen && (facts.End != JobEnd.OutOfService || thing.Thing.IsGasSide))
            .Select(thing => thing.Closed is null ? (Message)$"{thing.Thing.Name} is open" : $"{thing.Thing.Name} was closed and not checked for leaks"),
        .. facts.Steps.Where(step => step.Step.IsSafetyStop && step.Step.Question is { } question
            && facts.Answer(step.Step.Id) is { } last && last.Answer != question.Proper)
            .Select(step => (Message)$"\"{step.Step.Question!.Text}\" was answered {Labels.YesNo(!step.Step.Question.Proper)}"),
    ];
}
