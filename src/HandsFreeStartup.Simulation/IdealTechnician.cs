using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Simulation;

/// <summary>The next thing that a technician does.</summary>
/// <param name="Words">As said or typed.</param>
public abstract record Deed(string Words)
{
    /// <summary>Something with the hands, in their words.</summary>
    /// <param name="Words">As in the list of hands.</param>
    public sealed record ByHand(string Words) : Deed(Words);

    /// <summary>Something said to the tool.</summary>
    /// <param name="Words">As typed.</param>
    /// <param name="Phrase">What it means.</param>
    public sealed record BySpeech(string Words, Phrase Phrase) : Deed(Words);

    /// <summary>Nothing for some seconds.</summary>
    /// <param name="Seconds">How many.</param>
    public sealed record Patience(double Seconds) : Deed(FormattableString.Invariant($"wait {Seconds} seconds"));
}

/// <summary>
/// A technician who does what the step wants, says what the displays show when they stand still, answers what is seen, puts right what can be, and ends it where nothing more can be done.
/// Needs nothing but what a person at the furnace has: the view of the tool, the displays and the eyes.
/// </summary>
public sealed class IdealTechnician(Bench bench)
{
    /// <summary>So often the same value is said before it is believed that nothing changes.</summary>
    const int Enough = 3;

    const int MostPatience = 150;

    readonly Dictionary<string, int> _said = [];
    readonly Dictionary<string, int> _answered = [];
    readonly HashSet<Fault> _tried = [];
    string _step = "";
    int _waited;
    bool _gaveUp;

    StartupPlan Plan => bench.Furnace.Plan;

    /// <summary>What is done next.</summary>
    /// <param name="view">What the tool shows.</param>
    public Deed Next(StartupView view)
    {
        string here = $"{bench.Step.Id}/{view.Phase}";
        if (_step != here)
        {
            (_step, _waited) = (here, 0);
            if (view.Phase == Phase.Asking)
            {
                _said.Clear();
            }
        }

        Deed deed = view.Phase switch
        {
            Phase.Confirming or Phase.Jumping or Phase.ReadingBack or Phase.Signing or Phase.Condemning => Answer(AnswerWord.Confirm),
            Phase.Dictating => Dictate(),
            Phase.Choosing => Choose(view),
            Phase.Stopped => Order(CommandWord.Finish),
            _ => Asking(view),
        };
        _waited = deed is Deed.Patience ? _waited + 1 : 0;
        return deed;
    }

    Deed Asking(StartupView view)
    {
        Step step = bench.Step;
        if (_gaveUp && Plan.Steps.Contains(step))
        {
            return Order(CommandWord.Finish);
        }

        if (step.Kind is StepKind.Ask && bench.Sight is { Answer: { } bad } && bad != step.Question!.Proper && Missed(step) is { } remedy && _said.GetValueOrDefault("answer") > 0)
        {
            return Right(remedy);
        }

        if (bench.Missing is [var hand, ..])
        {
            return hand == "wait" ? Wait() : new Deed.ByHand(hand);
        }

        return step.Kind switch
        {
            StepKind.Ask => Ask(step),
            StepKind.Wait => view.ListeningFor.Contains("next") ? Order(CommandWord.Next) : Wait(),
            StepKind.Read or StepKind.Adjust => Read(step, view),
            StepKind.Sign => Order(CommandWord.Finish),
            _ => view.ListeningFor.Contains("done") ? Order(CommandWord.Done) : Order(CommandWord.Next),
        };
    }

