using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Rehearse;

/// <summary>
/// Puts the simulated furnace under a start-up: lines that are meant for the hands are done here and reach the procedure never; what is recorded is witnessed; the displays of the
/// instruments stand beside what the tool shows. Every member may be called from any thread.
/// </summary>
/// <param name="bench">Furnace and hands.</param>
/// <param name="clock">The time of the rehearsal.</param>
sealed class RehearsalStage(Bench bench, RehearsalClock clock) : IStage
{
    /// <summary>Before the words of a hand; no choice of a procedure begins so.</summary>
    const string OfHands = "hand: ";

    readonly Lock _oneAtATime = new();
    readonly Coach _coach = new(bench);
    readonly ImmutableArray<SpokenChoice> _words = [.. HandWords.Spoken(bench.Furnace.Plan).Select(words => new SpokenChoice(OfHands + words, words))];
    BenchDisplay? _display;
    Moment? _last;
    KeptHands? _kept;
    bool _hasNews;

    /// <summary>The time of the rehearsal.</summary>
    public RehearsalClock Clock => clock;

    /// <summary>Furnace and hands.</summary>
    public Bench Bench => bench;

    /// <inheritdoc/>
    public Task Over { get; } = new TaskCompletionSource().Task;

    /// <inheritdoc/>
    TimeProvider IStage.Clock => clock;

    /// <inheritdoc/>
    public IEventLog Watch(IEventLog log)
    {
        _kept = log is OpenJob job ? new KeptHands(job.Path) : null;
        return new WatchedLog(this, log);
    }

    /// <summary>Brings furnace and hands to where an interrupted rehearsal stood; its time stood still meanwhile.</summary>
    /// <param name="events">Of its record.</param>
    /// <param name="hands">That were kept beside it.</param>
    public void GoThrough(IReadOnlyList<StartupEvent> events, IReadOnlyList<(DateTimeOffset At, string Words)> hands)
    {
        IEnumerable<(TimeSpan At, Action Happens)> all =
        [
            .. events.Select(happened => (happened.At - events[0].At, (Action)(() => bench.Witness([happened])))),
            .. hands.Select(hand => (hand.At - events[0].At, (Action)(() => MoveAgain(hand.Words)))),
        ];
        foreach ((TimeSpan at, Action happens) in all.OrderBy(one => one.At))
        {
            bench.Advance(at);
            happens();
            clock.Forward(at - clock.Elapsed);
        }
    }

    void MoveAgain(string words)
    {
        switch (HandWords.Read(words, bench.Furnace.Plan))
        {
            case Act.Move move:
                bench.Do(move);
                break;
            case Act.AskHint:
                bench.CountHint();
                break;
        }
    }

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
            Message told = Do(act);
            if (_last is { } last)
            {
                _display?.ShowNews(last, line.Trim(), told);
            }
        }

        return true;
    }

    /// <inheritdoc/>
    /// <remarks>While a signature, a condemnation or a note is wanted the hands rest: there is no help to be asked for then.</remarks>
    public Expectation With(Expectation expectation) =>
        expectation.Commands.Contains(CommandWord.Help) ? expectation with { Choices = [.. expectation.Choices, .. _words] } : expectation;

    /// <inheritdoc/>
    public bool AreMeant(Phrase phrase) => phrase is Phrase.Choice { Value: var value } && value.StartsWith(OfHands, StringComparison.Ordinal);

    /// <inheritdoc/>
    public Message Do(Phrase phrase)
    {
        lock (_oneAtATime)
        {
            _hasNews = true;
            return Do(HandWords.Read(((Phrase.Choice)phrase).Value[OfHands.Length..], bench.Furnace.Plan)!);
        }
    }

    Message Do(Act act)
    {
        bench.Advance(clock.Elapsed);
        switch (act)
        {
            case Act.Move move:
                Move(move);
                return $"You: {new MessagePart.Name(move.Words)}.";
            case Act.Wait wait:
                clock.Forward(wait.Time);
                bench.Advance(clock.Elapsed);
                Keep(wait);
                return $"You {new MessagePart.Name(wait.Words)}.";
            case Act.AskHint:
                bench.CountHint();
                Keep(act);
                return _last is { } last ? _coach.Next(last.View, isReasonShown: _display is { AsLines: false }) : (Message)"There is no hint yet.";
            case Act.DoIt:
                return DoAll();
            default:
                return $"You look. {bench.Sight.Text}";
        }
    }

    void Keep(Act act) => _kept?.Keep(clock.GetUtcNow(), act.Words);

    void Move(Act.Move move)
    {
        bench.Do(move);
        Keep(move);
    }

    /// <summary>Does what the step wants, with the time that it takes; stops where only time helps.</summary>
    Message DoAll()
    {
        List<string> done = [];
        while (bench.Missing is [var hand, ..] && hand != "wait" && HandWords.Read(hand, bench.Furnace.Plan) is Act.Move move)
        {
            Move(move);
            clock.Forward(TimeSpan.FromSeconds(3));
            bench.Advance(clock.Elapsed);
            done.Add(move.Words);
        }

        return done.Count == 0 ? (Message)"Nothing is to be done with the hands here." : $"You: {string.Join(", ", done)}.";
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
        /// <summary>All that a trainee needs to go on, and shown nowhere else. The ear does not know the last of them.</summary>
        static readonly ImmutableArray<string> AlwaysThere = ["look", "do it", "hint"];

        public bool AsLines => asLines;

        string _step = "";

        public void Show(Moment moment)
        {
            lock (stage._oneAtATime)
            {
                stage.Bench.Advance(stage.Clock.Elapsed);
                stage._last = moment;
                bool isNew = stage._hasNews || (moment.View.Phase == Phase.Asking && moment.View.StepTitle != _step);
                stage._hasNews = false;
                _step = moment.View.StepTitle;
                display.Show(moment with { View = Beside(moment) });
                if (asLines && isNew)
                {
                    display.Show(moment with { Heard = null, Said = [.. News()], View = Beside(moment) });
                }
            }
        }

        public void Warn(string text) => display.Warn(text);

        /// <summary>Shows what the hands have done, and the displays after it.</summary>
        public void ShowNews(Moment last, string typed, Message told) => display.Show(last with
        {
            Heard = asLines ? null : Evidence.Typed(typed),
            Said = [new Announcement(told), .. News()],
            View = Beside(last),
        });

        /// <summary>The view with what only a rehearsal has.</summary>
        StartupView Beside(Moment moment) => moment.View with
        {
            Results = asLines ? moment.View.Results : [.. Lines(), .. moment.View.Results],
            ListeningFor = moment.View.Phase is not (Phase.Asking or Phase.Stopped) ? moment.View.ListeningFor
                : [.. moment.View.ListeningFor, .. moment.Ear.State == EarState.Off ? AlwaysThere : AlwaysThere[..^1]],
        };

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
