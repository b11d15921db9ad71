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
                ? $"The procedure '{checklist.Title}' knows no service types: leave out --service-type."
                : $"The procedure '{checklist.Title}' does not know the service type '{occasion}'. Give --service-type with one of {string.Join(", ", known)}.");
        }
    }
}
