using FsCheck.Xunit;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>Whatever is said: what the paper shows as standing is what stands, added up here from the events alone.</summary>
[Trait("Speed", "Fast")]
public sealed class StandingValueLaws
{
    [Property(MaxTest = 60)]
    public bool A_value_that_does_not_stand_never_looks_as_if_it_did(byte[] phrases)
    {
        ScriptedJob job = new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Done).Order(CommandWord.Done).Wait(TimeSpan.FromMinutes(9)).Order(CommandWord.Next);
        foreach (byte phrase in phrases)
        {
            Say(job, phrase);
        }

        CopySource source = CopiesTests.Source(ScriptedJob.Plan, job.Events);
        Dictionary<ReadingKey, string> standing = Standing(job.Events);
        using PdfPages pdf = new(StartupCopies.Appliance(source, Paper.A4));
        string[] printed = [.. CopiesTests.Sorted(pdf.Readings().Where(reading => !reading.Label.StartsWith('='))).Select(reading => $"{reading.Label} {reading.Standing}")];
        string[] expected = [.. new[] { ("CO", "flue_co"), ("Manifold", "manifold_pressure"), ("Oxygen", "oxygen") }
            .Select(field => $"{field.Item1} {standing.GetValueOrDefault(new ReadingKey(field.Item2, "high"), "–")}")];
        string narrow = NarrowCopy.Of(source, 48);
        return printed.SequenceEqual(expected)
            && standing.Values.All(value => narrow.Contains($"  left {value} ", StringComparison.Ordinal))
            && narrow.Split('\n').Count(line => line.StartsWith("  left ", StringComparison.Ordinal) && !line.StartsWith("  left -", StringComparison.Ordinal)) >= standing.Count;
    }

    static void Say(ScriptedJob job, byte phrase)
    {
        int some = phrase / 12;
        _ = (phrase % 12) switch
        {
            0 or 1 => job.Read("oxygen", 6.0m + some / 10m),
            2 => job.Read("oxygen", 7.1m, Certainty.Amber),
            3 or 4 => job.Read("flue_co", 10 + some),
            5 => job.Read("manifold_pressure", 3.10m),
            6 => job.Read("manifold_pressure", 3.40m + some / 100m),
            7 => job.Order(CommandWord.Disregard),
            8 => job.Answer(AnswerWord.Confirm),
            9 => job.Order(CommandWord.GoBack),
            10 => job.Answer(AnswerWord.No),
            _ => job.Order(CommandWord.Next),
        };
    }

    static Dictionary<ReadingKey, string> Standing(IEnumerable<StartupEvent> events)
    {
        Dictionary<ReadingKey, string> standing = [];
        foreach (StartupEvent happened in events)
        {
            switch (happened)
            {
                case ReadingEntered entered:
                    standing[entered.Reading.Key] = FormattableString.Invariant($"{entered.Reading.Value}");
                    break;
                case ReadingScratched scratched:
                    standing.Remove(scratched.Key);
                    break;
                case ReadingVoided voided:
                    standing.Remove(voided.Key);
                    break;
            }
        }
        return standing;
    }
}
