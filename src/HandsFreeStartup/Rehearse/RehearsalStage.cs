using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Session;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Rehearse;

/// <summary>
/// Puts the simulated furnace under a start-up: lines that are meant for the hands are done here and reach the procedure never; what is recorded is witnessed; the displays of the
/// instruments stand beside what the tool shows. Every member may be called from any thread.
/// </summary>
/// <param name="bench">Furnace and hands.</param>
/// <param name="clock">The time of the rehearsal.</param>
sealed class RehearsalStage(Bench bench, RehearsalClock clock) : IStage
{
    readonly Lock _oneAtATime = new();
    readonly Coach _coach = new(bench);
    BenchDisplay? _display;
    Moment? _last;

    /// <summary>The time of the rehearsal.</summary>
    public RehearsalClock Clock => clock;

    /// <summary>Furnace and hands.</summary>
    public Bench Bench => bench;

    /// <inheritdoc/>
    TimeProvider IStage.Clock => clock;

    /// <inheritdoc/>
    public IEventLog Watch(IEventLog log) => new WatchedLog(this, log);

    /// <inheritdoc/>
    public IDisplay Beside(IDisplay display, bool asLines) => _display = new BenchDisplay(this, display, asLines);

    /// <inheritdoc/>
    public bool Take(string line)
    {
        // What is dictated is dictated, also where it sounds like a hand.
        if (_last?.View.Expectation.Dictation == true || HandWords.Read(line, bench.Furnace.Plan) is not { } act)
        {
            return false;
        }

        lock (_oneAtATime)
        {
            string told = Do(act);
            if (_last is { } last)
            {
                _display?.ShowNews(last, told);
            }
        }

        return true;
    }

    string Do(Act act)
    {
        bench.Advance(clock.Elapsed);
        switch (act)
        {
            case Act.Move move:
                bench.Do(move);
                return $"You: {move.Words}.";
            case Act.Wait wait:
                clock.Forward(wait.Time);
                bench.Advance(clock.Elapsed);
                return $"You {wait.Words}.";
            case Act.AskHint:
                bench.CountHint();
                return _last is { } last ? _coach.Next(last.View) : "There is no hint yet.";
            case Act.DoIt:
                return DoAll();
            default:
                return $"You look. {bench.Sight.Text}";
        }
    }

    /// <summary>Does what the step wants, with the time that it takes; stops where only time helps.</summary>
    string DoAll()
    {
        List<string> done = [];
        while (bench.Missing is [var hand, ..] && hand != "wait" && HandWords.Read(hand, bench.Furnace.Plan) is Act.Move move)
        {
            bench.Do(move);
            clock.Forward(TimeSpan.FromSeconds(3));
            bench.Advance(clock.Elapsed);
            done.Add(move.Words);
        }

        return done.Count == 0 ? "Nothing is to be done with the hands here." : $"You: {string.Join(", ", done)}.";
    }

    void Witness(IReadOnlyList<StartupEvent> events)
    {
        lock (_oneAtATime)
        {
            bench.Advance(clock.Elapsed);
            bench.Witness(events);
        }
    }

    sealed class WatchedLog(RehearsalStage stage, IEventLog log) : IEventLog
    {
        public void Append(IReadOnlyList<StartupEvent> decided)
        {
            log.Append(decided);
            stage.Witness(decided);
        }

        public IReadOnlyList<StartupEvent> ReadAll() => log.ReadAll();

        public string? KeepClip(SpeechClip clip) => log.KeepClip(clip);
    }

    sealed class BenchDisplay(RehearsalStage stage, IDisplay display, bool asLines) : IDisplay
    {
        string _step = "";

        public void Show(Moment moment)
        {
            lock (stage._oneAtATime)
            {
                stage.Bench.Advance(stage.Clock.Elapsed);
                stage._last = moment;
                bool isNew = moment.View.Phase == Phase.Asking && moment.View.StepTitle != _step;
                _step = moment.View.StepTitle;
                display.Show(asLines ? moment : moment with { View = moment.View with { Results = [.. Lines(), .. moment.View.Results] } });
                if (asLines && isNew)
                {
                    display.Show(moment with { Heard = null, Said = [.. News()] });
                }
            }
        }

        public void Warn(string text) => display.Warn(text);

        /// <summary>Shows what the hands have done, and the displays after it.</summary>
        public void ShowNews(Moment last, string told) => display.Show(last with
        {
            Heard = null,
            Said = [new Announcement(told), .. News()],
            View = asLines ? last.View : last.View with { Results = [.. Lines(), .. last.View.Results] },
        });

        IEnumerable<Announcement> News()
        {
            string shown = string.Join("; ", stage.Bench.Displays.Select(one => one.Text));
            if (asLines && shown.Length > 0)
            {
                yield return new Announcement($"Displays: {shown}");
            }
        }

        IEnumerable<ResultLine> Lines() => stage.Bench.Displays.Select(one => new ResultLine("DISPLAY", one.Text, null, ""));
    }
}