    Deed Ask(Step step)
    {
        if (step.Question!.Choices is { IsEmpty: false } choices)
        {
            SpokenChoice choice = choices.First(one => one.Value == (bench.Furnace.IsNatural ? Question.Natural : Question.Fan));
            return new Deed.BySpeech(choice.Says, new Phrase.Choice(choice.Value, Evidence.Typed(choice.Says)));
        }

        if (step.Id == "drain-switch" && bench.Sight.Answer is null)
        {
            return bench.Hands.IsOpen("drain") ? new Deed.ByHand("free drain") : bench.State.Phase == BurnerPhase.Burning ? new Deed.ByHand("block drain") : Wait();
        }

        bool? seen = bench.Sight.Answer;
        if (seen is not { } answer)
        {
            return Wait();
        }

        _said["answer"] = 1;
        int times = _answered[step.Id] = _answered.GetValueOrDefault(step.Id) + 1;
        return answer != step.Question.Proper && times > Enough ? GiveUp() : Answer(answer ? AnswerWord.Yes : AnswerWord.No);
    }

    Deed Read(Step step, StartupView view)
    {
        if (view.Expectation.Readings.Any(reading => reading.Field.Id is FieldId.LimitLower or FieldId.LimitUpper))
        {
            return Plate(view);
        }

        string? wanted = view.ListeningFor.FirstOrDefault(offer => offer.Contains(" + number", StringComparison.Ordinal));
        if (view.ListeningFor.Contains("next"))
        {
            return Order(CommandWord.Next);
        }

        if (view.Do.Contains("Stop adjusting", StringComparison.Ordinal) || view.Do.Contains("do not turn", StringComparison.Ordinal))
        {
            return GiveUp();
        }

        if (wanted is null || view.Timers.Any(timer => timer.Remaining > TimeSpan.Zero && step.After is { } after && timer.Title == Plan.All[Plan.IndexOf(after)].Title))
        {
            return Wait();
        }

        if (_said.Count > 0 && view.Timers.Any(timer => timer.Remaining > TimeSpan.Zero && timer.Title.StartsWith("Second set", StringComparison.Ordinal)) && !view.Readings.Any(line => line.State == ReadingState.Missing))
        {
            return Wait();
        }

        string name = wanted[..wanted.IndexOf(" + ", StringComparison.Ordinal)];
        ExpectedReading reading = view.Expectation.Readings.First(one => one.Names.Contains(name));
        Display? display = bench.DisplayOf(reading.Field.Id);
        if (display is not { Value: { } value, IsSettled: true })
        {
            return _waited < MostPatience ? Wait() : GiveUp();
        }

        int times = _said.GetValueOrDefault(name);
        if (times > 0 && Outside(step) is { } outside)
        {
            if (step.Kind == StepKind.Adjust)
            {
                return _said.Remove(name) && times < 40 ? Turn(outside) : GiveUp();
            }

            if (Missed(step) is { } remedy)
            {
                _said.Clear();
                return Right(remedy);
            }
        }

        if (value < reading.Field.Lowest || times > Enough)
        {
            return GiveUp();
        }

        _said[name] = times + 1;
        return Say(name, reading.Field, value);
    }

    /// <summary>The value of an adjusted or measured field that lies outside, as far as the limit tells.</summary>
    (decimal Value, DeclaredLimit Limit)? Outside(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            if (bench.DisplayOf(demand.FieldId) is { Value: { } value, Field: var field } && Plan.Limit(demand.LimitName, step.Scope)?.In(field.Unit) is { } limit && (value > limit.Upper || value < limit.Lower))
            {
                return (value, limit);
            }
        }

