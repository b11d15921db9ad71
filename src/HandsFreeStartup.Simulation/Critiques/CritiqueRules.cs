using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Simulation.Critiques;

/// <summary>What counts as a mistake. A new one is one method here.</summary>
static class CritiqueRules
{
    const double GasSmells = 2e-4, UnderPressure = 50;

    public static ImmutableArray<Func<Course, IEnumerable<Mistake>>> All { get; } =
        [Values, Early, NotReady, NotDone, Answers, Turns, Ports, Zeroing, Lighting, Skips, Refusals, Trap, Denials, LeftOpen, TheEnd];

    /// <summary>A value other than what the display showed, or one that no display showed.</summary>
    static IEnumerable<Mistake> Values(Course course)
    {
        foreach (JournalEntry entry in course.Events<ReadingEntered>())
        {
            EnteredReading reading = ((ReadingEntered)entry.Event!).Reading;
            if (reading.Key.FieldId.StartsWith("limit_", StringComparison.Ordinal))
            {
                continue;
            }

            decimal step = Step(reading.Value);
            string said = $"{Label(course, reading.Key.FieldId)} {Text(reading.Value)} {reading.UnitSymbol}";
            if (entry.Showed.FirstOrDefault(one => one.FieldId == reading.Key.FieldId) is not { } showed)
            {
                yield return new Mistake("value-from-nowhere", entry.StepId, entry.At, $"{said} was said, and no instrument showed it.", "Connect the instrument first, and say what it shows.", Gravity.Danger);
            }
            else if (!reading.IsOver && (reading.Value < showed.Lowest - step || reading.Value > showed.Highest + step))
            {
                yield return new Mistake("wrong-value", entry.StepId, entry.At, $"{said} was said while the display showed {Range(showed)}.", $"Say what stands there: {Text(showed.Highest)}.", Gravity.Grave);
            }
        }
    }

    /// <summary>A value before its time, or while the display still moved.</summary>
    static IEnumerable<Mistake> Early(Course course) =>
        from entry in course.Events<ReadingEntered>()
        let reading = ((ReadingEntered)entry.Event!).Reading
        let showed = entry.Showed.FirstOrDefault(one => one.FieldId == reading.Key.FieldId)
        where reading.IsEarly || showed is { IsSettled: false }
        select new Mistake("value-too-early", entry.StepId, entry.At, $"{Label(course, reading.Key.FieldId)} {Text(reading.Value)} was said while it still moved.", "Wait until the timer is over and the display stands still.", Gravity.Grave);

    /// <summary>A value while furnace or instruments were not as the step wants them.</summary>
    static IEnumerable<Mistake> NotReady(Course course)
    {
        foreach (JournalEntry entry in course.Events<ReadingEntered>().Where(entry => !((ReadingEntered)entry.Event!).Reading.Key.FieldId.StartsWith("limit_", StringComparison.Ordinal)))
        {
            foreach (string hand in entry.Missing.Take(1))
            {
                (string name, string what) = hand switch
                {
                    "insert probe" or "drill hole" => ("probe-out", "the probe was not in the flue"),
                    "high fire" or "low fire" => ("wrong-fire", "it ran at the other fire"),
                    "others on" => ("others-off", "the other gas appliances were off"),
                    "others off" => ("others-on", "other gas appliances ran"),
                    "clock meter" => ("not-clocked", "the meter was not clocked anew"),
                    "heat off" => ("burner-on", "the burner was called"),
                    _ when hand.StartsWith("go to", StringComparison.Ordinal) => ("wrong-room", "the analyzer was elsewhere"),
                    _ => ("no-fire", "the burner did not run"),
                };
                yield return new Mistake(name, entry.StepId, entry.At, $"A value was said while {what}.", $"First: {hand}.", Gravity.Grave);
            }
        }
    }

    /// <summary>"Done" for what was not done.</summary>
    static IEnumerable<Mistake> NotDone(Course course)
    {
        foreach (JournalEntry entry in course.Events<StepDone>().Where(entry => entry.Missing.Any(hand => hand != "wait")))
        {
            Step step = course.StepOf(((StepDone)entry.Event!).StepId);
            string hand = entry.Missing.First(hand => hand != "wait");
            bool isLater = course.After(entry).Any(later => later.Hand == hand);
            (string Name, Gravity Gravity)? found = step.Kind switch
            {
                StepKind.Close => isLater ? ("closed-late", Gravity.Grave) : ("closing-missed", Gravity.Danger),
                StepKind.Open => hand is "zero analyzer" or "go outside" ? ("not-zeroed", Gravity.Danger) : ("not-opened", Gravity.Grave),
                StepKind.Do => hand is "zero analyzer" or "go outside" ? ("not-zeroed", Gravity.Danger) : hand == "change filter" ? ("filter-not-changed", Gravity.Grave) : ("not-done", Gravity.Grave),
                _ => null,
            };
            if (found is { } mistake)
            {
                yield return new Mistake(mistake.Name, step.Id, entry.At, $"'{step.Title}' was called done without '{hand}'.", $"First: {hand}. Then say done.", mistake.Gravity);
            }
        }
    }

