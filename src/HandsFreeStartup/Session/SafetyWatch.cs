using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Session;

/// <summary>
/// Sees that a safety order is answered while whoever gave it still looks at the screen, whatever hangs: where it was not carried out in that time, what to do is shown and said
/// without waiting for the record.
/// </summary>
/// <param name="display">Shows.</param>
/// <param name="voice">Speaks.</param>
/// <param name="clock">The present.</param>
/// <param name="languages">In which it is shown and said.</param>
sealed class SafetyWatch(IDisplay display, IVoice voice, TimeProvider clock, LanguagesInUse languages)
{
    static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(80);

    readonly CancellationTokenSource _over = new();
    int _expected;
    int _carriedOut;

    /// <summary>A safety order was given.</summary>
    public void Expect(CommandWord word) => _ = Watch(word, Interlocked.Increment(ref _expected));

    /// <summary>It was recorded and shown.</summary>
    public void CarriedOut() => Interlocked.Increment(ref _carriedOut);

    /// <summary>The session is over.</summary>
    public void Close() => _over.Cancel();

    async Task Watch(CommandWord word, int number)
    {
        try
        {
            await Task.Delay(Patience, clock, _over.Token);
            if (Volatile.Read(ref _carriedOut) < number)
            {
                string text = Instruction(word);
                display.Warn($"{languages.Shown.Text(text)} {languages.Shown.Text("The record does not answer: do not wait for it.")}");
                await voice.Warn(languages.Said.Text(text), CancellationToken.None);
            }
        }
        catch (Exception error) when (error is OperationCanceledException or IOException)
        {
            // The session is over, or its terminal is gone.
        }
    }

    /// <summary>Without the words of the order itself, which an echo could give again.</summary>
    static string Instruction(CommandWord word) => word == CommandWord.GasSmell
        ? "Touch no switch, leave the house with everybody in it, and call for help from outside."
        : "Shut the burner and the gas off now, and step back.";
}
