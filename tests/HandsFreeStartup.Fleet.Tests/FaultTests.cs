using System.Diagnostics;
using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>Whatever happens on the way: one sentence, nothing lost, nothing doubled.</summary>
[Collection(FirmServer.Name)]
public sealed class FaultTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();

    public void Dispose() => _van.Dispose();

    [PostgresFact]
    public async Task A_connection_that_is_cut_at_any_packet_leaves_whole_jobs_only_and_the_next_publish_ends_it()
    {
        int cuts = 0;
        string photo = Path.Combine(_van.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, new byte[1_500_000]);
        _van.AddWithPhoto("job-0", photo);
        _van.Add("job-1", 1);
        Firm firm = await server.NewFirm();
        for (int packets = 0; ; packets++)
        {
            using CuttingProxy network = new(server.Port) { CutAfter = packets };
            ProgramResult result = await _van.Publish(firm, port: network.Port);
            if (!network.HasCut)
            {
                Assert.Equal(0, result.ExitCode);
                break;
            }

            cuts++;
            // Cut behind the last answer, it has gone through.
            Assert.True(result.ExitCode is 0 or 2, result.Error);
            Assert.Equal(result.ExitCode == 0, result.Error.Length == 0);
            Assert.DoesNotMatch(@"\n.*\n", result.Error);
            long jobs = await firm.Count("job");
            Assert.Equal(jobs, await firm.Count("event", "kind = 'startup-began'"));
            Assert.Equal(jobs, await firm.Count("job", "count = (select count(*) from event where event.job = job.job)"));
            await firm.Administer("alter table event disable trigger user; truncate job, event, personal, reading, result, finding, timer, attachment, attachment_piece, job_attachment, word; alter table event enable trigger user");
            // Packets of the photo are all alike.
            packets += packets > 15 ? packets / 8 : 0;
        }

        Assert.True(cuts > 20, $"only {cuts} cuts");
        await SameBytes.Assert(firm, ("van_01", _van));
        Assert.Equal((1L, 1_500_000L), (await firm.Count("attachment"), (long)(await firm.Value("select sum(length(content)) from attachment_piece"))!));
    }

    [PostgresTheory]
    [InlineData("review")]
    [InlineData("review", "job-0")]
    [InlineData("review", "job-1", "--return", "--lead", "L. Ead", "--remark", "again")]
    [InlineData("verify")]
    [InlineData("fleet", "--day", "2031-03-04", "--out", "pages", "--parquet", "values.parquet")]
    [InlineData("publish", "--prepare")]
    public async Task Reading_that_is_cut_at_any_packet_is_a_sentence_and_ends_with_2(params string[] command)
    {
        _van.Add("job-0");
        _van.Add("job-1", 1);
        Firm firm = await server.NewFirm();
        await _van.Publish(firm);
        string[] arguments = [.. command.Select(word => word is "pages" or "values.parquet" ? Path.Combine(_van.Path, word) : word)];
        (string option, string login) = command[0] == "publish" ? ("--to", "firm_owner") : ("--from", "lead_all");
        for (int packets = 0; ; packets += 1 + packets / 3)
        {
            using CuttingProxy network = new(server.Port) { CutAfter = packets };
            ProgramResult result = await _van.Run([.. arguments, .. firm.Options(option, login, network.Port)]);
            if (!network.HasCut)
            {
                Assert.InRange(result.ExitCode, 0, 1);
                Assert.True(packets > 8, "it was never cut");
                break;
            }

            Assert.True(result.ExitCode is 0 or 1 ? result.Error.Length == 0 : result.ExitCode == 2, $"{packets}: {result.ExitCode} {result.Error}");
            Assert.Matches(@"^(The (server|database) .*\.\n|A word on the job .*\n)?$", result.Error);
            await firm.Administer("delete from word");
        }

        Assert.Empty(Directory.GetFiles(_van.Path, "*.part"));
    }

    [PostgresFact]
    public async Task A_publish_that_is_killed_and_a_server_that_is_restarted_lose_and_double_nothing()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(25);
        for (int kill = 0; kill < 4; kill++)
        {
            using Process process = ProgramProcess.Start(["publish", "--data", _van.Path, .. firm.Options("--to", "van_01")]);
            long before = await firm.Count("job");
            for (int i = 0; i < 300 && !process.HasExited && await firm.Count("job") <= before + 1; i++)
            {
                await Task.Delay(20);
            }

            if (kill % 2 == 0)
            {
                process.Kill();
            }
            else
            {
                await server.Restart();
            }

            await process.WaitForExitAsync();
            if (kill % 2 == 1 && process.ExitCode != 0)
            {
                Assert.Equal(2, process.ExitCode);
                Assert.Matches(@"^The (server|database) .*Nothing is lost, and nothing is kept twice\.\n$", await process.StandardError.ReadToEndAsync());
            }
        }

        ProgramResult last = await _van.Publish(firm);

        Assert.Equal(0, last.ExitCode);
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    [PostgresFact]
    public async Task A_full_disk_on_the_server_is_a_sentence_and_the_rest_goes_through_when_there_is_room()
    {
        string? small = SmallDisk.Make(server);
        if (small is null)
        {
            // Only root can mount one; CI is.
            return;
        }

        try
        {
            Firm firm = await server.NewFirm();
            await server.Administer($"create tablespace small location '{small}/space'");
            await firm.Administer("alter table attachment_piece set tablespace small");
            string photo = Path.Combine(_van.Path, "plate.jpg");
            byte[] noise = new byte[20 << 20];
            new Random(1).NextBytes(noise);
            await File.WriteAllBytesAsync(photo, noise);
            _van.Add("job-0");
            _van.AddWithPhoto("job-1", photo, 1);

            ProgramResult full = await _van.Publish(firm);
            long there = await firm.Count("job");
            await firm.Administer("alter table attachment_piece set tablespace pg_default");
            ProgramResult again = await _van.Publish(firm);

            Assert.Equal((2, 1L), (full.ExitCode, there));
            Assert.Contains("is full: ask who runs it to free some. Nothing is lost", full.Error, StringComparison.Ordinal);
            Assert.Equal(0, again.ExitCode);
            await SameBytes.Assert(firm, ("van_01", _van));
            await server.Administer($"drop database {firm.Name} with (force)");
            await server.Administer("drop tablespace small");
        }
        finally
        {
            SmallDisk.Remove(small);
        }
    }

    [PostgresFact]
    public async Task Hostile_text_in_every_field_is_kept_byte_by_byte_and_shown_with_marks()
    {
        const string Hostile = "'); drop table job; -- \u0000\u001b[31m\u202e\ud83d \\ \"<script>alert(1)</script>&amp;";
        Firm firm = await server.NewFirm();
        _van.Add("job-hostile", change: job => job with
        {
            Technician = Hostile,
            ProgramVersion = Hostile,
            Recogniser = Hostile,
            Site = VanFolder.Site("\u202e Mrs. Quarry '); drop table personal; --"),
        });
        _van.Add("job-named", change: job => job with { JobId = Hostile });

        ProgramResult published = await _van.Publish(firm);
        ProgramResult review = await _van.Run(["review", .. firm.Options("--from", "lead_all")]);
        ProgramResult verify = await _van.Run(["verify", .. firm.Options("--from", "lead_all")]);
        ProgramResult chosen = await _van.Run(["review", "--technician", Hostile, .. firm.Options("--from", "lead_all")]);

        Assert.True(published.ExitCode == 0, published.Output + published.Error);
        Assert.Contains("2 sent", published.Output, StringComparison.Ordinal);
        Assert.Equal((0, "2 sound, 0 wrong.\n", ""), (verify.ExitCode, verify.Output, verify.Error));
        Assert.Contains("drop table job", review.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', review.Output);
        Assert.Contains("1 jobs must be looked at", chosen.Output.Replace("1 of 1 ", "1 ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(2, await firm.Count("job"));
    }

    [PostgresFact]
    public async Task Two_programs_of_one_van_at_once_send_everything_once()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(12);

        ProgramResult[] results = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => _van.Publish(firm)));

        Assert.All(results, result => Assert.Equal((0, ""), (result.ExitCode, result.Error)));
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    [PostgresFact]
    public async Task A_wrong_clock_is_told_and_changes_nothing()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        Microsoft.Extensions.Time.Testing.FakeTimeProvider clock = new(TimeProvider.System.GetUtcNow().AddDays(3).AddMinutes(5));
        List<string> told = [];

        await new Publish.PublishRun(new Running.DataFolder(_van.Path), told.Add, clock).Run(_van.Records, firm.Address("van_01"), CancellationToken.None);

        Assert.Contains(told, line => line.Contains("is 3.00:0", StringComparison.Ordinal) && line.Contains("ahead of the server's: set it before the next job.", StringComparison.Ordinal));
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    /// <summary>A sparse file takes no room on the disk; nothing of it is read, because its size is looked at first.</summary>
    [PostgresFact]
    public async Task A_recording_and_a_photo_of_a_gigabyte_are_each_a_sentence_and_the_other_jobs_go_on()
    {
        Firm firm = await server.NewFirm();
        string photo = Path.Combine(_van.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, new byte[1000]);
        _van.Add("job-0");
        foreach (string folder in (string[])[$"{_van.AddWithPhoto("job-1", photo, 1)}.photos", $"{_van.AddWithClip("job-2", 2)}.clips"])
        {
            Enlarge(Directory.GetFiles(folder).Single());
        }

        // One that no event names is no part of the record.
        Directory.CreateDirectory($"{_van.Add("job-3", 3)}.clips");
        Enlarge($"{_van.File("job-3")}.clips/loud.wav");
        _van.Add("job-4", 4);
        long before = GC.GetTotalAllocatedBytes(precise: true);
        ProgramResult result = await _van.Publish(firm);
        long allocated = GC.GetTotalAllocatedBytes(precise: true) - before;

        Assert.Equal((1, ""), (result.ExitCode, result.Error));
        Assert.Contains("3 sent, 0 continued, 0 there already, 0 not finished, 2 refused.", result.Output, StringComparison.Ordinal);
        Assert.Matches("refused +/.*/job-1.db: .*photo.*[.]\n", result.Output);
        Assert.Matches("refused +/.*/job-2.db: .*[.]\n", result.Output);
        Assert.Equal((3L, 0L), (await firm.Count("job"), await firm.Count("attachment")));
        Assert.True(allocated < 500_000_000, $"{allocated} bytes were allocated");
    }

    static void Enlarge(string path)
    {
        using FileStream file = File.OpenWrite(path);
        file.SetLength(1L << 30);
    }

    /// <summary>What becomes too large or is exchanged between the verification and the sending holds up no other job either.</summary>
    [PostgresFact]
    public async Task A_photo_that_grows_to_a_gigabyte_while_it_is_published_takes_nothing_with_it()
    {
        Firm firm = await server.NewFirm();
        string photo = Path.Combine(_van.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, new byte[1000]);
        Publishing.JobToPublish job = VanFolder.Job(_van.AddWithPhoto("job-1", photo, 1));
        Enlarge(Directory.GetFiles($"{job.Path}.photos").Single());
        await using FleetDatabase database = await FleetDatabase.Open(firm.Address("van_01"));

        Publishing.FleetRecordException refused = await Assert.ThrowsAsync<Publishing.FleetRecordException>(() => new Publishing.Publisher(database).Publish(job));
        await new Publishing.Publisher(database).Publish(VanFolder.Job(_van.Add("job-2", 2)));

        Assert.Matches("^Nothing of the job job-1 was published: /.*[.]jpg is larger than 64 MiB, the most that is read here: .*[.]$", refused.Message);
        Assert.Equal((1L, 0L), (await firm.Count("job"), await firm.Count("attachment")));
    }

    [PostgresFact]
    public async Task The_largest_photo_is_streamed_and_never_held_in_memory()
    {
        const long Bytes = 50 << 20;
        Firm firm = await server.NewFirm();
        string photo = Path.Combine(_van.Path, "plate.jpg");
        using (FileStream file = File.Create(photo))
        {
            file.SetLength(Bytes);
        }

        Publishing.JobToPublish job = VanFolder.Job(_van.AddWithPhoto("job-1", photo, 1));
        await using FleetDatabase database = await FleetDatabase.Open(firm.Address("van_01"));
        long before = GC.GetTotalAllocatedBytes(precise: true);
        await new Publishing.Publisher(database).Publish(job);
        long allocated = GC.GetTotalAllocatedBytes(precise: true) - before;

        Assert.Equal(Bytes, (long)(await firm.Value("select sum(length(content)) from attachment_piece"))!);
        Assert.True(allocated < Bytes / 4, $"{allocated} bytes were allocated for {Bytes}");
    }

    /// <summary>The word is kept in the record and told to the database once, wherever the connection breaks in between.</summary>
    [PostgresFact]
    public async Task A_word_that_is_fetched_over_a_connection_that_is_cut_at_any_packet_is_kept_once()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-0");
        await _van.Publish(firm);
        ProgramResult given = await _van.Run(["review", "job-0", "--return", "--lead", "L. Ead", "--remark", "measure again", .. firm.Options("--from", "lead_all")]);
        Assert.Equal(0, given.ExitCode);
        int cuts = 0;
        for (int packets = 4; ; packets++)
        {
            using CuttingProxy network = new(server.Port) { CutAfter = packets };
            ProgramResult result = await _van.Publish(firm, port: network.Port);
            Assert.True(result.ExitCode is 0 or 2, result.Error);
            if (!network.HasCut)
            {
                Assert.Equal(0, result.ExitCode);
                break;
            }

            cuts++;
        }

        Assert.True(cuts > 8, $"only {cuts} cuts");
        Assert.Single(Storage.Log.StoredJob.Read(_van.File("job-0")).Events.OfType<Procedure.Events.RecordReviewed>());
        Assert.Equal((1L, 0L), (await firm.Count("word", "settled_at is not null and refusal is null"), await firm.Count("word", "settled_at is null")));
        await SameBytes.Assert(firm, ("van_01", _van));
    }
}
