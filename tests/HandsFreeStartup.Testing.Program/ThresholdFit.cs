using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Hear;

/// <summary>One recording with all its evidence, whatever the thresholds.</summary>
sealed record FitCase(HearCase Measured, Utterance Utterance);

/// <summary>What a policy makes of some recordings.</summary>
/// <param name="Said">Recordings in which something was said to the tool.</param>
/// <param name="Exact">Right and accepted without asking.</param>
/// <param name="Wrong">Something wrong was accepted, or something where nothing was said.</param>
readonly record struct FitScore(int Said, int Exact, int Wrong)
{
    /// <summary>A wrong number in the record outweighs any number of questions that it would have saved in a measurement of this size.</summary>
    const int WorthOfAWrong = 100;

    /// <summary>More is better.</summary>
    public int Worth => Exact - WorthOfAWrong * Wrong;

    /// <summary>As printed.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Exact} of {Said} right without asking ({100.0 * Exact / Math.Max(1, Said):F1} %), {Wrong} WRONG accepted");
}

/// <summary>
/// Looks for better numbers of the certainty policy. Whatever numbers the policy holds, each is moved up and down in turn, alone and with those of the same name under other
/// conditions, as long as that helps on the recordings for learning; the others only tell whether it held.
/// </summary>
static class ThresholdFit
{
    const int Rounds = 4;

    /// <summary>How far is searched shaped the evidence itself: other numbers would want other evidence.</summary>
    const string Search = "search";

    // Numbers below it switch a condition off.
    const double Off = -50;

    static readonly double[] Moves = [-0.1, 0.1, -0.25, 0.25, -0.5, 0.5, -0.75, 0.75, 1.5, 3];
    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Two halves: by speaker where there are several, else by file. The same names always fall into the same half.</summary>
    public static (List<FitCase> Learning, List<FitCase> Reporting) Halves(IReadOnlyList<FitCase> cases)
    {
        string[] speakers = [.. cases.Select(one => one.Measured.Speaker).Distinct().OrderBy(Hash)];
        HashSet<string> learning = [.. speakers[..(speakers.Length / 2)]];
        bool Learns(FitCase one) => speakers.Length > 1 ? learning.Contains(one.Measured.Speaker) : Hash(one.Measured.File) % 2 == 0;
        return ([.. cases.Where(Learns)], [.. cases.Where(one => !Learns(one))]);
    }

    /// <summary>What a policy makes of recordings.</summary>
    public static FitScore Score(IEnumerable<FitCase> cases, CertaintyPolicy policy)
    {
        int said = 0, exact = 0, wrong = 0;
        foreach (FitCase one in cases)
        {
            HearRow row = HearRow.Of(one.Measured.Expected, Read(one, policy));
            said += row.Expected == HearRow.Nothing ? 0 : 1;
            exact += row.Expected != HearRow.Nothing && row.IsAccepted && row.IsRight ? 1 : 0;
            wrong += row.IsAccepted && !row.IsRight ? 1 : 0;
        }

        return new FitScore(said, exact, wrong);
    }

    /// <summary>A policy that is at least as good on these recordings, as near to the first as may be.</summary>
    public static CertaintyPolicy Fit(IReadOnlyList<FitCase> learning, CertaintyPolicy first)
    {
        JsonObject numbers = JsonSerializer.SerializeToNode(first, Format)!.AsObject();
        int best = Score(learning, first).Worth;
        for (int round = 0; round < Rounds; round++)
        {
            int before = best;
            foreach (string[] together in Groups(numbers))
            {
                best = Move(learning, numbers, together, best);
            }

            if (best == before)
            {
                break;
            }
        }

        return numbers.Deserialize<CertaintyPolicy>(Format)!;
    }

    /// <summary>The policy as the text of its file.</summary>
    public static string Text(CertaintyPolicy policy) => JsonSerializer.Serialize(policy, Format);

    /// <summary>The model that is asked first answers alone where that is enough, as in a start-up.</summary>
    static Phrase Read(FitCase one, CertaintyPolicy policy)
    {
        Utterance alone = one.Utterance with { Ears = one.Utterance.Ears[..1] };
        return PhraseReader.Read(PhraseReader.WantsOtherEars(alone, one.Measured.Expectation, policy) ? one.Utterance : alone, one.Measured.Expectation, policy);
    }

    /// <summary>Numbers to be moved at once: those called alike (<c>oneEar.reading.mean</c> and <c>allEars.reading.mean</c>), then each alone.</summary>
    static string[][] Groups(JsonObject numbers)
    {
        string[] paths = [.. Numbers(numbers).Select(number => number.GetPath())];
        return
        [
            .. paths.GroupBy(path => string.Join('.', path.Split('.')[^2..])).Where(alike => alike.Count() > 1).Select(alike => alike.ToArray()),
            .. paths.Select(path => (string[])[path]),
        ];
    }

    static int Move(IReadOnlyList<FitCase> learning, JsonObject numbers, string[] together, int best)
    {
        double[] values = [.. together.Select(path => At(numbers, path).GetValue<double>())];
        double[] chosen = values;
        foreach (double move in Moves)
        {
            double[] tried = [.. values.Select(value => Math.Round(value + move * Math.Max(0.1, Math.Abs(value)), 3))];
            Set(numbers, together, tried);
            int worth = Score(learning, numbers.Deserialize<CertaintyPolicy>(Format)!).Worth;
            if (worth > best)
            {
                (best, chosen) = (worth, tried);
            }
        }

        Set(numbers, together, chosen);
        return best;
    }

    static IEnumerable<JsonValue> Numbers(JsonNode node) => node switch
    {
        JsonObject parts => parts.Where(part => part.Key != Search).Select(part => part.Value).OfType<JsonNode>().SelectMany(Numbers),
        JsonArray parts => parts.OfType<JsonNode>().SelectMany(Numbers),
        JsonValue value when value.GetValueKind() == JsonValueKind.Number && value.GetValue<double>() > Off => [value],
        _ => [],
    };

    static JsonNode At(JsonNode root, string path) => path.Split('.')[1..].Aggregate(root, (at, name) => at[name]!);

    static void Set(JsonObject root, string[] paths, double[] values)
    {
        foreach ((string path, double value) in paths.Zip(values))
        {
            At(root, path).ReplaceWith(value);
        }
    }

    /// <summary>FNV-1a, so that it is the same on every machine and in every run.</summary>
    static uint Hash(string text)
    {
        uint hash = 2166136261;
        foreach (char letter in text)
        {
            hash = unchecked((hash ^ letter) * 16777619);
        }

        return hash;
    }
}
