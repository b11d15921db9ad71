namespace HandsFreeStartup.Screen;

/// <summary>How a line stands out. Words and signs say the same, so nothing is lost without colors.</summary>
public enum Look
{
    /// <summary>Ordinary text.</summary>
    Plain,
    /// <summary>What matters most in its part of the screen.</summary>
    Strong,
    /// <summary>What is rarely looked at.</summary>
    Quiet,
    /// <summary>A heading across the screen.</summary>
    Heading,
    /// <summary>A safety note, a doubt, an open thing.</summary>
    Caution,
    /// <summary>In order.</summary>
    Good,
    /// <summary>Outside a limit, or not understood.</summary>
    Bad,
    /// <summary>The instruction of a stop.</summary>
    Alarm,
}

/// <summary>One line of a part of the screen.</summary>
/// <param name="Text">Without line breaks.</param>
/// <param name="Look">How it stands out.</param>
public readonly record struct ShownLine(string Text, Look Look = Look.Plain);
