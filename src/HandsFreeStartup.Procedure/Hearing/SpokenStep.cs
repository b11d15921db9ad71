using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>A step as it is named when somebody wants to return to it.</summary>
/// <param name="Id">Of the step.</param>
/// <param name="Says">The words: "go to" and its title, "go to combustion high fire".</param>
public sealed partial record SpokenStep(string Id, string Says)
{
    /// <summary>What is said before the title.</summary>
    public const string Before = "go to";

    /// <summary>The words of the title alone.</summary>
    public string Title => Says[(Before.Length + 1)..];

    /// <summary>Every way to name a step: its title as written, and with what stands behind a comma put first ("high fire combustion"). Words that would name two steps name none.</summary>
    public static ImmutableArray<SpokenStep> Of(IEnumerable<(string Id, string Title)> steps) =>
    [
        .. steps.SelectMany(step => Ways(step.Title).Distinct().Select(words => new SpokenStep(step.Id, $"{Before} {words}")))
            .GroupBy(spoken => spoken.Says).Where(same => same.Count() == 1).Select(same => same.Single()),
    ];

    static IEnumerable<string> Ways(string title)
    {
        yield return Words(title);
        if (title.Split(',') is [var what, var where])
        {
            yield return Words($"{where} {what}");
        }
    }

    /// <summary>Letters that are spelled stay capitals apart, as in the names of fields.</summary>
    static string Words(string title) =>
        string.Join(' ', NotAWord().Split(title).Where(word => word.Length > 0).Select(word => Spelled().IsMatch(word) ? string.Join(' ', word.AsEnumerable()) : word.ToLowerInvariant()));

    [GeneratedRegex(@"[^\p{L}\p{Nd}']+")]
    private static partial Regex NotAWord();

    [GeneratedRegex(@"^\p{Lu}{2,}$")]
    private static partial Regex Spelled();
}