    /// <summary>An answer against what was to be seen, or before anything was to be seen.</summary>
    static IEnumerable<Mistake> Answers(Course course)
    {
        foreach (JournalEntry entry in course.Events<AnswerGiven>())
        {
            AnswerGiven given = (AnswerGiven)entry.Event!;
            Step step = course.StepOf(given.StepId);
            if (entry.Sight.Answer is { } seen && seen != given.Answer)
            {
                yield return new Mistake("wrong-answer", step.Id, entry.At, $"'{step.Question!.Text}' was answered {Word(given.Answer)}. {entry.Sight.Text}", $"Answer {Word(seen)}.", step.Guards && given.Answer == step.Question.Proper ? Gravity.Danger : Gravity.Grave);
            }
            else if (entry.Sight.Answer is null && step.Question is { Choices.IsEmpty: true })
            {
                yield return new Mistake("answered-unseen", step.Id, entry.At, $"'{step.Question.Text}' was answered before it could be seen. {entry.Sight.Text}", entry.Missing is [var first, ..] && first != "wait" ? $"First: {first}." : "Wait, and look.", Gravity.Danger);
            }
        }
    }

    /// <summary>A screw turned where nothing is to be adjusted, the wrong way, or past the other limit.</summary>
    static IEnumerable<Mistake> Turns(Course course)
    {
        foreach (JournalEntry entry in course.Moves("turn "))
        {
            Step step = course.StepOf(entry.StepId);
            if (step.Kind != StepKind.Adjust)
            {
                yield return new Mistake("needless-turn", step.Id, entry.At, $"'{entry.Hand}' in a step that adjusts nothing.", "Turn only where the tool asks for an adjustment, and measure again after it.", Gravity.Grave);
                continue;
            }

            double pressure = entry.State.Manifold / Procedure.Hearing.Unit.InchesOfWater.Scale;
            bool raises = entry.Hand!.Contains("right", StringComparison.Ordinal) || (entry.Hand.Contains("clockwise", StringComparison.Ordinal) && !entry.Hand.Contains("counter", StringComparison.Ordinal));
            raises ^= course.Plan.Appliance.TurnToRaise != "clockwise";
            DeclaredLimit? limit = course.Plan.Limit(FieldId.ManifoldPressure, step.Scope);
            if ((pressure > (double)(limit?.Upper ?? 99) && raises) || (pressure < (double)(limit?.Lower ?? 0) && !raises))
            {
                yield return new Mistake("turned-wrong-way", step.Id, entry.At, $"'{entry.Hand}' moves the pressure away from its limit.", "The sheet says which way raises the pressure, and the screen says it too.", Gravity.Grave);
            }

            JournalEntry? next = course.After(entry).FirstOrDefault(later => later.Hand is not null || later.Event is ReadingEntered);
            double then = (next?.State.Manifold ?? entry.State.Manifold) / Procedure.Hearing.Unit.InchesOfWater.Scale;
            if ((pressure > (double)(limit?.Upper ?? 99) && then < (double)(limit?.Lower ?? 0)) || (pressure < (double)(limit?.Lower ?? 0) && then > (double)(limit?.Upper ?? 99)))
            {
                yield return new Mistake("turned-too-far", step.Id, entry.At, $"'{entry.Hand}' went past the other limit.", "Turn a little, wait, read, and turn again.", Gravity.Small);
            }
        }
    }

    /// <summary>A gas port opened or closed under pressure.</summary>
    static IEnumerable<Mistake> Ports(Course course) =>
        from entry in course.Journal
        where entry.Hand is "open inlet" or "open manifold" or "plug inlet" or "plug manifold" && entry.Hands.GasOn && entry.State.Inlet > UnderPressure
        select new Mistake("port-under-pressure", entry.StepId, entry.At, $"'{entry.Hand}' with the gas open.", "Close the gas first.", Gravity.Danger);

    static IEnumerable<Mistake> Zeroing(Course course) =>
        from entry in course.Journal
        where entry.Hand == "zero analyzer" && entry.Hands.Probe != ProbePlace.Outside
        select new Mistake("zeroed-in-bad-air", entry.StepId, entry.At, "The analyzer was zeroed indoors: what is in that air is missing in every reading.", "Zero it outdoors.", Gravity.Danger);

