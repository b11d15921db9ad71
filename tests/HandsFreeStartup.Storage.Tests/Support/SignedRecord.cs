using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>What must hold of a signed record, added up from its events alone and not by the procedure's own state.</summary>
static class SignedRecord
{
    public static void AssertProven(StartupPlan plan, IReadOnlyList<StartupEvent> log)
    {
        HashSet<string> open = [], unproven = [], done = [], skipped = [];
        Dictionary<ReadingKey, EnteredReading> readings = [];
        Dictionary<(string Scope, string Id), CalculatedResult> results = [];
        Dictionary<string, bool> answers = [];
        bool isStopped = false;
        foreach (StartupEvent happened in log)
        {
            switch (happened)
            {
                case ThingOpened opened:
                    open.Add(opened.Thing.Name);
                    break;
                case ThingClosed closed:
                    open.Remove(closed.Name);
                    unproven.UnionWith(plan.Steps.SelectMany(step => step.Opens).Where(thing => thing.IsGasSide && thing.Name == closed.Name).Select(thing => thing.Name));
                    break;
                case ThingProved proved:
                    unproven.Remove(proved.Name);
                    break;
                case ReadingEntered entered:
                    Forget(results, entered.Reading.Key);
                    readings[entered.Reading.Key] = entered.Reading;
                    break;
                case ReadingVoided gone:
                    Forget(results, gone.Key);
                    readings.Remove(gone.Key);
                    break;
                case ReadingScratched scratched:
                    Forget(results, scratched.Key);
                    readings.Remove(scratched.Key);
                    break;
                case ResultsComputed computed:
                    foreach (CalculatedResult result in computed.Results)
                    {
                        results[(computed.Scope, result.Id)] = result;
                    }

                    break;
                case StepReopened reopened:
                    done.Remove(reopened.StepId);
                    skipped.Remove(reopened.StepId);
                    answers.Remove(reopened.StepId);
                    break;
                case StepEntered entered when entered.Arrival != Arrival.Forward:
                    done.Remove(entered.StepId);
                    skipped.Remove(entered.StepId);
                    answers.Remove(entered.StepId);
                    break;
                case StepDone finished:
                    done.Add(finished.StepId);
                    break;
                case StepSkipped left:
                    skipped.Add(left.StepId);
                    break;
                case AnswerGiven given:
                    answers[given.StepId] = given.Answer;
                    break;
                case StartupStopped:
                    isStopped = true;
                    break;
                case StartupResumed:
                    isStopped = false;
                    break;
            }
        }

        Assert.Empty(open);
        Assert.Empty(unproven);
        Assert.False(isStopped);
        Assert.DoesNotContain(log, happened => happened is UnsafeFound or EndedOutOfService);
        string? draws = log.OfType<ChoiceMade>().LastOrDefault(made => made.Topic == ChoiceTopic.Step)?.Value;
        Step[] steps = [.. plan.Steps.Where(step => step.OnlyFor.DraftBy is not { } drawn || draws is null || drawn == (draws == "natural" ? DraftBy.Natural : DraftBy.Fan))];
        Assert.All(steps, step => Assert.True(done.Contains(step.Id) || skipped.Contains(step.Id), $"{step.Id} is neither done nor skipped"));
        Assert.All(steps.Where(step => step is { Kind: StepKind.Ask, Question.Choices.IsEmpty: true } && !skipped.Contains(step.Id)), step => Assert.Equal(step.Question!.Proper, answers[step.Id]));
        foreach (Step step in steps)
        {
            AssertMeasured(plan, step, skipped.Contains(step.Id), readings, results);
        }
    }

    static void AssertMeasured(
        StartupPlan plan, Step step, bool isSkipped, Dictionary<ReadingKey, EnteredReading> readings, Dictionary<(string Scope, string Id), CalculatedResult> results)
    {
        string scope = step.Scope ?? "";
        bool isSafety = step.IsSafetyStop || step.Question is { StopsForGas: true } or { UnsafeAfter: not null }
            || step.Readings.Any(demand => plan.Limit(demand.LimitName, step.Scope) is { IsSafety: true });
        Assert.False(isSkipped && isSafety, $"{step.Id} was skipped");
        foreach (ReadingDemand demand in isSkipped ? [] : step.Readings)
        {
            Assert.True(readings.TryGetValue(new ReadingKey(demand.FieldId, scope), out EnteredReading? reading), $"{step.Id}: no {demand.FieldId} counts");
            Assert.False(reading!.IsEarly);
            Assert.True(plan.Limit(demand.LimitName, step.Scope) is not { IsSafety: true } || reading.Verdict == Verdict.Pass, $"{step.Id}: {demand.FieldId} is not proven");
        }

        bool asksMonoxide = step.Readings.Any(demand => demand.FieldId == "flue_co") && step.Readings.Any(demand => demand.FieldId == "oxygen");
        if (!isSkipped && asksMonoxide && plan.Limit("co_air_free", step.Scope) is { IsSafety: true })
        {
            Assert.Equal(Verdict.Pass, results[(scope, "co_air_free")].Verdict);
        }
    }

    static void Forget(Dictionary<(string Scope, string Id), CalculatedResult> results, ReadingKey key)
    {
        foreach ((string Scope, string Id) gone in results.Where(entry => entry.Key.Scope == key.Scope && entry.Value.Inputs.ContainsKey(key.FieldId)).Select(entry => entry.Key).ToArray())
        {
            results.Remove(gone);
        }
    }
}
