using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Tests.Start;

/// <summary>The ear over its native memory.</summary>
public sealed class ListeningEarTests
{
    /// <summary>What is understood ahead is not waited for at the end of a session: without the guard the process itself ended here.</summary>
    [Fact]
    public async Task An_ear_that_is_given_back_while_somebody_listens_ends_in_order_and_hears_nothing_more()
    {
        ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        SpeechClip clip = new(new float[2 * WavFile.Rate], 0, 0, 2 * WavFile.Rate);
        using SemaphoreSlim began = new(0);
        Task<Phrase>[] listening = [.. Enumerable.Range(0, 6).Select(_ => Task.Run(() =>
        {
            began.Release();
            return ear.Hear(clip, Expectation.Open);
        }))];
        await began.WaitAsync(TimeSpan.FromSeconds(60));

        ear.Dispose();
        ear.Dispose();

        Assert.Throws<OperationCanceledException>(() => ear.Hear(clip, Expectation.Open));
        foreach (Task<Phrase> heard in listening)
        {
            Assert.True(await Record.ExceptionAsync(() => heard) is null or OperationCanceledException);
        }
    }
}