    /// <summary>Lit before the leak check, or with gas in the air.</summary>
    static IEnumerable<Mistake> Lighting(Course course)
    {
        bool isChecked = !course.Plan.Steps.Any(step => step.Id == "leak-check");
        foreach (JournalEntry entry in course.Journal)
        {
            isChecked |= entry.Event is StepDone { StepId: "leak-check" };
            if (entry.Hand == "call for heat" && !isChecked)
            {
                yield return new Mistake("out-of-order", entry.StepId, entry.At, "Heat was called for before the leak check.", "First the leak check, then the fire.", Gravity.Danger);
            }

            if (entry.Hand == "call for heat" && entry.State.GasInAir > GasSmells)
            {
                yield return new Mistake("lit-with-gas", entry.StepId, entry.At, "Heat was called for while it smelled of gas.", "Touch nothing, leave, and say gas smell.", Gravity.Danger);
            }
        }
    }

    static IEnumerable<Mistake> Skips(Course course) =>
        from entry in course.Events<StepSkipped>()
        let skipped = (StepSkipped)entry.Event!
        select new Mistake("skipped", skipped.StepId, entry.At, $"'{course.Title(skipped.StepId)}' was skipped: {skipped.Reason}.", "Do it; it takes less time than coming back.", Gravity.Grave);

    static IEnumerable<Mistake> Refusals(Course course) =>
        from entry in course.Events<CommandRefused>()
        let refused = (CommandRefused)entry.Event!
        select new Mistake("too-soon", entry.StepId, entry.At, $"'{refused.Said}' was refused: {refused.Reason}", "Say what is offered on the SAY line.", Gravity.Small);

    static IEnumerable<Mistake> Trap(Course course) =>
        from entry in course.Events<ReadingEntered>()
        where entry.State.Trap >= 1 && ((ReadingEntered)entry.Event!).Reading.Key.FieldId is FieldId.Oxygen or FieldId.FlueCo
        select new Mistake("trap-full", entry.StepId, entry.At, "The water trap of the analyzer was full: it follows too slowly.", "Empty the trap.", Gravity.Grave);

    static IEnumerable<Mistake> Denials(Course course) =>
        from entry in course.Events<UnsafeDenied>()
        let asked = course.Journal.Last(one => one.At <= entry.At && one.Event is UnsafeAsked)
        where asked.Sight.Answer is null || course.StepOf(asked.StepId).Question is not { } question || asked.Sight.Answer != question.Proper
        select new Mistake("denied-danger", entry.StepId, entry.At, "A danger that was there was called misheard.", "Confirm it: the furnace is shut off and tagged.", Gravity.Danger);

    /// <summary>What stays open, and what stays on.</summary>
    static IEnumerable<Mistake> LeftOpen(Course course)
    {
        if (!course.HasEnded)
        {
            yield break;
        }

        foreach (string thing in course.Last.Hands.Open)
        {
            yield return new Mistake("left-open", course.Last.StepId, course.Last.At, $"At the end the {thing} is open.", "Close everything that was opened.", Gravity.Danger);
        }

        if (course.Last.Hands.OthersOn)
        {
            yield return new Mistake("others-left-on", course.Last.StepId, course.Last.At, "The other gas appliances still run.", "Switch them off again after the inlet pressure.", Gravity.Small);
        }
    }

    /// <summary>The judgment of the whole: signed what must not be, or ended what was in order.</summary>
    static IEnumerable<Mistake> TheEnd(Course course)
    {
        FaultFate[] fates = [.. course.Furnace.Faults.Select(course.FateOf)];
        if (course.IsSigned)
        {
            foreach (FaultFate fate in fates.Where(fate => !fate.IsSettled && fate.Fault.IsDangerous))
            {
                yield return new Mistake("signed-with-fault", course.Last.StepId, course.Last.At, $"It was signed. {fate.Fault.What}", fate.Fault.Remedy is { } remedy ? $"Put it right: {remedy}." : "End it, not put into service.", Gravity.Danger);
            }
        }
        else if (course.HasEnded && fates.All(fate => fate.Fault.Remedy is not null))
        {
            yield return new Mistake("healthy-ended", course.Last.StepId, course.Last.At, "It was ended, not put into service, though everything could be put right.", "Find the cause, put it right, measure again.", Gravity.Grave);
        }
    }

    static string Label(Course course, string fieldId) => course.Plan.FieldOf(fieldId).Label;

    static decimal Step(decimal value) => value.Scale switch { 0 => 1m, 1 => 0.1m, 2 => 0.01m, _ => 0.001m };

    static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    static string Range(Showed showed) => showed.Lowest == showed.Highest ? Text(showed.Lowest) : $"{Text(showed.Lowest)} to {Text(showed.Highest)}";

    static string Word(bool answer) => answer ? "yes" : "no";
}
