using System.CommandLine;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Fleet.Reading;
using HandsFreeStartup.Publish;
using HandsFreeStartup.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Verify;

/// <summary>Verifies what the firm's database holds: every record as if it lay here, and everything that was worked out from it.</summary>
/// <param name="parsed">The command line.</param>
/// <param name="database">Where the records are.</param>
sealed class FleetVerification(ParseResult parsed, FleetDatabase database)
{
    readonly FleetReader _reader = new(database);
    readonly FleetVerifier _verifier = new(database);
    readonly TextWriter _output = parsed.InvocationConfiguration.Output;

    /// <summary>Verifies the jobs that were chosen.</summary>
    /// <param name="name">One job, or null for all.</param>
    /// <param name="cancellation">Ends it.</param>
    public async Task<int> Run(string? name, CancellationToken cancellation)
    {
        IReadOnlyList<FleetJob> jobs = await _reader.Jobs(FleetSelection.Of(parsed, name), cancellation);
        if (name is not null && jobs.Count == 0)
        {
            throw new WrongUseException($"There is no job {name} in {database.Address}: look at the name, or whether its van has published.");
        }

        (int sound, int wrong, int closed, int otherRules) = (0, 0, 0, 0);
        foreach (FleetJob job in jobs)
        {
            if (!job.IsInRegion)
            {
                closed++;
                continue;
            }

            string[] problems = [.. await Problems(job, cancellation)];
            foreach (string problem in problems)
            {
                _output.WriteLine($"wrong: {job.Name}: {problem}");
            }

            (sound, wrong, otherRules) = (sound + (problems.Length == 0 ? 1 : 0), wrong + (problems.Length == 0 ? 0 : 1), otherRules + (job.Rules == PublishedRecord.Rules ? 0 : 1));
        }

        return Report(sound, wrong, closed, otherRules);
    }

    int Report(int sound, int wrong, int closed, int otherRules)
    {
        if (closed > 0)
        {
            _output.WriteLine(FormattableString.Invariant($"note: {closed} jobs belong to another region and were not verified: the login {database.Address.User} may not read what is personal in them."));
        }

        if (otherRules > 0)
        {
            _output.WriteLine(FormattableString.Invariant($"note: {otherRules} jobs were published by another version of this program: their findings and values were not compared. Their vans renew them at the next publish with this version."));
        }

        _output.WriteLine(FormattableString.Invariant($"{sound} sound, {wrong} wrong."));
        return wrong > 0 ? ExitCode.FoundSomething : ExitCode.Done;
    }

    /// <summary>What is wrong with a job; its files are gone again afterwards.</summary>
    async Task<IEnumerable<string>> Problems(FleetJob job, CancellationToken cancellation)
    {
        // What a killed program leaves of it is removed by forget.
        using ScratchFolder folder = ScratchFolder.Make("job");
        try
        {
            string path = Path.Combine(folder.Path, "job.db");
            await _reader.LayDown(job, path, cancellation);
            CarriedRecord record = CarriedRecord.Read(path);
            return !record.Verification.IsSound ? record.Verification.Findings.Select(finding => finding.Message)
                : PublishedRecord.Of(path, record) is { Job: { } expected } ? await _verifier.Differences(job, expected, cancellation)
                : ["It is no finished record, and no van publishes such a one."];
        }
        catch (LogException error)
        {
            return [error.Message];
        }
    }
}
