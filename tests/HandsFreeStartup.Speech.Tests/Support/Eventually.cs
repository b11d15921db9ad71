namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Waits for another process, never forever.</summary>
public static class Eventually
{
    public static async Task True(Func<bool> condition)
    {
        for (int i = 0; i < 600 && !condition(); i++)
        {
            await Task.Delay(50);
        }

        Assert.True(condition(), "it did not happen within half a minute");
    }
}
