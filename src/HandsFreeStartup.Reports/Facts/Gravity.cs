using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>Which of several values of one quantity is the gravest: the worse verdict first, then the one nearest to a bound or farthest beyond it.</summary>
static class Gravity
{
    /// <summary>The larger, the graver; null where nothing says what is grave.</summary>
    /// <param name="id">Field or result.</param>
    /// <param name="value">In the unit of <paramref name="limit"/>.</param>
    /// <param name="isOver">Whether more than the range was read.</param>
    /// <param name="limit">What judges it, or null.</param>
    /// <param name="verdict">The verdict, or null.</param>
    public static (int Verdict, bool IsOver, double Beyond)? Of(string id, double value, bool isOver, DeclaredLimit? limit, Verdict? verdict) =>
        limit is not null ? (VerdictGravity.Of(verdict), isOver, Math.Max((double?)limit.Lower - value ?? double.MinValue, value - (double?)limit.Upper ?? double.MinValue))
        : id is FieldId.RoomCo or FieldId.FlueCo or ResultId.CoAirFree ? (0, isOver, value)
        : null;
}
