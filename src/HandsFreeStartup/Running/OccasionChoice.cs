using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Running;

/// <summary>The occasion that a user names.</summary>
public static class OccasionChoice
{
    /// <summary>Refuses an occasion that the checklist does not know.</summary>
    /// <exception cref="WrongUseException">It does not know it.</exception>
    public static void Check(Checklist checklist, string? occasion)
    {
        string[] known = [.. checklist.Occasions.Select(one => one.Id)];
        if (occasion is not null && !known.Contains(occasion))
        {
            throw new WrongUseException(known.Length == 0
                ? $"The procedure '{checklist.Title}' knows no occasions: leave out --occasion."
                : $"The procedure '{checklist.Title}' does not know the occasion '{occasion}'. Give --occasion with one of {string.Join(", ", known)}.");
        }
    }
}
