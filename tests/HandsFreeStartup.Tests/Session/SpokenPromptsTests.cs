using System.Diagnostics;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Tests.Session;

/// <summary>What is said aloud of every shipped checklist.</summary>
public sealed class SpokenPromptsTests
{
    /// <summary>These stand in no prompt, so that an echo of the tool's voice cannot stop a job.</summary>
    static readonly string[] FirstSafetyPhrases = ["emergency stop", "stop stop stop", "I smell gas", "gas smell"];

    static readonly CommandWord[] Questions = [CommandWord.SayAgain, CommandWord.TellMore, CommandWord.Help, CommandWord.ReadBack, CommandWord.WhatIsOpen, CommandWord.HowLong];

    [Fact]
    public async Task Every_step_is_said_in_four_seconds()
    {
        string espeak = Assert.IsType<string>(InstalledProgram.Find("espeak-ng"));
        HashSet<string> prompts = [.. Plans().SelectMany(plan => Spoken(plan).Where(said => said.IsPrompt).Select(said => said.Words))];
        Assert.True(prompts.Count > 100, "the shipped checklists have more steps than that");

        List<string> tooLong = [];
        foreach (string prompt in prompts)
        {
            double seconds = await SecondsOf(espeak, prompt);
            if (seconds > 4)
            {
                tooLong.Add(FormattableString.Invariant($"{seconds:0.00} s: {prompt}"));
            }
        }

        Assert.Empty(tooLong);
    }

    [Fact]
    public void Nothing_that_is_said_could_stop_the_job_as_an_echo()
    {
        string[] said = [.. AllSaid()];
        Assert.Contains(said, words => words.StartsWith("stop. Switch the furnace off", StringComparison.Ordinal));

        Assert.DoesNotContain(said, words => FirstSafetyPhrases.Any(phrase => Regex.IsMatch(words, $@"\b{phrase}\b", RegexOptions.IgnoreCase)));
        Assert.DoesNotContain(said.SelectMany(words => words.Split('.', '?', '!', ';').Append(words)), IsSafetyPhrase);
    }

    /// <summary>A synthetic voice makes its own of "-0.02", "3.2-3.8" and "80,000": every number that is said is said by the program, in words. "F6" is a key, "G2417" a section of a code.</summary>
    [Fact]
    public void No_number_is_left_to_the_voice()
    {
        string[] said = [.. Plans().SelectMany(plan => Spoken(plan).Select(one => one.Words).Concat(Alarms(plan)).Concat(OfBadValues(plan))).Distinct()];
        Assert.Contains(said, words => words.Contains("ninety nine P P M", StringComparison.Ordinal));
        Assert.Contains(said, words => words.Contains("minus zero point", StringComparison.Ordinal));

        Assert.All(said, words => Assert.DoesNotMatch(@"(?<!\p{L}[0-9.]*)[0-9]", words));
    }

    [Fact]
    public void No_hash_and_no_path_is_said()
    {
        Walker walker = new(Plans().First());
        walker.Job.Give(new Phrase.Photo("3f2a_flue pipe.jpg", new string('a', 64), Evidence.Typed("photo /home/flue pipe.jpg")));

        Assert.Equal(["Photo kept."], Aloud(walker));
    }

    [Fact]
    public void The_caution_is_said_when_a_step_is_come_to_and_not_when_it_is_said_again()
    {
        Walker walker = new Walker(Plans().Last()).GoTo(step => step is { Caution: not null, Why: not null });
        string caution = $"Caution: {walker.Step.Caution}";

        Assert.Contains(caution, Aloud(walker));
        walker.Job.Say(CommandWord.SayAgain);
        Assert.DoesNotContain(caution, Aloud(walker));
        walker.Job.Say(CommandWord.TellMore);
        Assert.Contains(caution, Assert.Single(Aloud(walker)));
        Assert.Contains(walker.Step.Why!.Shown, Assert.Single(Aloud(walker)));
    }

    [Fact]
    public void Full_prompts_hold_for_the_job_and_after_a_crash()
    {
        Walker walker = new(Plans().First());
        walker.Job.Say(CommandWord.FullPrompts).Say(CommandWord.SayAgain);

        Assert.Contains(walker.Step.Do.Shown, Aloud(walker)[0]);
        Assert.Contains(walker.Step.Do.Shown, walker.Job.Replayed().Announce(walker.Job.Last, walker.Job.Now)[0].Aloud);
        walker.Job.Say(CommandWord.ShortPrompts).Say(CommandWord.SayAgain);
        Assert.DoesNotContain(walker.Step.Do.Shown, Aloud(walker)[0]);
    }

    /// <summary>Everything that is said on the way through every shipped plan, and its alarms, each once.</summary>
    internal static IEnumerable<string> AllSaid(Language? language = null) =>
        Plans().SelectMany(plan => Spoken(plan, language).Select(one => one.Words).Concat(Alarms(plan, language))).Distinct();

