namespace HandsFreeStartup.Doors;

/// <summary>How long texts may be: long enough for whatever a person types, short enough for a screen and a sheet of paper (common practice, no source).</summary>
public static class TextLength
{
    /// <summary>A name of a person, a room, a file's id.</summary>
    public const int Name = 100;

    /// <summary>A title, an address, a source.</summary>
    public const int Title = 300;

    /// <summary>A note, a reason, a remark, the text of a step.</summary>
    public const int Note = 4000;

    const int Quoted = 60;

    /// <summary>A text as it is quoted in a sentence: no longer than a sentence bears.</summary>
    public static string Shortened(string text) => text.Length <= Quoted ? text : $"{text[..Quoted]}...";

    /// <summary>One sentence where <paramref name="text"/> is longer than it may be; null where it is not.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="most">Letters that it may have.</param>
    /// <param name="what">What it is, as the beginning of a sentence: "The technician's name".</param>
    public static string? Problem(string text, int most, string what) =>
        text.Length <= most ? null : FormattableString.Invariant($"{what} is longer than {most} letters: make it shorter.");
}
