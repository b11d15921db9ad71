using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>The one list of what a reader of the record must not overlook: alarms, unsafe answers, values that stay outside, skipped steps, shortened waits. It is read from the events alone.</summary>
public sealed class JobExceptions
{
    readonly StartupPlan _plan;
    readonly List<Kept> _kept = [];
    readonly Dictionary<ReadingKey, int> _measured = [];
    readonly Dictionary<ReadingKey, Evidence> _heard = [];

    /// <summary>An empty list.</summary>
    /// <param name="plan">What the job is led by.</param>
    public JobExceptions(StartupPlan plan) => _plan = plan;

    /// <summary>The list of a whole record.</summary>
    public static ImmutableArray<JobException> Of(StartupPlan plan, IEnumerable<StartupEvent> events)
    {
        JobExceptions exceptions = new(plan);
        foreach (StartupEvent happened in events)
        {
            exceptions.Take(happened);
        }

        return exceptions.Standing;
    }

    /// <summary>All that stand, the gravest first.</summary>
    public ImmutableArray<JobException> Standing =>
        [.. _kept.Select(kept => kept.Exception).OrderBy(one => one.Kind).ThenByDescending(one => one.Rank).ThenBy(one => one.At)];

    /// <summary>Takes in one event, in order.</summary>
    public void Take(StartupEvent happened)
    {
        switch (happened)
        {
            case StartupBegan { Job: { IsDemonstration: true, TimerFactor: < 1 } job }:
                Add(happened, ExceptionKind.ShortenedWait, "", $"All waits ran at {Math.Round((decimal)(100 * job.TimerFactor), 2)} percent of their time");
                break;
            case UnsafeFound found:
                Add(found, ExceptionKind.Unsafe, found.StepId, found.Condition);
                break;
            case StartupStopped stopped:
                KeepDenied();
                Add(stopped, ExceptionKind.Alarm, "", Stopped(stopped), rank: stopped.Cause == StopCause.Emergency ? 2 : 4);
                break;
            case StartupResumed resumed:
                Explain(resumed.Reason);
                break;
            case ChoiceMade { Topic: ChoiceTopic.SafeBy } chosen:
                Change(kept => kept.Exception is { Kind: ExceptionKind.Alarm, Reason: "" } && kept.IsStop,
                    kept => kept with { Exception = kept.Exception with { Subject = $"{kept.Exception.Subject}; declared safe by {SafeBy.Words(chosen.Value)}" } });
                break;
            case MonoxideJudged judged:
                Judge(judged);
                break;
            case AnswerGiven given when _plan.All[_plan.IndexOf(given.StepId)] is { Guards: true } step && given.Answer != step.Question!.Proper:
                Add(given, ExceptionKind.UnsafeAnswer, given.StepId, Answered(step.Question, given.Answer));
                break;
            case UnsafeDenied denied:
                Add(denied, ExceptionKind.Misheard, denied.StepId, $"Said to be misheard: {new MessagePart.Name(StepTitles.Of(_plan, denied.StepId))}");
                break;
            case ExceptionMade { Purpose: DictationPurpose.AnswerReason } made:
                Change(kept => kept.Exception.Kind == ExceptionKind.UnsafeAnswer && kept.Exception.StepId == made.StepId && kept.Exception.Reason.Length == 0,
                    kept => kept with { Exception = kept.Exception with { Reason = made.Reason, Clips = [.. kept.Exception.Clips, .. Clips(made.Evidence)] } });
                break;
            case ExceptionMade made:
                _kept.Add(new Kept(new JobException(made.At, ExceptionKind.OutsideLimit, made.StepId, made.Subject, made.Reason) { Clips = Clips(made.Evidence) }, false));
                break;
            case LimitStated { Limit.Unusual: { } why } stated:
                Add(stated, ExceptionKind.StrangeLimit, stated.StepId, $"{stated.Limit.Name} {stated.Limit}: {Message.Recorded(why)}");
                break;
            case StepSkipped skipped:
                Add(skipped, ExceptionKind.SkippedStep, skipped.StepId, $"Step '{new MessagePart.Name(StepTitles.Of(_plan, skipped.StepId))}' was skipped", skipped.Reason);
                break;
            case ClockJumped jumped:
                Add(jumped, ExceptionKind.ClockJump, "", $"The clock was set {(jumped.By < TimeSpan.Zero ? "back" : "forward")} by {jumped.By.Duration()} during the job");
                break;
            case ReadingEntered entered:
                _heard[entered.Reading.Key] = entered.Reading.Evidence;
                _measured[entered.Reading.Key] = _measured.GetValueOrDefault(entered.Reading.Key) + 1;
                Drop(entered.StepId, ExceptionKind.OutsideLimit);
                break;
            case ConfirmationRefused:
                KeepDenied();
                break;
            case ConfirmationAsked asked:
                _heard[asked.Reading.Key] = asked.Reading.Evidence;
                break;
            case StepReopened reopened:
                Drop(reopened.StepId, ExceptionKind.OutsideLimit);
                break;
            case StepDone done:
                Drop(done.StepId, ExceptionKind.SkippedStep);
                break;
        }
    }

