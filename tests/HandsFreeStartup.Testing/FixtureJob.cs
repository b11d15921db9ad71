using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Whole jobs led by the short example files, signed, on the disk.</summary>
public static class FixtureJob
{
    /// <summary>The example's site with an instrument that proves the rooms' CO, without which nothing is signed.</summary>
    static FileCopy Site => UserFile.Copy(Fixture.Site.Name, $"{Fixture.Site.Text.TrimEnd()}\n  - {{ field: room_co, expanded: 3, source: invented }}\n");

    /// <summary>The events of a job; another seed makes another oxygen, and now and then a correction or a skipped step.</summary>
    public static IReadOnlyList<StartupEvent> Events(int seed = 0)
    {
        JobDescription description = new(FormattableString.Invariant($"job-{seed}"), Fixture.Checklist, Fixture.Appliance, Site)
        {
            Technician = "T. Tester",
            ProgramVersion = "0.1.0",
            Recogniser = "keys",
            IsDemonstration = false,
            TimerFactor = 1,
        };
        LiveJob job = new(UserFile.PlanOf(description));
        job.GoTo("combustion-low");
        if (seed % 5 == 4)
        {
            job.Say("oxygen", 6.1m).Say(CommandWord.Disregard);
        }

        job.Say("oxygen", 7.1m + (seed % 20) / 10m).Say("flue_co", 10m + seed % 30).Say(CommandWord.Note).Dictate("Mrs. Quarry was present").Say(CommandWord.Next);
        if (seed % 7 == 6)
        {
            job.Say(CommandWord.SkipStep).Dictate("Mrs. Quarry wants to sleep");
        }

        job.GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.Equal(Phase.Finished, job.Procedure.Phase);
        return [new StartupBegan(job.Log[0].At, description), .. job.Log.Skip(1)];
    }

    /// <summary>Writes a job.</summary>
    public static void Write(string path, int seed = 0)
    {
        using StartupLog log = StartupLog.Create(path);
        foreach (StartupEvent happened in Events(seed))
        {
            log.Append(happened);
        }
    }

    /// <summary>Fills a folder with many jobs: some that differ, and copies of these.</summary>
    public static void Fill(string folder, int count, int different = 35)
    {
        Directory.CreateDirectory(folder);
        for (int i = 0; i < count; i++)
        {
            string path = Path.Combine(folder, FormattableString.Invariant($"job-{i:00000}.db"));
            if (i < different)
            {
                Write(path, i);
            }
            else
            {
                File.Copy(Path.Combine(folder, FormattableString.Invariant($"job-{i % different:00000}.db")), path);
            }
        }
    }
}