    /// <summary>What is said about air in the room that is far from good, in doubt, explained or taken back, each once.</summary>
    internal static IEnumerable<string> AllSaidOfBadAir() =>
        Plans().SelectMany(OfBadValues).Where(words => words.Contains("room", StringComparison.OrdinalIgnoreCase)).Distinct();

    static IEnumerable<StartupPlan> Plans() => ShippedPlans.Rows
        .Where(row => (StageOrder)row[4] == StageOrder.AsWritten)
        .Select(row => ShippedPlans.Plan((string)row[0], (string)row[1], (string)row[2], (string)row[3]));

    /// <summary>Everything that is said on the way through a plan, with each question asked at each step, as the voice says it.</summary>
    static IEnumerable<(string Words, bool IsPrompt)> Spoken(StartupPlan plan, Language? language = null)
    {
        Walker walker = new(plan);
        for (int moves = 0; walker.Job.Procedure.Phase == Phase.Asking && moves < 400; moves++)
        {
            foreach (CommandWord question in Questions)
            {
                walker.Job.Say(question);
                foreach ((string words, int at) in Spoken(walker, language).Select((words, at) => (words, at)))
                {
                    yield return (words, question == CommandWord.SayAgain && at == 0);
                }
            }

            walker.DoStep();
            foreach (string words in Spoken(walker, language))
            {
                yield return (words, false);
            }
        }
    }

    /// <summary>What is said where a value is as far away as the field allows, in doubt, too early, explained, taken back, or where somebody will not wait.</summary>
    static IEnumerable<string> OfBadValues(StartupPlan plan)
    {
        Walker walker = new(plan);
        for (int moves = 0; walker.Job.Procedure.Phase == Phase.Asking && moves < 400; moves++)
        {
            foreach (ExpectedReading asked in walker.Job.Procedure.Expectation.Readings)
            {
                foreach (decimal value in (decimal[])[asked.Field.Lowest, asked.Field.Highest])
                {
                    Walker worse = new(plan, new LiveJob(walker.Job));
                    worse.SayReadings(walker.Step);
                    foreach (Action<LiveJob> move in (Action<LiveJob>[])
                    [
                        job => job.Say(asked.Field, value, Certainty.Amber), job => job.Say(CommandWord.SayAgain), job => job.Say(AnswerWord.Confirm), job => job.Say(CommandWord.Explain),
                        job => job.Say(CommandWord.TellMore), job => job.Say(CommandWord.Next), job => job.Say(asked.Field, value), job => job.Say(CommandWord.HowLong), job => job.Say(CommandWord.Disregard),
                        job => job.Say(CommandWord.Finish), job => job.Say(CommandWord.ReadBack), job => job.Say(AnswerWord.Confirm), job => job.Dictate("left as it is"), job => job.Say(CommandWord.SayAgain),
                    ])
                    {
                        move(worse.Job);
                        foreach (string words in Spoken(worse))
                        {
                            yield return words;
                        }
                    }
                }
            }

            walker.DoStep();
        }
    }

    static IEnumerable<string> Alarms(StartupPlan plan, Language? language = null)
    {
        foreach (CommandWord word in new[] { CommandWord.EmergencyStop, CommandWord.GasSmell })
        {
            Walker walker = new(plan);
            walker.Job.Say(word);
            foreach (string words in Spoken(walker, language))
            {
                yield return words;
            }

            if (walker.Job.View.Alarm is { } alarm)
            {
                yield return SpokenMessage.Of(alarm.Told, language: language);
            }
        }
    }

    static string[] Aloud(Walker walker) =>
        [.. walker.Job.Procedure.Announce(walker.Job.Last, walker.Job.Now).Select(said => said.Aloud).Where(words => words.Length > 0)];

    static string[] Spoken(Walker walker, Language? language = null) =>
        [.. walker.Job.Procedure.Announce(walker.Job.Last, walker.Job.Now).Where(said => !said.Said.IsEmpty).Select(said => SpokenMessage.Of(said.Said, said.DigitByDigit, language))];

    static bool IsSafetyPhrase(string words) =>
        PhraseText.Typed(words, new Expectation([], [CommandWord.EmergencyStop, CommandWord.GasSmell], [])) is Phrase.Command { Word: CommandWord.EmergencyStop or CommandWord.GasSmell };

    static async Task<double> SecondsOf(string espeak, string words)
    {
        using TemporaryWav wav = new();
        ProcessStartInfo start = new(espeak, [.. EspeakSynthesizer.Manner(Language.English.Voice), "--stdin", "-w", wav.Path]) { RedirectStandardInput = true };
        using Process process = Process.Start(start)!;
        await process.StandardInput.WriteAsync(words);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        return (double)WavFile.Read(wav.Path).Length / WavFile.Rate;
    }

    sealed class TemporaryWav : IDisposable
    {
        public string Path { get; } = System.IO.Path.GetTempFileName();

        public void Dispose() => File.Delete(Path);
    }
}
