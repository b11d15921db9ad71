using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>The fate of every step.</summary>
sealed class StepLedger(StartupPlan plan)
{
    readonly Dictionary<string, StepFate> _steps = plan.All.ToDictionary(step => step.Id, step => new StepFate(step, StepEnd.NotReached, null, null, "", false));
    string _current = "";

    public StepFate? this[string stepId] => _steps.GetValueOrDefault(stepId);

    public void Enter(StepEntered entered)
    {
        _current = entered.StepId;
        Change(entered.StepId, step => step.End is StepEnd.NotReached || entered.Arrival != Arrival.Forward
            ? step with { End = StepEnd.UnderWay, Entered = step.From.Length > 0 ? entered.At : step.Entered ?? entered.At, Left = null, Reason = "", From = "" }
            : step);
    }

    public void Do(StepDone done) => Change(done.StepId, step => step with { End = StepEnd.Done, Left = done.At, Reason = "", EndedByItself = done.Evidence is null });

    public void Carry(StepCarried carried, string from) =>
        Change(carried.StepId, step => step with { End = StepEnd.Done, Entered = carried.Done, Left = carried.Done, From = from });

    public void Skip(StepSkipped skipped) => Change(skipped.StepId, step => step with { End = StepEnd.Skipped, Left = skipped.At, Reason = skipped.Reason });

    public void Sign(DateTimeOffset at) => Change(_current, step => step with { End = StepEnd.Done, Left = at, Reason = "" });

    /// <summary>A signature that was followed by an alarm is none.</summary>
    public void Unsign() => DoAgain(_current);

    /// <summary>What must be done again is under way again, if it was ever come to.</summary>
    public void DoAgain(string stepId) => Change(stepId, step => step with { End = step.Entered is null ? StepEnd.NotReached : StepEnd.UnderWay, Left = null, Reason = "" });

    /// <summary>What is measured anew may have to be adjusted anew.</summary>
    public void Measure(ReadingEntered entered)
    {
        foreach (Step adjusts in plan.Steps.Where(step => step.Kind == StepKind.Adjust && step.Id != entered.StepId
            && step.Readings.Any(demand => new ReadingKey(demand.FieldId, step.Scope ?? "") == entered.Reading.Key)))
        {
            DoAgain(adjusts.Id);
        }
    }

    /// <summary>What is open again must be closed, and checked for leaks, again.</summary>
    public void Open(string name)
    {
        foreach (Step step in plan.Steps.Where(step => step.Closes.Contains(name) || step.Proves.Contains(name)))
        {
            DoAgain(step.Id);
        }
    }

    void Change(string stepId, Func<StepFate, StepFate> change)
    {
        if (_steps.TryGetValue(stepId, out StepFate? step))
        {
            _steps[stepId] = change(step);
        }
    }
}