    /// <summary>One measurement is told once, by the gravest of what was found in it; a value that was read back and then entered is no other one.</summary>
    void Judge(MonoxideJudged judged)
    {
        int number = _measured.GetValueOrDefault(KeyOf(judged)) + (judged.IsDoubtful ? 1 : 0);
        Kept? same = _kept.FirstOrDefault(kept => kept.Measurement == (judged.Place, judged.Key.Scope, number));
        if (same is not null && same.Exception.Rank > Rank(judged) && !same.IsDoubtful)
        {
            return;
        }

        _kept.Remove(same!);
        _kept.Add(new Kept(
            new JobException(judged.At, judged.IsDoubtful ? ExceptionKind.Misheard : ExceptionKind.Alarm, judged.StepId, MonoxideWords.Sentence(judged), Rank: Rank(judged))
            {
                Clips = Clips(_heard.GetValueOrDefault(KeyOf(judged))),
            }, false)
        {
            Measurement = (judged.Place, judged.Key.Scope, number),
            IsDoubtful = judged.IsDoubtful,
        });
    }

    /// <summary>A dangerous value that was read back and never confirmed stays for good: the next value is another measurement.</summary>
    void KeepDenied() => Change(kept => kept.IsDoubtful, kept => kept with { Measurement = null, IsDoubtful = false });

    static ReadingKey KeyOf(MonoxideJudged judged) => judged.Key with { FieldId = judged.Place == MonoxidePlace.Room ? FieldId.RoomCo : FieldId.FlueCo };

    static ImmutableArray<string> Clips(params IEnumerable<Evidence?> heard) => [.. heard.Select(one => one?.Clip).OfType<string>().Distinct()];

    static int Rank(MonoxideJudged judged) => judged.Action switch { MonoxideAction.Evacuate => 4, MonoxideAction.ShutOff => 3, _ => 1 };

    static string Stopped(StartupStopped stopped) => stopped switch
    {
        { Cause: StopCause.GasSmell } => "Stopped: gas was smelled",
        { Cause: StopCause.CarbonMonoxide } => "Stopped: carbon monoxide in a room, everybody had to leave",
        { IsFire: true } => "Stopped: fire was called out",
        _ => "Stopped: emergency stop",
    };

    static Message Answered(Question question, bool answer) => $"\"{question.Text}\" was answered {(answer ? "yes" : "no")}";

    /// <summary>The cause that was found belongs to every stop that nobody has explained yet.</summary>
    void Explain(string cause) => Change(kept => kept.IsStop && kept.Exception.Reason.Length == 0, kept => kept with { Exception = kept.Exception with { Reason = cause } });

    void Add(StartupEvent happened, ExceptionKind kind, string stepId, Message subject, string reason = "", int rank = 0) =>
        _kept.Add(new Kept(new JobException(happened.At, kind, stepId, subject, reason, rank) { Clips = Clips(HeardIn(happened)) }, happened is StartupStopped));

    static Evidence? HeardIn(StartupEvent happened) => happened switch
    {
        UnsafeFound found => found.Evidence,
        StartupStopped stopped => stopped.Evidence,
        AnswerGiven given => given.Evidence,
        StepSkipped skipped => skipped.Evidence,
        _ => null,
    };

    void Drop(string stepId, ExceptionKind kind) => _kept.RemoveAll(kept => kept.Exception.Kind == kind && kept.Exception.StepId == stepId);

    void Change(Predicate<Kept> which, Func<Kept, Kept> change)
    {
        for (int i = 0; i < _kept.Count; i++)
        {
            _kept[i] = which(_kept[i]) ? change(_kept[i]) : _kept[i];
        }
    }

    sealed record Kept(JobException Exception, bool IsStop)
    {
        public (MonoxidePlace Place, string Scope, int Number)? Measurement { get; init; }
        public bool IsDoubtful { get; init; }
    }
}
