using HandsFreeStartup.Languages;
using HandsFreeStartup.Plain;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Rehearse;

/// <summary>Plays a script: each line is a hand or a phrase, and takes a fixed time, so that the same script at the same furnace is the same rehearsal.</summary>
/// <param name="options">Files and folders.</param>
/// <param name="stage">Furnace and hands, with a clock that goes on only when it is told to.</param>
/// <param name="output">For the flow as lines.</param>
sealed class ScriptRun(StartOptions options, RehearsalStage stage, TextWriter output)
{
    static readonly TimeSpan OfAHand = TimeSpan.FromSeconds(3), OfAPhrase = TimeSpan.FromSeconds(4);

    readonly StartupProcedure _procedure = new(stage.Bench.Furnace.Plan);
    readonly Language _shown = LanguageFiles.Find(options.Language ?? stage.Bench.Furnace.Plan.Settings.Language);

    /// <summary>Plays all lines, or until the start-up is finished.</summary>
    /// <param name="script">Lines; empty ones and those that begin with # are passed over.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="WrongUseException">A line means nothing; named with its number.</exception>
    public int Play(string script)
    {
        using OpenJob job = options.Earlier is null ? OpenJob.New(options, "script", stage.Clock) : OpenJob.ToGoOn(options, stage.Clock);
        IEventLog log = stage.Watch(job);
        IDisplay display = stage.Beside(new PlainDisplay(output), asLines: true);
        foreach (StartupEvent happened in log.ReadAll())
        {
            _procedure.Apply(happened);
        }

        Record(log, display, job.Begins is { } begins ? _procedure.Begin(begins, Now) : _procedure.Run(Now), null);
        foreach ((string line, int number) in script.Split('\n').Select((line, index) => (line.Trim(), index + 1)).Where(line => line.Item1.Length > 0 && line.Item1[0] != '#'))
        {
            if (_procedure.Phase == Phase.Finished)
            {
                break;
            }

            if (stage.Take(line))
            {
                stage.Clock.Forward(line.StartsWith("wait ", StringComparison.OrdinalIgnoreCase) ? TimeSpan.Zero : OfAHand);
            }
            else
            {
                stage.Clock.Forward(OfAPhrase);
                Say(log, display, line, number);
            }

            Record(log, display, _procedure.Decide(new Phrase.TimePassed(), Now), null);
        }

        output.WriteLine($"Record:  {job.Path}");
        output.WriteLine($"Summary: {job.WriteSummary(_shown)}");
        return ExitCode.Done;
    }

    Now Now => Now.Of(stage.Clock);

    void Say(IEventLog log, IDisplay display, string line, int number)
    {
        Phrase phrase = PhraseText.Typed(line, _procedure.Expectation);
        if (phrase is Phrase.NotUnderstood unknown)
        {
            throw new WrongUseException($"Line {number} of the script, '{line}', cannot be said or done here: {unknown.Evidence.Why} The step is '{stage.Bench.Step.Title}'.");
        }

        Record(log, display, _procedure.Decide(phrase, Now), phrase.Evidence);
    }

    void Record(IEventLog log, IDisplay display, IReadOnlyList<StartupEvent> events, Evidence? heard)
    {
        if (events.Count == 0 && heard is null)
        {
            return;
        }

        if (events.Count > 0)
        {
            log.Append(events);
        }

        foreach (StartupEvent happened in events)
        {
            _procedure.Apply(happened);
        }

        display.Show(new Moment(_procedure.View(Now, _shown), new EarView(EarState.Off), heard, [.. _procedure.Announce(events, Now).Select(announcement => announcement.In(_shown))]));
    }
}
