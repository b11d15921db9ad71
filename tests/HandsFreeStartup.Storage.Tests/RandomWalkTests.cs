using System.Text.Json;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>Random phrases, legal or not, through every shipped plan: whatever was said, nothing unproven is signed, and replay equals live.</summary>
public sealed class RandomWalkTests
{
    const int FewestPhrases = 100_000;
    const int MostPhrasesOfAWalk = 900;

    static int PhrasesOfARow => FewestPhrases / Rows.Count + 1;

    public static TheoryData<string, string, string, string, StageOrder> Rows => ShippedPlans.Rows;

    [Theory]
    [MemberData(nameof(Rows))]
    public void Nothing_open_void_unproven_or_unanswered_is_ever_signed(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);
        int seed = 0;
        int signed = 0;
        for (int given = 0; given < PhrasesOfARow;)
        {
            Walker walker = new(plan);
            Random random = new(++seed);

            // Every third walk is nearly sober, so that signatures are reached; the others stray.
            int straying = seed % 3 == 0 ? 2 : 30;
            while (walker.Job.Given < MostPhrasesOfAWalk && walker.Job.Procedure.Phase != Phase.Finished)
            {
                Move(walker, random, straying);
            }

            given += walker.Job.Given;
            if (walker.Job.Procedure.IsSigned)
            {
                signed++;
                SignedRecord.AssertProven(plan, walker.Job.Log);
            }

            Assert.Equal(Text(walker.Job.View), Text(walker.Job.Replayed().View(walker.Job.Now)));
        }

        Assert.True(signed > 0, "no walk reached its signature, so nothing was proven");
    }

    static void Move(Walker walker, Random random, int straying)
    {
        if (random.Next(100) < straying)
        {
            Stray(walker.Job, random);
        }
        else
        {
            GoOn(walker, random);
        }
    }

    /// <summary>What somebody would say who wants to get on.</summary>
    static void GoOn(Walker walker, Random random)
    {
        LiveJob job = walker.Job;
        switch (job.Procedure.Phase)
        {
            case Phase.Asking when job.View.IsPaused:
                job.Say(CommandWord.GoAhead);
                break;
            case Phase.Asking:
                walker.DoStep();
                break;
            case Phase.Dictating:
                job.Dictate("a reason");
                break;
            case Phase.ReadingBack:
                job.Say(AnswerWord.Confirm);
                break;
            case Phase.Choosing:
                job.Choose(job.Procedure.Expectation.Choices[^1].Value);
                break;
            case Phase.Stopped:
                job.Wait(TimeSpan.FromMinutes(11)).Say("room_co", 1m).Say(AnswerWord.Yes).Say(AnswerWord.No);
                break;
            case Phase.Condemning:
                job.Say(random.Next(10) == 0 ? AnswerWord.Confirm : AnswerWord.No);
                break;
            default:
                job.Say(random.Next(3) == 0 ? AnswerWord.No : AnswerWord.Confirm);
                break;
        }
    }

    static void Stray(LiveJob job, Random random)
    {
        switch (random.Next(10))
        {
            case < 4:
                Field field = Fields.All[random.Next(Fields.All.Length)];
                decimal value = field.Lowest + Math.Round((field.Highest - field.Lowest) * (decimal)random.NextDouble(), field.MostDecimals);
                job.Say(field.Id, value, random.Next(3) == 0 ? Certainty.Amber : Certainty.Green);
                break;
            case < 7:
                job.Say(Any<CommandWord>(random));
                break;
            case 7:
                job.Say(Any<AnswerWord>(random));
                break;
            case 8:
                job.Dictate(random.Next(2) == 0 ? "a reason" : " ");
                break;
            default:
                job.Wait(TimeSpan.FromSeconds(random.Next(-60, 600)));
                break;
        }
    }

    static T Any<T>(Random random)
        where T : struct, Enum
    {
        T[] all = Enum.GetValues<T>();
        return all[random.Next(all.Length)];
    }

    static string Text(StartupView view) => JsonSerializer.Serialize(view with { Expectation = Expectation.Open });
}
