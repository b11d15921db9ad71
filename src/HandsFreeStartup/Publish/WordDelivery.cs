using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Fleet.Reading;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Review;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Publish;

/// <summary>Makes the words of the lead that wait in the database part of the records of this van, each once, and only of a record that is still as the lead saw it.</summary>
/// <param name="mail">Where they wait.</param>
/// <param name="tell">Takes a line for each.</param>
/// <param name="clock">Tells when they were recorded.</param>
sealed class WordDelivery(LeadsMail mail, Action<string> tell, TimeProvider clock)
{
    const string HasGrown = "the record has grown since the word was given; look at it again.";

    readonly Dictionary<string, string?> _delivered = [];
    IReadOnlyDictionary<string, FleetWord> _waiting = new Dictionary<string, FleetWord>();

    /// <summary>Asks which words wait.</summary>
    public async Task Fetch(CancellationToken cancellation) => _waiting = await mail.Waiting(cancellation);

    /// <summary>Whether a word waits for a job.</summary>
    public bool IsWaiting(string job) => _waiting.ContainsKey(job);

    /// <summary>Brings the word that waits for a job into its record.</summary>
    /// <returns>Whether the record has changed.</returns>
    public bool Deliver(JobToPublish job)
    {
        if (!_waiting.TryGetValue(job.JobId, out FleetWord? word))
        {
            return false;
        }

        // It may have been kept by a run that was interrupted before it could tell.
        if (job.Record.Happened.OfType<RecordReviewed>().Any(reviewed => reviewed.At == word.At && reviewed.Lead == word.Lead))
        {
            _delivered[job.JobId] = null;
            return false;
        }

        if (!job.Head.AsSpan().SequenceEqual(word.Head))
        {
            _delivered[job.JobId] = HasGrown;
            return false;
        }

        try
        {
            using StartupLog log = StartupLog.Open(job.Path, clock);
            if (log.Checkpoint?.Hash != Convert.ToHexString(word.Head))
            {
                _delivered[job.JobId] = HasGrown;
                return false;
            }

            LeadsWord.Append(log, word.Lead, word.IsAcceptance ? ReviewOutcome.Accepted : ReviewOutcome.Returned, word.Remark, word.At);
            _delivered[job.JobId] = null;
            tell($"{(word.IsAcceptance ? "accepted" : "returned"),-10}{job.JobId} by {word.Lead}{(word.Remark.Length > 0 ? $": {word.Remark}" : "")}");
            return true;
        }
        catch (LogException error)
        {
            tell($"{"not yet",-10}{job.JobId}: the word of {word.Lead} waits: {error.Message}");
            return false;
        }
    }

    /// <summary>Tells the database what has become of the word, once the record with it is there.</summary>
    public async Task Settle(JobToPublish job, CancellationToken cancellation)
    {
        if (_delivered.Remove(job.JobId, out string? refusal))
        {
            await mail.Settle(_waiting[job.JobId], refusal, cancellation);
        }
    }
}
