namespace HandsFreeStartup.Running;

/// <summary>What the program tells the shell.</summary>
public static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Something was found that must be looked at.</summary>
    public const int FoundSomething = 1;

    /// <summary>Wrong use, or a file that cannot be used.</summary>
    public const int WrongUse = 2;

    /// <summary>Internal failure.</summary>
    public const int InternalFailure = 3;
}
