using System.Text;
using System.Threading.Channels;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Plain;

/// <summary>
/// Hands text on beside the loop that writes it: a pipe whose reader has stopped reading, or a terminal that is held, must not hold the session. Tells when nobody reads any more.
/// </summary>
sealed class QueuedWriter : TextWriter
{
    readonly Channel<string> _texts = Channel.CreateUnbounded<string>(new UnboundedChannelOptions { SingleReader = true });
    readonly TextWriter _inner;
    readonly Action _gone;
    readonly Task _writing;

    /// <param name="inner">Takes the text, on a thread of its own.</param>
    /// <param name="gone">Called once, when it takes nothing more.</param>
    public QueuedWriter(TextWriter inner, Action gone)
        : base(inner.FormatProvider)
    {
        (_inner, _gone) = (inner, gone);
        _writing = Task.Factory.StartNew(HandOn, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default).Unwrap();
    }

    /// <summary>Why nothing more is taken; null while it is.</summary>
    public OutputGoneException? Gone { get; private set; }

    public override Encoding Encoding => _inner.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value) => _texts.Writer.TryWrite(value ?? "");

    public override void WriteLine(string? value) => Write(LineOf(value));

    public override void WriteLine() => Write("\n");

    /// <summary>Waits until everything is handed on, but not for a reader that has stopped.</summary>
    public async Task Finish(TimeSpan longest, TimeProvider clock)
    {
        _texts.Writer.TryComplete();
        try
        {
            await _writing.WaitAsync(longest, clock);
        }
        catch (TimeoutException)
        {
            // Whoever holds the output gets the rest when he lets go, or never; the record is whole.
        }
    }

    /// <summary>A line is one line whatever it holds, as for every other output.</summary>
    static string LineOf(string? text) => $"{Doors.VisibleText.Of(text ?? "")}\n";

    async Task HandOn()
    {
        await foreach (string text in _texts.Reader.ReadAllAsync())
        {
            if (Gone is not null)
            {
                continue;
            }

            try
            {
                _inner.Write(text);
                _inner.Flush();
            }
            catch (OutputGoneException gone)
            {
                Gone = gone;
                _gone();
            }
        }
    }
}
