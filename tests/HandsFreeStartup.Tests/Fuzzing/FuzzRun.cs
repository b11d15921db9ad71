using System.Globalization;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>What a run has tried and found.</summary>
/// <param name="Tried">Inputs.</param>
/// <param name="Taken">Of these, how many were taken.</param>
/// <param name="Sentences">How many different things were said.</param>
/// <param name="MostAllocated">Bytes that the most expensive input allocated.</param>
/// <param name="Defects">One text for each different defect; none is what is hoped for.</param>
public sealed record FuzzCount(long Tried, long Taken, int Sentences, long MostAllocated, IReadOnlyList<string> Defects)
{
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Tried} tried, {Taken} taken, {Sentences} different answers, at most {MostAllocated >> 20} MiB allocated by one, {Defects.Count} defects");
}

/// <summary>
/// Changes inputs again and again and tries each, for a time. Inputs with which the door says something new are kept and changed further, so that the run finds its way behind the
/// first check. The same seed tries the same inputs in the same order.
/// </summary>
public sealed partial class FuzzRun(FuzzedDoor door, int seed)
{
    /// <summary>Not a limit of speed: only what never ends takes so long, even on a busy machine.</summary>
    static readonly TimeSpan NeverEnds = TimeSpan.FromMinutes(1);

    const int MostDefects = 20;
    const int MostKept = 4000;
    const int FewestChanged = 3;

    readonly Dictionary<string, string> _defects = [];
    readonly HashSet<string> _said = [];
    readonly List<byte[]> _pool = [];
    readonly string _last = Path.Combine(Path.GetTempPath(), $"handsfree-fuzz-{door.Name}.last");
    long _tried, _taken, _mostAllocated;

    /// <summary>Runs for <paramref name="length"/>, and at least through the corpus and a few changes of it.</summary>
    public FuzzCount Run(TimeSpan length, TimeProvider clock)
    {
        IReadOnlyList<byte[]> corpus = door.Corpus;
        Random random = new(seed);
        FuzzChanges changes = new(random, door.Words);
        long begun = clock.GetTimestamp();
        Thread worker = new(() => Work(corpus, random, changes, () => clock.GetElapsedTime(begun) < length)) { IsBackground = true };
        worker.Start();
        for (long before = -1, now = 0; !worker.Join(NeverEnds); before = now)
        {
            now = Interlocked.Read(ref _tried);
            if (now == before)
            {
                return Count([$"Input {now} does not end; it lies in {_last}."]);
            }
        }

        File.Delete(_last);
        return Count([.. _defects.Values]);
    }

    FuzzCount Count(IReadOnlyList<string> defects) => new(_tried, _taken, _said.Count, _mostAllocated, defects);

    void Work(IReadOnlyList<byte[]> corpus, Random random, FuzzChanges changes, Func<bool> goesOn)
    {
        foreach (byte[] input in corpus)
        {
            _pool.Add(input);
            Try(input, random);
        }

        while ((goesOn() || _tried < corpus.Count + FewestChanged) && _defects.Count < MostDefects)
        {
            byte[] input = changes.Of(_pool[random.Next(_pool.Count)], _pool);
            if (Try(input, random) && _pool.Count < MostKept)
            {
                _pool.Add(input);
            }
        }
    }

    /// <summary>Tries an input; true if something new was said.</summary>
    bool Try(byte[] input, Random random)
    {
        // What ends the whole process leaves its input behind.
        File.WriteAllBytes(_last, input);
        long allocated = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            Outcome outcome = door.Try(input, random);
            _taken += outcome.IsTaken ? 1 : 0;
            return _said.Add(Varying().Replace(outcome.Said, "_"));
        }
        catch (Exception defect)
        {
            Keep(input, defect);
            return false;
        }
        finally
        {
            _mostAllocated = Math.Max(_mostAllocated, GC.GetAllocatedBytesForCurrentThread() - allocated);
            Interlocked.Increment(ref _tried);
        }
    }

    void Keep(byte[] input, Exception defect)
    {
        string place = defect.StackTrace?.Split('\n').FirstOrDefault(line => line.Contains("HandsFreeStartup.", StringComparison.Ordinal) && !line.Contains(".Tests.", StringComparison.Ordinal)) ?? "";
        string kind = $"{defect.GetType().Name}{place}{(place.Length == 0 ? Varying().Replace(defect.Message, "_") : "")}";
        if (_defects.ContainsKey(kind))
        {
            return;
        }

        string kept = Path.Combine(Path.GetTempPath(), string.Create(CultureInfo.InvariantCulture, $"handsfree-fuzz-{door.Name}-{seed}-{_tried}"));
        File.WriteAllBytes(kept, input);
        _defects[kind] = $"{door.Name}, seed {seed}, input {_tried}, kept in {kept} (put it into Fuzzing/Corpus/{door.Name} and mend what it breaks): {defect}";
    }

    [GeneratedRegex("""'[^']*'|"[^"]*"|[0-9]+""")]
    private static partial Regex Varying();
}