        return null;
    }

    Deed Turn((decimal Value, DeclaredLimit Limit) outside)
    {
        decimal aim = ((outside.Limit.Lower ?? outside.Limit.Upper!.Value) + (outside.Limit.Upper ?? outside.Limit.Lower!.Value)) / 2;
        double turns = (double)((aim - outside.Value) / aim) / Furnace.RisePerTurn;
        string amount = Math.Abs(turns) switch { >= 0.6 => "a half", >= 0.3 => "a quarter", >= 0.13 => "an eighth", _ => "a little" };
        bool isClockwise = turns > 0 == (Plan.Appliance.TurnToRaise == "clockwise");
        return new Deed.ByHand($"turn {(isClockwise ? "right" : "left")} {amount}");
    }

    /// <summary>What a technician would look for who sees this; null where nothing is left to try.</summary>
    Fault? Missed(Step step)
    {
        Fault? suspect = step.Id switch
        {
            "clearances" or "vent-pushing" => Fault.ShortOfAir,
            "polarity" => Fault.ReversedPolarity,
            "leak-check" or "leak-check-running" => Fault.GasLeak,
            "prove-ports" => Fault.PortLeftOpen,
            _ when step.Readings.Any(demand => demand.FieldId == FieldId.Oxygen) && bench.DisplayOf(FieldId.Oxygen)?.Value > Plan.Limit(FieldId.Oxygen, step.Scope)?.Upper => Fault.LeakingProbe,
            _ when step.Readings.Any(demand => demand.FieldId == FieldId.SupplyStatic) => Fault.DirtyFilter,
            _ => null,
        };
        return suspect is { } fault && !_tried.Contains(fault) ? fault : null;
    }

    Deed.ByHand Right(Fault fault)
    {
        _tried.Add(fault);
        return new Deed.ByHand(NamedFault.Of(fault).Remedy!);
    }

    /// <summary>What stands on the rating plate where no file states it: the bounds of a furnace of this kind.</summary>
    Deed Plate(StartupView view)
    {
        string result = view.Do;
        ExpectedReading lower = view.Expectation.Readings.First(one => one.Field.Id == FieldId.LimitLower), upper = view.Expectation.Readings.First(one => one.Field.Id == FieldId.LimitUpper);
        (decimal? low, decimal high) = result.Contains("input", StringComparison.OrdinalIgnoreCase) ? (Rounded(lower.Field, bench.Furnace.High.GasFlow * bench.Furnace.HeatPerCubicMetre * 0.9), Rounded(upper.Field, bench.Furnace.High.GasFlow * bench.Furnace.HeatPerCubicMetre * 1.05))
            : result.Contains("rise", StringComparison.OrdinalIgnoreCase) ? ((decimal?)30m, 70m) : ((decimal?)null, 0.60m);
        if (low is { } lowest && _said.TryAdd("lowest", 1))
        {
            return Say("lowest", lower.Field, lowest);
        }

        return _said.TryAdd("highest", 1) ? Say("highest", upper.Field, high) : PlateDone();
    }

    Deed PlateDone()
    {
        _said.Remove("lowest");
        _said.Remove("highest");
        return Order(CommandWord.Next);
    }

    static decimal Rounded(Field field, double si) => Math.Round((decimal)(si / field.Unit.Scale) / 1000) * 1000;

    Deed Choose(StartupView view)
    {
        SpokenChoice choice = view.Expectation.Choices[0];
        return new Deed.BySpeech(choice.Says, new Phrase.Choice(choice.Value, Evidence.Typed(choice.Says)));
    }

    Deed Wait() => _waited >= MostPatience * 2 ? GiveUp() : new Deed.Patience(bench.Step.Timer is null ? 5 : 30);

    Deed GiveUp()
    {
        _gaveUp = true;
        return Order(CommandWord.Finish);
    }

    static Deed.BySpeech Say(string name, Field field, decimal value)
    {
        string words = $"{name} {value.ToString(CultureInfo.InvariantCulture)}";
        return new Deed.BySpeech(words, new Phrase.Reading(field, value, Evidence.Typed(words)));
    }

    static Deed.BySpeech Dictate()
    {
        const string Words = "seen at the furnace, put right where it can be";
        return new Deed.BySpeech(Words, new Phrase.Dictation(Evidence.Typed(Words)));
    }

    static Deed.BySpeech Order(CommandWord word) => new(Commands.Of(word).Id, new Phrase.Command(word, Evidence.Typed(Commands.Of(word).Id)));

    static Deed.BySpeech Answer(AnswerWord word) => new(Answers.Of(word).Ways[0], new Phrase.Answer(word, Evidence.Typed(Answers.Of(word).Ways[0])));
}
