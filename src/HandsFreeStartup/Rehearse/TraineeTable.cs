using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Rehearse;

/// <summary>How trainees get on, for the lead: each with the rehearsals in their order, and the mistakes that come again.</summary>
static class TraineeTable
{
    const int When = 0, Trainee = 1, Furnace = 2, Faults = 3, End = 5, Score = 6, Mistakes = 7, Columns = 9;

    /// <summary>Whose rehearsal a line of the file of progress tells; null for the heading and what is no such line.</summary>
    public static string? TraineeOf(string line) => line.Split('\t') is { Length: Columns } cells && line != Progress.Heading ? cells[Trainee] : null;

    /// <summary>The table.</summary>
    /// <param name="lines">Of the file of progress, heading first.</param>
    public static string Of(IReadOnlyList<string> lines)
    {
        StringBuilder text = new();
        foreach (IGrouping<string, string[]> trainee in lines.Skip(1).Select(line => line.Split('\t')).Where(cells => cells.Length == Columns).GroupBy(cells => cells[Trainee]))
        {
            string[] again = [.. trainee.SelectMany(cells => cells[Mistakes].Split(',', StringSplitOptions.RemoveEmptyEntries)).GroupBy(name => name).Where(same => same.Count() > 1)
                .OrderByDescending(same => same.Count()).Select(same => string.Create(CultureInfo.InvariantCulture, $"{same.Key} ({same.Count()})"))];
            text.Append(CultureInfo.InvariantCulture, $"{trainee.Key}: {trainee.Count()} rehearsals, scores {string.Join(' ', trainee.Select(cells => cells[Score]))}\n");
            foreach (string[] cells in trainee)
            {
                text.Append(CultureInfo.InvariantCulture, $"  {cells[When]}  {cells[Score],3}  {cells[End],-14} {cells[Furnace]}{(cells[Faults].Length == 0 ? "" : $" with {cells[Faults]}")}{(cells[Mistakes].Length == 0 ? "" : $": {cells[Mistakes]}")}\n");
            }

            text.Append(again.Length == 0 ? "" : $"  again and again: {string.Join(", ", again)}\n");
        }

        return text.Length == 0 ? "Nobody has rehearsed yet.\n" : text.ToString();
    }
}
